"""`underhoist draft`: asks, and writes a page to begin with."""

import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

from underhoist.words import NOT_WRITTEN

if TYPE_CHECKING:
    from underhoist.finding import Finding
    from underhoist.start.draft import Written

UNUSABLE = 2


@click.command()
@click.argument("project", metavar="[DIR]", default=".", type=click.Path(path_type=Path))
@click.option(
    "--answers", type=click.Path(path_type=Path, dir_okay=False),
    help="A YAML file with the answers, by the keys of the page; nothing is then asked.",
)  # fmt: skip
@click.option(
    "--answer", "pairs", multiple=True, metavar="KEY=VALUE",
    help="One answer, e.g. --answer kind=tool; may be given often. Nothing is then asked.",
)  # fmt: skip
def draft(project: Path, answers: Path | None, pairs: tuple[str, ...]) -> None:
    """Ask a few questions and write a page for the manual in DIR.

    What is there already is offered by number. What only you know is marked with ???, and the
    manual is not built before every mark is gone. Ctrl-C leaves nothing behind. Exit code 2:
    nothing was written.
    """
    from underhoist.project import Unusable, pages_folder  # noqa: PLC0415  # help first
    from underhoist.start.ask import Prepared, Terminal  # noqa: PLC0415
    from underhoist.start.draft import write_draft  # noqa: PLC0415
    from underhoist.start.question import UnclearError  # noqa: PLC0415

    try:
        given = _prepared(answers, pairs)
        asker = Terminal(_prompt, click.echo) if given is None else Prepared(given)
        folder = pages_folder(project)
        written = write_draft(folder, asker)
    except (KeyboardInterrupt, click.Abort):
        click.echo("\nNothing was written.", err=True)
        sys.exit(UNUSABLE)
    except (Unusable, UnclearError) as problem:
        click.echo(f"{problem} Nothing was written.", err=True)
        sys.exit(UNUSABLE)
    except OSError as problem:
        click.echo(f"{problem.filename}: {problem.strerror}. Nothing was written.", err=True)
        sys.exit(UNUSABLE)
    click.echo("\n".join(_told(written, folder)))


def _prompt(words: str) -> str:
    return click.prompt(words, default="", show_default=False, prompt_suffix=" ")


def _prepared(file: Path | None, pairs: tuple[str, ...]) -> dict[str, object] | None:
    """Read the answers that were given; None where a person is to be asked.

    Raises Unusable for a file that holds no answers.
    """
    from underhoist.project import Unusable  # noqa: PLC0415

    if file is None and not pairs:
        return None
    given: dict[str, object] = {}
    if file is not None:
        import yaml  # noqa: PLC0415  # only a file of answers needs it

        try:
            read = yaml.load(file.read_text(encoding="utf-8"), yaml.BaseLoader)  # noqa: S506 - text only
        except (OSError, UnicodeDecodeError, yaml.YAMLError) as error:
            msg = f"{file}: the answers cannot be read ({' '.join(str(error).split())})."
            raise Unusable(msg) from None
        if not isinstance(read, dict):
            msg = f"{file}: there are no answers in it. Write one a line, such as kind: tool."
            raise Unusable(msg)
        given.update(read)  # pyright: ignore[reportUnknownArgumentType]
    for pair in pairs:
        key, _, value = pair.partition("=")
        given[key.strip()] = value
    return given


def _told(written: "Written", folder: Path) -> list[str]:
    """Say where the page is and what still waits for its author."""
    lines = ["", f"Written: {folder / written.file}"]
    places = len(written.open)
    if places:
        what = "1 place waits" if places == 1 else f"{places} places wait"
        lines += [f"{what} for you, marked ???:"]
        lines += [f"  line {each.at.line}  {_said(each)}" for each in written.open]
    else:
        lines += ["Nothing in it waits for you."]
    if written.others:
        lines += ["With it the check also says:"]
        lines += [f"  {each.at}  {each.wrong} {each.mend}" for each in written.others]
    return [*lines, "Then: underhoist check"]


def _said(finding: "Finding") -> str:
    """Quote the line of the text; in the front matter say which key it is."""
    return finding.wrong if finding.written == NOT_WRITTEN else finding.written
