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

from collections.abc import Iterator

from underhoist.finding import Finding, Severity
from underhoist.model import Manual, Procedure
from underhoist.place import Place
from underhoist.prose import listed, prose
from underhoist.words import meant, quote

CODE = "not-put-back"
SEVERITY = Severity.STOP


def check(manual: Manual) -> Iterator[Finding]:
    """Find what is taken off somewhere and put back on nowhere, for the same units."""
    procedures = manual.procedures.values()
    back = [(each, thing) for each in procedures for thing, _ in _things(each, "Back on")]
    for procedure in procedures:
        fitting = {thing.casefold(): thing for other, thing in back if _shared(procedure, other)}
        for thing, at in _things(procedure, "Off"):
            if thing.casefold() not in fitting:
                wrong = f"This comes off, and no step puts it back on: {quote(thing)}."
                fallback = f"Write Back on: {thing} in the step that puts it back."
                mend = meant(thing, fitting.values(), fallback)
                yield Finding(CODE, SEVERITY, at, thing, wrong, mend)


def _things(procedure: Procedure, word: str) -> Iterator[tuple[str, Place]]:
    """Yield what the paragraphs with this word list, each with the paragraph's place."""
    text = prose(procedure.body)
    for step in text.steps:
        for offset, paragraph in step.paragraphs():
            if paragraph.startswith(f"{word}:"):
                at = text.place(offset, procedure.file)
                names = listed(paragraph.removeprefix(f"{word}:"))
                yield from ((" ".join(name.split()), at) for name in names)


def _shared(one: Procedure, other: Procedure) -> bool:
    """Whether both can be done on one unit."""
    ours, theirs = ({each.value for each in page.unit_family} for page in (one, other))
    return bool(ours & theirs) or "any" in ours | theirs
