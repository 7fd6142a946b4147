"""Answers as plain text for a terminal or a printed sheet."""

from collections.abc import Iterator

from underhoist_calculators.answer import Answer, Plate, Table
from underhoist_calculators.declare import Calculator
from underhoist_calculators.entries import Errors


def answer(calculator: Calculator, given: Answer | None, errors: Errors) -> str:
    """Write the answer, or what is wrong with which entry, one line each."""
    if given is None:
        return "\n".join(f"{name}: {wrong.wrong} {wrong.mend}" for name, wrong in errors.items())
    return "\n".join(_lines(calculator, given))


def _lines(calculator: Calculator, given: Answer) -> Iterator[str]:
    yield calculator.title
    yield given.summary
    yield ""
    yield from (_plate(plate) for plate in given.plates)
    yield from _section("Mind", given.warnings)
    yield from _section("What to do", (f"{n}. {do}" for n, do in enumerate(given.do, 1)))
    for table in given.tables:
        yield from _section(table.title, _table(table))
    yield from _section(
        "Working",
        (f"{w.what}: {w.formula}; {w.numbers} = {w.result}" for w in given.working),
    )
    yield from _section("Sources", calculator.sources)
    yield from _section("Limits", calculator.limits)


def _plate(plate: Plate) -> str:
    others = f" ({', '.join(plate.others)})" if plate.others else ""
    note = f". {plate.note}" if plate.note else ""
    return f"{plate.name}: {plate.number} {plate.unit}{others}{note}"


def _section(title: str, lines: Iterator[str] | tuple[str, ...]) -> Iterator[str]:
    """Write a titled section, or nothing where it has no lines."""
    first = True
    for line in lines:
        if first:
            yield ""
            yield title
            first = False
        yield f"  {line}"


def _table(table: Table) -> Iterator[str]:
    """Write the table in columns as wide as their widest cell."""
    rows = (table.heads, *table.rows)
    widths = [max(len(row[i]) for row in rows) for i in range(len(table.heads))]
    for row in rows:
        yield "  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip()
