"""The table of benchmarks/mutation.py, and why each known survivor does no harm."""

from __future__ import annotations

from typing import NamedTuple

HARMLESS: dict[tuple[str, str, str], str] = {}
"""Why, by module, change and the line as it stands."""


class Sums(NamedTuple):
    """What became of the changes of one module."""

    module: str
    changes: int
    tried: int
    survived: int


class Survivor(NamedTuple):
    """A change that no test noticed."""

    module: str
    line: int
    change: str
    text: str

    @property
    def why(self) -> str:
        """Why it does no harm, or that nobody has looked."""
        return HARMLESS.get((self.module, self.change, self.text), "not looked into yet")


def table(rows: list[Sums]) -> str:
    """One row a module, and the sum."""
    total = Sums("all", *(sum(row[i] for row in rows) for i in (1, 2, 3)))
    lines = [
        "| module | changes | tried | noticed | survived |",
        "| --- | ---: | ---: | ---: | ---: |",
    ]
    lines += [
        f"| {row.module} | {row.changes} | {row.tried} | {row.tried - row.survived} "
        f"| {row.survived} |"
        for row in (*rows, total)
    ]
    return "\n".join(lines)


def page(rows: list[Sums], survivors: list[Survivor], left_out: list[str]) -> str:
    """The whole result as Markdown."""
    named = f"Left out, as its tests did not pass unchanged: {', '.join(left_out)}."
    listed = [
        f"- `{each.module}`, line {each.line}, `{each.text}`: {each.change}. {each.why}."
        for each in survivors
    ]
    parts = [
        "# Changes of a formula that no test notices",
        "`python benchmarks/mutation.py` changes each constant and sign of each formula, one at a\n"
        "time, and runs the tests that import the changed module. What no test notices survives.",
        table(rows),
        *([named] if left_out else []),
        "## Survivors",
        "\n".join(listed) or "None.",
    ]
    return "\n\n".join(parts) + "\n"
