"""Manuals changed at random in ways that people, editors and attackers change them."""

from __future__ import annotations

import random
import time
from collections.abc import Iterable, Mapping
from functools import cache
from pathlib import Path

from attrs import frozen
from built import pages_built
from small_project import MANUAL

from underhoist.beside import beside
from underhoist.checker import Checked, Checker
from underhoist.pages import Sheet, Site, calculators, make_site
from underhoist.pages.every import check_addresses, makers
from underhoist.source import read

SIGNS = (
    *"{}[]()<>:,-#&*!|>%@`'\"\\/ \t\n0123456789.abcXYZé°·\x00\x07\u2028\ufeff\ud800",
    "---\n", "\n  ", ": ", "- ", "<<: ", "null", "nan", "1e999", "-1", "9" * 400, "lbf*ft", " to ",
    "any", "<torque:", "](", "![", "<script>", "{{ x }}", "{% x %}", "../../", "```\n", "| a |\n",
    "## Steps\n", "1. ", "> ", "constructor", "__proto__", "%s", "{0}", "&amp;", "\r\n", "\x1b[31m",
)  # fmt: skip
STILL = ("rules", "front matter", "shells", "drafting")
"""Pages that no page of a manual changes: they are made once."""

calculators._worked = cache(calculators._worked)  # likewise: the examples' answers

WHOLE = 0.1
"""Share of the manuals that pass which are built as whole sites."""


@frozen
class Outcome:
    """What became of one changed manual."""

    file: str
    seconds_to_read: float
    stops: int
    pages: int
    """Pages of the site; 0 where the check stopped it."""
    whole: bool = False
    """Whether the site was built on the disk, as `underhoist build` does."""


def originals() -> dict[str, str]:
    """Return the small manual's pages by file."""
    return {
        path.relative_to(MANUAL).as_posix(): path.read_text(encoding="utf-8")
        for path in sorted(MANUAL.rglob("*.md"))
    }


def others() -> list[str]:
    """Return the small manual's drawings and the like."""
    paths = (path for path in MANUAL.rglob("*") if path.is_file() and path.suffix != ".md")
    return sorted(path.relative_to(MANUAL).as_posix() for path in paths)


def mutated(dice: random.Random, pages: Mapping[str, str]) -> tuple[str, bytes]:
    """Change one page in one to four places: cut, doubled, moved, written over, taken elsewhere.

    Half of them are changed once and below the front matter: most of those become a site.
    """
    file = dice.choice(sorted(pages))
    text = pages[file]
    mild = dice.random() < 0.5
    for _ in range(1 if mild else dice.randint(1, 4)):
        start = dice.randint(text.index("\n---") + 5 if mild else 0, len(text))
        end = min(len(text), start + dice.choice((0, 1, 5, 30, 200)))
        text = text[:start] + _put(dice, pages, text, start, end) + text[end:]
    data = text.encode("utf-8", "surrogatepass")
    if dice.random() < 0.05:
        at = dice.randint(0, len(data))
        data = data[:at] + dice.randbytes(3) + data[at:]
    return file, data


def _put(dice: random.Random, pages: Mapping[str, str], text: str, start: int, end: int) -> str:
    match dice.randrange(6):
        case 0:
            return ""
        case 1:
            return text[start:end] * dice.choice((2, 3, 50))
        case 2:
            other = pages[dice.choice(sorted(pages))]
            begin = dice.randint(0, len(other))
            return other[begin : begin + dice.choice((5, 40, 300))]
        case 3:
            return dice.choice(SIGNS) * dice.choice((1, 1, 2, 300))
        case 4:
            return "".join(dice.choice(SIGNS) for _ in range(6))
        case _:
            return text[start:end].swapcase()


class Tried:
    """The small manual with one page at a time changed, through check and pages."""

    def __init__(self, project: Path | None = None) -> None:
        """Take the manual; in `project` one in ten of those that pass is built as a whole site."""
        self.pages = originals()
        self._checker = Checker(self.pages, others())
        self._project = project
        self._still: dict[str, Sheet] = {}

    def one(self, dice: random.Random) -> Outcome:
        """Change a page, read, check and write the manual, and put the page back."""
        file, data = mutated(dice, self.pages)
        began = time.process_time()
        read(file, data)
        seconds = time.process_time() - began
        self._checker.put(file, data)
        try:
            checked = self._checker.checked()
            _sound(checked)
            if checked.stops:
                return Outcome(file, seconds, checked.stops, 0)
            if self._project and dice.random() < WHOLE:
                return Outcome(file, seconds, 0, pages_built(self._project, file, data), whole=True)
            return Outcome(file, seconds, 0, self._written(checked))
        finally:
            self._checker.put(file, self.pages[file])

    def _written(self, checked: Checked) -> int:
        """Write every page and the files beside them; how many pages."""
        site = make_site(checked.manual, MANUAL, name="A manual", demo=False)
        check_addresses(site.manual)
        sheet_of = {sheet.address: sheet for sheet in self._sheets(site)}
        for _, text in beside(site, sheet_of):
            assert text
        assert all("<script" not in sheet.html for sheet in sheet_of.values())
        return len(sheet_of)

    def _sheets(self, site: Site) -> Iterable[Sheet]:
        making = list(makers(site.manual))
        if not self._still:
            still = (sheet for each in making if each.name in STILL for sheet in each.make(site))
            self._still = {sheet.address: sheet for sheet in still}
        made = (sheet for each in making if each.name not in STILL for sheet in each.make(site))
        return (*self._still.values(), *made)


def _sound(checked: Checked) -> None:
    """Every finding says where, what and how to mend, in a line."""
    for finding in checked.findings:
        assert finding.wrong and finding.mend, finding
        assert finding.at.line >= 1 and len(finding.written) <= 60, finding
        assert "Traceback" not in finding.wrong, finding
