"""Something that only the author knows and has not written yet.

A drafted page has three question marks wherever something is still to be written, and an author
may put them anywhere for the same reason. Until each one is gone no site is built, so nothing
unfinished is ever followed at a vehicle. Quoted as code, they are no mark.

Good:

```markdown title="kestrel-3/count-turns.md"
## Steps

1. Turn the adjuster in by hand and count: <reading:turns-to-seat>.
```

Bad:

```markdown title="kestrel-3/count-turns.md"
## Steps

1. Turn the adjuster in by hand and count: <reading:turns-to-seat>.

    Why: ???
```

Bad (in the front matter):

```yaml title="kestrel-3/count-turns.md"
minutes: ???
```
"""

import re
from collections.abc import Iterator

from underhoist.finding import Finding, Severity
from underhoist.model import Manual, Page
from underhoist.prose import Prose, prose
from underhoist.rules._pages import TEXTS
from underhoist.words import NOT_WRITTEN, quote

CODE = "not-written-yet"
SEVERITY = Severity.STOP
PAGES = TEXTS

_MARK = re.compile(rf"{re.escape(NOT_WRITTEN)}\?*")


def check_page(manual: Manual, page: Page) -> Iterator[Finding]:
    """Find the marks in every text; those of the front matter are found when it is read."""
    if NOT_WRITTEN not in page.body.text:
        return
    text = prose(page.body)
    for mark in _MARK.finditer(text.text):
        wrong = "Something is not written yet here."
        mend = f"Write it in place of {NOT_WRITTEN}, or take the line out."
        at = text.place(mark.start(), page.file)
        yield Finding(CODE, SEVERITY, at, _line(text, mark.start()), wrong, mend)


def _line(text: Prose, offset: int) -> str:
    """Quote the line with the mark."""
    start = text.text.rfind("\n", 0, offset) + 1
    end = text.text.find("\n", offset)
    return quote(text.body.text[start : end if end >= 0 else None])
