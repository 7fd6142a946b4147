"""A drawing without words.

The text in the brackets is what a screen reader says and what stands where the drawing cannot be
shown. It tells what the drawing shows, not that it is one.

Good:

```markdown title="kestrel-3/clean-adjuster.md"
## Steps

1. Find the adjuster. ![Band adjuster in section, seen from the left](../drawings/band-adjuster.svg)
```

Bad:

```markdown title="kestrel-3/clean-adjuster.md"
## Steps

1. Find the adjuster. ![](../drawings/band-adjuster.svg)
```
"""

import re
from collections.abc import Iterator

from underhoist.finding import Finding, Severity
from underhoist.model import Manual, Page
from underhoist.place import Place
from underhoist.prose import prose
from underhoist.rules._pages import TEXTS
from underhoist.words import quote

CODE = "image-without-text"
SEVERITY = Severity.STOP
PAGES = TEXTS


_TAG = re.compile(r"<img\b(?![^<>]*\balt\s*=\s*[\"']\s*[^\"'\s])[^<>]*>?", re.IGNORECASE)


def check_page(manual: Manual, page: Page) -> Iterator[Finding]:
    """Find images with nothing between the brackets, and tags without an alt text."""
    text = prose(page.body)
    for link in text.links(page.file):
        if link.form == "image" and not link.label.strip():
            mend = "Write what it shows between the brackets."
            yield _finding(link.at, f"![]({link.target})", mend)
    for tag in _TAG.finditer(text.text) if "<img" in text.text else ():
        mend = 'Write what it shows in alt="...".'
        yield _finding(text.place(tag.start(), page.file), tag[0], mend)


def _finding(at: Place, written: str, mend: str) -> Finding:
    wrong = "The image has no text for those who cannot see it."
    return Finding(CODE, SEVERITY, at, quote(written), wrong, mend)
