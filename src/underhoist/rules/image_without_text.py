"""A drawing without words.

The text in the brackets is what a screen reader says and what stands where the drawing cannot be
shown. It tells what the drawing shows, not that it is one.

Good:

```markdown title="kestrel-3/set-band.md"
## Steps

1. Find the adjuster. ![Band adjuster in section, seen from the left](../drawings/band-adjuster.svg)
```

Bad:

```markdown title="kestrel-3/set-band.md"
## Steps

1. Find the adjuster. ![](../drawings/band-adjuster.svg)
```
"""

from collections.abc import Iterator

from underhoist.finding import Finding, Severity
from underhoist.model import Manual
from underhoist.prose import prose
from underhoist.words import quote

CODE = "image-without-text"
SEVERITY = Severity.STOP


def check(manual: Manual) -> Iterator[Finding]:
    """Images with nothing between the brackets."""
    for page in (*manual.pages(), *manual.repeated):
        for link in prose(page.body).links(page.file):
            if link.form == "image" and not link.label.strip():
                wrong = "The image has no text for those who cannot see it."
                mend = "Write what it shows between the brackets."
                yield Finding(CODE, SEVERITY, link.at, quote(f"![]({link.target})"), wrong, mend)
