"""A tool or an operation whose caution is not declared.

A hazard's page says when its caution is a must: with certain tools, areas of work, fluids, or
words in a step. A procedure that meets one of these lists the hazard under `cautions`, so that it
stands above the first step. For a word, a caution in that step or an earlier one will do.

Good:

```yaml title="kestrel-3/set-band.md"
tools: [inch-pound-wrench, slide-hammer]
cautions: [raised-vehicle, flying-parts]
```

Bad:

```yaml title="kestrel-3/set-band.md"
tools: [inch-pound-wrench, slide-hammer]
cautions: [raised-vehicle]
```
"""

import re
from collections.abc import Iterator
from functools import lru_cache

from attrs import frozen

from underhoist.finding import Finding, Severity
from underhoist.model import Hazard, Manual, Procedure
from underhoist.place import Place
from underhoist.prose import folded, prose
from underhoist.references import find
from underhoist.rules._edits import added
from underhoist.rules._pages import Pages

CODE = "tool-without-hazard"
SEVERITY = Severity.STOP
PAGES = Pages((Procedure,))


@frozen
class _Trigger:
    """What asks for a caution: the text, what it is, and where it stands."""

    written: str
    what: str
    at: Place


def check_page(manual: Manual, procedure: Procedure) -> Iterator[Finding]:
    """Find what a hazard names where its caution is not declared, once a hazard."""
    declared = {caution.value for caution in procedure.cautions}
    for hazard in manual.hazards.values():
        if hazard.id not in declared:
            trigger = _declared_trigger(procedure, hazard) or _word_trigger(procedure, hazard)
            if trigger:
                yield _finding(trigger, hazard, procedure)


def _declared_trigger(procedure: Procedure, hazard: Hazard) -> _Trigger | None:
    """Find the first tool, area or fluid of the front matter that asks for the caution."""
    required = hazard.required_when
    for what, has, asks in (
        ("tool", procedure.tools, required.tools),
        ("area", (procedure.area,), required.areas),
        ("fluid", procedure.fluids, required.fluids),
    ):
        wanted = {each.value.casefold() for each in asks}
        for each in has if wanted else ():
            if each.value.casefold() in wanted:
                return _Trigger(each.written, what, each.at)
    return None


@lru_cache
def _any_of(words: tuple[str, ...]) -> tuple[tuple[str, ...], re.Pattern[str]]:
    """Return the words for a quick look, and the pattern that finds them."""
    pattern = rf"\b(?:{'|'.join(map(re.escape, words))})\b"
    return tuple(map(folded, words)), re.compile(pattern, re.IGNORECASE)


def _word_trigger(procedure: Procedure, hazard: Hazard) -> _Trigger | None:
    """Find the first word of a step that asks for the caution before the text has given it."""
    if not hazard.required_when.words:
        return None
    words, pattern = _any_of(tuple(word.value for word in hazard.required_when.words))
    text = prose(procedure.body)
    for step in text.steps if any(word in text.folded for word in words) else ():
        found = pattern.search(text.words, step.start, step.end)
        if found:
            if _given_by(procedure, hazard, step.end):
                return None
            return _Trigger(found[0], "word", text.place(found.start(), procedure.file))
    return None


def _given_by(procedure: Procedure, hazard: Hazard, offset: int) -> bool:
    """Whether the text up to here refers to the hazard."""
    return any(
        reference.scheme == "hazard" and reference.id == hazard.id and reference.offset < offset
        for reference in find(procedure.body, procedure.file)
    )


def _finding(trigger: _Trigger, hazard: Hazard, procedure: Procedure) -> Finding:
    wrong = (
        f"This {trigger.what} asks for the caution {hazard.id}, and the page does not declare it."
    )
    mend = f"Add {hazard.id} to cautions."
    edit = added(procedure.cautions, hazard.id, "cautions")
    return Finding(CODE, SEVERITY, trigger.at, trigger.written, wrong, mend, edit)
