"""`underhoist calc`: the calculators of the manual on the command line."""

import json
import sys
from collections.abc import Iterator

import click
from underhoist_calculators import NoSuchCalculatorError, all_calculators, door, get
from underhoist_calculators.declare import Calculator, Field

NO_SUCH_CALCULATOR = 2
BAD_ENTRIES = 1


@click.command("calc")
@click.argument("name", required=False)
@click.argument("entries", nargs=-1, metavar="[FIELD=VALUE]...")
@click.option("--list", "listed", is_flag=True, help="List the calculators, or NAME's entries.")
@click.option("--json", "as_json", is_flag=True, help="Give the answer as JSON.")
def calc(name: str | None, entries: tuple[str, ...], *, listed: bool, as_json: bool) -> None:
    """Run a calculator, e.g. underhoist calc torque-units torque="120 lbf·in".

    Exit code 0 with an answer, 1 for entries to mend, 2 for a name that no calculator has.
    """
    if name is None:
        click.echo("\n".join(_overview()))
        return
    try:
        calculator = get(name)
    except NoSuchCalculatorError as error:
        click.echo(str(error), err=True)
        sys.exit(NO_SUCH_CALCULATOR)
    if listed:
        click.echo("\n".join(_entries_of(calculator)))
        return
    sys.exit(_run(calculator, entries, as_json=as_json))


def _run(calculator: Calculator, entries: tuple[str, ...], *, as_json: bool) -> int:
    """Print the answer, or on the error stream what to mend; give the exit code."""
    pairs = dict(_pair(entry) for entry in entries)
    result = door.run(calculator.name, pairs)
    if as_json:
        kept = {key: result[key] for key in ("ok", "errors", "answer")}
        click.echo(json.dumps(kept, ensure_ascii=False, indent=2))
    else:
        click.echo(result["answer_text"], err=not result["ok"])
    return 0 if result["ok"] else BAD_ENTRIES


def _pair(entry: str) -> tuple[str, str]:
    """Split `field=value`; an entry without a sign is a field name with nothing in it."""
    field, _, value = entry.partition("=")
    return field.strip(), value


def _overview() -> Iterator[str]:
    for calculator in all_calculators():
        yield f"{calculator.name:<17} {calculator.purpose}"
    yield ""
    yield "underhoist calc NAME --list tells what one of them asks."


def _entries_of(calculator: Calculator) -> Iterator[str]:
    """List the fields: what each one asks and how it is written."""
    yield calculator.purpose
    yield ""
    width = max(len(field.name) for field in calculator.fields)
    for field in calculator.fields:
        yield f"{field.name:<{width}}  {field.label}. {_asks(field)}"


def _asks(field: Field) -> str:
    if field.choices:
        return f"One of {', '.join(choice.name for choice in field.choices)}."
    if field.default:
        return f"{field.default} where nothing is written."
    need = "Needed" if field.required else "If known"
    return f"{need}, e.g. {field.example}." if field.example else f"{need}."
