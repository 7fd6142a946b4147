"""How many slips between inches and feet the check catches, on every fastener of the demo manual.

    python benchmarks/twelve_fold.py

Writes benchmarks/results/twelve_fold.json and .md. Each torque is made twelve times as much, then a
twelfth, as it happens: the number stays and the unit is the other one (where neither unit is one of
inches or feet, the number changes). Then the real check runs over the whole manual.
"""

from __future__ import annotations

import json
import re
from collections import Counter
from collections.abc import Iterator
from itertools import chain
from pathlib import Path
from typing import Any

from underhoist.check import files_of
from underhoist.checker import Checker
from underhoist.model import Fastener, Manual, Page
from underhoist.rebuild.kept_rules import KeptRules
from underhoist.rules._screws import strongest, weakest

ROOT = Path(__file__).resolve().parents[1]
MANUAL = ROOT / "procedures"
RESULTS = ROOT / "benchmarks" / "results"

OTHER = {(12, "in"): "ft", (1 / 12, "ft"): "in"}
"""The unit that a slip by this factor takes for the right one."""


def main() -> None:
    """Slip, check, write and show."""
    from table import Row, enter  # noqa: PLC0415 - it stands beside this script

    counted = list(slips(MANUAL))
    RESULTS.mkdir(exist_ok=True)
    text = json.dumps(counted, indent=1, ensure_ascii=False) + "\n"
    (RESULTS / "twelve_fold.json").write_text(text, encoding="utf-8")
    page = f"# Slips between inches and feet, caught by the check\n\n{report(counted)}"
    (RESULTS / "twelve_fold.md").write_text(page, encoding="utf-8")
    print(report(counted))
    caught = sum(bool(each["caught_by"]) for each in counted)
    row = Row(
        what=f"slips between inches and feet caught, of {len(counted)} on the demo's fasteners",
        ours=100 * caught / len(counted), unit="%",
    )  # fmt: skip
    enter("twelve_fold", [row])


def slips(folder: Path) -> Iterator[dict[str, Any]]:
    """Every fastener twice, too much and too little, with the codes that the check then finds."""
    paths = {name: folder / name for name in files_of(folder).names}
    pages = {name: path.read_text("utf-8") for name, path in paths.items() if path.suffix == ".md"}
    checker = Checker(pages, others=paths.keys() - pages.keys(), judge=KeptRules())
    whole = checker.checked()
    before = set(whole.findings)
    for page, name, fastener in fasteners(whole.manual):
        for factor in (12, 1 / 12):
            slipped = slip(fastener.torque.written, factor)
            checker.put(page.file, with_torque(pages[page.file], fastener, slipped))
            found = [each for each in checker.checked().findings if each not in before]
            yield {
                "fastener": f"{page.id}/{name}",
                "stated": fastener.torque.written,
                "thread": fastener.thread.value if fastener.thread else "",
                "limited_by": fastener.limited_by.value if fastener.limited_by else "",
                "slipped": slipped,
                "load": load(fastener, factor),
                "caught_by": sorted({each.code for each in found}),
                "offered": any(fastener.torque.written.split()[0] in each.mend for each in found),
            }
        checker.put(page.file, pages[page.file])


def fasteners(manual: Manual) -> Iterator[tuple[Page, str, Fastener]]:
    """Every fastener with its page and id."""
    for page in chain(manual.families.values(), manual.procedures.values()):
        for name, fastener in page.fasteners.items():
            yield page, name, fastener


def slip(written: str, factor: float) -> str:
    """Return the torque twelve times as much or a twelfth, as a slip would write it."""
    number, unit = re.fullmatch(r"([\d.]+)\s*(.+)", written.strip()).groups()  # type: ignore[union-attr]
    for (by, old), new in OTHER.items():
        if by == factor and unit.endswith(old):
            return f"{number} {unit.removesuffix(old)}{new}"
    return f"{float(number) * factor:.4g} {unit}"


def with_torque(text: str, fastener: Fastener, slipped: str) -> str:
    """Return the page's text with another torque in the place of this one."""
    at = fastener.torque.at
    lines = text.split("\n")
    line, start = lines[at.line - 1], at.column - 1
    end = start + len(fastener.torque.written)
    lines[at.line - 1] = line[:start] + slipped + line[end:]
    return "\n".join(lines)


def load(fastener: Fastener, factor: float) -> str:
    """Say what the slip does to the screw: shares of proof load that the rules look at."""
    strong, soft = strongest(fastener), weakest(fastener)
    if strong is None or soft is None:
        return "no thread"
    torque = fastener.torque.value * factor
    if factor > 1:
        return f"dry, {strong.grade.label}: {strong.shares(torque)[0] * 100:.0f} %"
    return f"oiled, {soft.grade.label}: {soft.shares(torque)[1] * 100:.0f} %"


def report(counted: list[dict[str, Any]]) -> str:
    """Write how many are caught, by which rule, what is not and why, and the whole table."""
    caught = [each for each in counted if each["caught_by"]]
    codes = Counter(code for each in caught for code in each["caught_by"])
    missed = [each for each in counted if not each["caught_by"]]
    lines = [
        f"{len(counted)} slips on {len(counted) // 2} fasteners: {len(caught)} caught, "
        f"{len(missed)} not; in {sum(each['offered'] for each in caught)} the mend offers the "
        "number in its right unit.",
        "",
        *(f"- `{code}`: {number}" for code, number in codes.most_common()),
        "",
        *(f"- Not caught: {each['fastener']}, {each['stated']} written as {each['slipped']} "
          f"({each['limited_by'] or each['load']})" for each in missed),
        *([""] if missed else []),
        *table(counted),
    ]  # fmt: skip
    return "\n".join(lines) + "\n"


def table(counted: list[dict[str, Any]]) -> Iterator[str]:
    """One row a slip."""
    yield "| fastener | thread | stated | slipped to | share of proof load | caught by |"
    yield "| --- | --- | --- | --- | --- | --- |"
    for each in counted:
        caught = ", ".join(each["caught_by"]) or "nothing"
        row = (each["fastener"], each["thread"], each["stated"], each["slipped"], each["load"])
        yield f"| {' | '.join((*row, caught))} |"


if __name__ == "__main__":
    main()
