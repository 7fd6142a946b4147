"""A torque written out in the text.

A torque stands once, at its fastener, and the text refers to it. A second copy is forgotten when
the first is mended, and it is not shown in the unit that the shop's wrench reads.

Good:

```markdown title="kestrel-3/set-band.md"
## Steps

1. Tighten the adjuster to <torque:band-seat>.
```

Bad:

```markdown title="kestrel-3/clean-adjuster.md"
## Steps

1. Tighten the adjuster to 12 lbf·ft.

    Second check: Somebody else reads the scale.
```
"""

import re
from collections.abc import Iterator
from math import isclose

from underhoist_calculators.units import UnitError, read_quantity

from underhoist.finding import Finding, Severity
from underhoist.model import Fastener, Fault, Manual, Page, Procedure, UnitFamily
from underhoist.prose import prose
from underhoist.references import matches
from underhoist.rules._edits import in_text
from underhoist.rules._pages import Pages
from underhoist.words import quote

CODE = "torque-in-prose"
SEVERITY = Severity.STOP
PAGES = Pages((Procedure, UnitFamily, Fault), drafts=True)

_NUMBER = r"(?<![\w.,/])\d{1,9}(?:[.,]\d{1,9})?(?: ?(?:to|-|–) ?\d{1,9}(?:[.,]\d{1,9})?)?"
_UNITS = (
    r"lbf? ?[·⋅*.-] ?(?:ft|in)\b",
    r"lbf (?:ft|in)\b",
    r"lbs? ?ft\b",
    r"lbs? in\b(?! [a-z])",  # not "5 lb in the bucket"
    r"(?:ft|in)[ ·⋅*.-]?lb[fs]?\b",
    r"(?:foot|inch)[ -]pounds?\b",
    r"pounds?[ -](?:force[ -])?(?:foot|feet|inch|inches)\b",
    r"n ?[·⋅*.-]? ?m\b",
    r"newton[ -]?met(?:er|re)s?\b",
    r"kgf? ?[·⋅*.-]? ?c?m\b",
)
_TORQUE = re.compile(rf"{_NUMBER}[ -]?(?:{'|'.join(_UNITS)})", re.IGNORECASE)
_POUNDS = re.compile(
    rf"\b(?:tighten|torque)[^.\n]{{0,60}}? to ({_NUMBER} ?(?:lbs?|pounds?)\b)", re.IGNORECASE
)
"""Pounds that are meant as a torque: of which arm, nobody can tell."""
_HINT = re.compile(r"\d[ -]?(?:lb|ft|in|foot|pound|n|kg)", re.IGNORECASE)
"""A quick look before the slow one: most pages have no such text at all."""


def check_page(manual: Manual, page: Page) -> Iterator[Finding]:
    """Find torques in the text; a tool may tell its own values."""
    text = prose(page.body)
    if not _HINT.search(text.said):
        return
    spans = {found.span() for found in _TORQUE.finditer(text.words)}
    starts = {start for start, _ in spans}
    pounds = (found.span(1) for found in _POUNDS.finditer(text.words))
    for start, end in sorted(spans | {span for span in pounds if span[0] not in starts}):
        wrong = "A torque in the text is a second copy of a value that stands at its fastener."
        mend = "Refer to it by its id, such as <torque:band-seat>; the page shows the value."
        at, written = text.place(start, page.file), text.words[start:end]
        named = _same_value(manual, page, written)
        edit = in_text(page, start, end, f"<torque:{named}>") if named else None
        mend = f"Write <torque:{named}>; the page shows the value." if named else mend
        yield Finding(CODE, SEVERITY, at, quote(written), wrong, mend, edit)


def _same_value(manual: Manual, page: Page, written: str) -> str | None:
    """Return the one torque of the page's list that has this value, if exactly one has."""
    if not isinstance(page, Procedure):
        return None
    try:
        value = read_quantity(written, "torque").m_as("newton_metre")
    except UnitError:
        return None
    found = {each.value: matches(manual, page, "torque", each.value) for each in page.torques}
    same = [
        name
        for name, targets in found.items()
        if len(targets) == 1
        and isinstance(fastener := targets[0].thing, Fastener)
        and isclose(fastener.torque.value.m_as("newton_metre"), value, rel_tol=1e-6)
    ]
    return same[0] if len(same) == 1 else None
