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

_LINE = re.compile(r"[^\n]+")
_ITEM_OR_HEADING = re.compile(r" {0,3}\d{1,9}\.[ \t]|#{3,6} ")
_INDENTED = re.compile(r" {0,3}\t| {4}")
_OPENING = re.compile(rf"[*_]*({'|'.join(STEP_WORDS)})[*_]*\s*(?::|[-–—]\s)", re.IGNORECASE)
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
    above = begin
    for line in _LINE.finditer(text.text, begin, end):
        written = line[0].strip()
        if not written:
            continue
        fresh = line.start() - above > 1
        said = _fault(line[0], written, fresh=fresh)
        above = line.end()
        if said:
            at = text.place(line.start() + line[0].index(written[0]), page.file)
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
