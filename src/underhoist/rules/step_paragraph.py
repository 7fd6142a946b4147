"""A paragraph that does not stand in its step.

What belongs to a step is indented by four spaces, with an empty line above it. A caution or a
"Bad" that is not indented leaves its step: on the page it stands apart from the list, and it is
not on the job card at all. The words that open such a paragraph are `Why:`, `Good:`, `Bad:`,
`Mistake:`, `Note:`, `Second check:`, `Off:` and `Back on:`.

Good:

```markdown title="kestrel-3/clean-adjuster.md"
## Steps

1. Turn the screw in until it seats.

    Good: It stops softly.

2. Mark the square.
```

Bad:

```markdown title="kestrel-3/clean-adjuster.md"
## Steps

1. Turn the screw in until it seats.

Good: It stops softly.

2. Mark the square.
```
"""

import re
from collections.abc import Iterator

from underhoist.finding import Finding, Severity
from underhoist.model import Manual, Page, Procedure
from underhoist.prose import STEP_WORDS, prose
from underhoist.rules._pages import Pages
from underhoist.words import quote

CODE = "step-paragraph"
SEVERITY = Severity.STOP
PAGES = Pages((Procedure,), drafts=True)

_WORDS = "|".join(STEP_WORDS)
_ITEM_OR_HEADING = re.compile(r" {0,3}\d{1,9}\.[ \t]|#{3,6} ")
_INDENTED = re.compile(r" {0,3}\t| {4}")
_OPENING = re.compile(rf"[*_]*({_WORDS})[*_]*\s*(?::|[-–—]\s)", re.IGNORECASE)
_AS_TAUGHT = rf"(?<=\n\n) {{4}}(?:{_WORDS}):"
_SUSPECT = re.compile(
    rf"\n(?=(?!{_INDENTED.pattern}|{_ITEM_OR_HEADING.pattern})[^\S\n]*\S"
    rf"|(?!{_AS_TAUGHT})[^\S\n]*[*_]*(?i:{_WORDS}))"
)
"""The line end above a line that may be wrong; nearly every line is not looked at any further."""
_OUTSIDE = (
    "This paragraph is outside the steps: it is not indented by four spaces.",
    "Put four spaces before it, or move it under another heading.",
)
_RUNS_ON = ("This line runs on in the paragraph above it.", "Leave an empty line above it.")


def check_page(manual: Manual, page: Page) -> Iterator[Finding]:
    """Paragraphs below the first step that belong to none, and words that open none."""
    text = prose(page.body)
    end = text.steps_part[1]
    begin = text.steps[0].start if text.steps else end
    for found in _SUSPECT.finditer(text.text, begin, end):
        start, above = found.end(), text.text.rfind("\n", begin, found.start()) + 1
        line = text.text[start:end].partition("\n")[0]
        fresh = above > 0 and not text.text[above : found.start()].strip()
        written = line.strip()
        said = _fault(line, written, fresh=fresh)
        if said:
            at = text.place(start + line.index(written[0]), page.file)
            yield Finding(CODE, SEVERITY, at, quote(written), *said)


def _fault(line: str, written: str, *, fresh: bool) -> tuple[str, str] | None:
    """Say what is wrong with the line and how to mend it; `fresh` after an empty line."""
    opening = _OPENING.match(written)
    if (opening is None and not fresh) or _ITEM_OR_HEADING.match(line):
        return None
    if fresh and not _INDENTED.match(line):
        return _OUTSIDE
    if opening is None:
        return None
    word = opening[1].capitalize()
    if not written.startswith(f"{word}:"):
        wrong = f"The page does not know this as the paragraph {word}."
        return wrong, f"Write {word}: as the first word, with its colon and without stars."
    return None if fresh else _RUNS_ON
