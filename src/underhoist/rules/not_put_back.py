"""Something that comes off and never goes back on.

A step that takes something off the vehicle says so in a paragraph that begins with `Off:`, and the
step that puts it back on in one that begins with `Back on:`, in the same words. A job card counts
them and is not closed without a word while something is still off. So what comes off needs a step
somewhere that puts it back, for a unit that the first one is for.

Good:

```markdown title="kestrel-3/clean-adjuster.md"
## Steps

1. Take the shield off.

    Off: heat shield

2. Put it back.

    Back on: heat shield
```

Bad:

```markdown title="kestrel-3/clean-adjuster.md"
## Steps

1. Take the shield off.

    Off: heat shield
```
"""

from collections.abc import Iterable, Iterator, Mapping

from attrs import frozen

from underhoist.finding import Finding, Severity
from underhoist.model import Manual, Procedure
from underhoist.place import Place
from underhoist.prose import listed, prose
from underhoist.rules._pages import Pages
from underhoist.words import meant, quote

CODE = "not-put-back"
SEVERITY = Severity.STOP
PAGES = Pages((Procedure,))


@frozen
class _Moved:
    """What a procedure takes off, each with its place, and what it puts back, on which units."""

    units: frozenset[str]
    off: tuple[tuple[str, Place], ...]
    back: tuple[str, ...]


def gather(manual: Manual, procedure: Procedure) -> _Moved | None:
    """Take what comes off and what goes back."""
    off = tuple(_things(procedure, "Off"))
    back = tuple(thing for thing, _ in _things(procedure, "Back on"))
    units = frozenset(each.value for each in procedure.unit_family)
    return _Moved(units, off, back) if off or back else None


def check_gathered(manual: Manual, gathered: Mapping[str, _Moved]) -> Iterator[Finding]:
    """Find what is taken off somewhere and put back on nowhere, for the same units."""
    back = [each for each in gathered.values() if each.back]
    units = {each.units for each in gathered.values() if each.off}
    fitting = {each: _put_back(each, back) for each in units}
    for moved in gathered.values():
        for thing, at in moved.off:
            known = fitting[moved.units]
            if thing.casefold() not in known:
                wrong = f"This comes off, and no step puts it back on: {quote(thing)}."
                fallback = f"Write Back on: {thing} in the step that puts it back."
                mend = meant(thing, known.values(), fallback)
                yield Finding(CODE, SEVERITY, at, thing, wrong, mend)


def _put_back(units: frozenset[str], back: Iterable[_Moved]) -> dict[str, str]:
    """Return what is put back on a unit that could be one of these, by its small letters."""
    return {
        thing.casefold(): thing
        for each in back
        if units & each.units or "any" in units | each.units
        for thing in each.back
    }


def _things(procedure: Procedure, word: str) -> Iterator[tuple[str, Place]]:
    """Yield what the paragraphs with this word list, each with the paragraph's place."""
    text = prose(procedure.body)
    for step in text.steps if f"{word}:" in text.text else ():
        for offset, paragraph in step.paragraphs():
            if paragraph.startswith(f"{word}:"):
                at = text.place(offset, procedure.file)
                names = listed(paragraph.removeprefix(f"{word}:"))
                yield from ((" ".join(name.split()), at) for name in names)
