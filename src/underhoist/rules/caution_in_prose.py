"""A caution written out in the text.

A caution stands once, on its hazard's page, with its signal word, the harm and how to avoid it; the
text refers to it. Written out it has no panel, often no harm, and the job card knows nothing of it.

Good:

```markdown title="kestrel-3/set-band.md"
## Steps

1. <hazard:hot-fluid>

    [Seat the band](torque:band-seat).
```

Bad:

```markdown title="kestrel-3/set-band.md"
## Steps

1. [Seat the band](torque:band-seat).

    Warning: The fluid is hot.
```
"""

import re
from collections.abc import Iterator

from underhoist.finding import Finding, Severity
from underhoist.model import Fault, Manual, Page, Procedure, Tool, UnitFamily
from underhoist.prose import prose
from underhoist.rules._pages import Pages
from underhoist.signal_words import SIGNALS
from underhoist.words import quote

CODE = "caution-in-prose"
SEVERITY = Severity.STOP
PAGES = Pages((Procedure, UnitFamily, Fault, Tool), drafts=True)

_WRITTEN = re.compile(
    r"^[ \t]*(?:\d{1,9}\.[ \t]+|[-*][ \t]+)?[*_]*(?:!!![ \t]+)?"
    r"((?:danger|warning|caution|notice)\b[*_]*(?:[ \t]*[:!][^\n]*|[ \t]*$))",
    re.IGNORECASE | re.MULTILINE,
)


def check_page(manual: Manual, page: Page) -> Iterator[Finding]:
    """Find lines that open with a signal word of their own."""
    text = prose(page.body)
    plain = text.text.casefold()
    for found in _WRITTEN.finditer(text.text) if any(map(plain.count, SIGNALS)) else ():
        at = text.place(found.start(1), page.file)
        wrong = "A caution in the text has no panel of its own: it is easily read over."
        mend = "Write <hazard:…> first in the step, with the id of the hazard's page."
        yield Finding(CODE, SEVERITY, at, quote(found[1]), wrong, mend)
