"""A procedure without steps.

The steps are the ordered list under the heading `## Steps`. Only they can be ticked on a job card.

Good:

```markdown title="kestrel-3/clean-adjuster.md"
## Steps

1. Clean the adjuster's thread.
2. Loosen the locknut.
```

Bad:

```markdown title="kestrel-3/clean-adjuster.md"
Clean the adjuster's thread, then loosen the locknut.
```
"""

import re
from collections.abc import Iterator

from underhoist.finding import Finding, Severity
from underhoist.model import Draft, Manual, Page, Procedure
from underhoist.place import Place
from underhoist.prose import Prose, prose
from underhoist.rules._pages import Pages
from underhoist.words import quote

CODE = "no-steps"
SEVERITY = Severity.STOP
PAGES = Pages((Procedure,), drafts=True)

_NEARLY = re.compile(r"^[^\w\n]*(?:<[^<>\n]*>)?\d{1,2}[.)]\s?(?=\S)[^\n]*", re.MULTILINE)
"""What an author took for a step: 1) or 1. with a hard space, as word processors write them."""


def check_page(manual: Manual, page: Page) -> Iterator[Finding]:
    """Find a body without an ordered list under Steps; a draft may have no body yet."""
    if isinstance(page, Draft) and not page.body.text.strip():
        return
    text = prose(page.body)
    if not text.steps:
        yield _nearly(page.file, text) or _none(page)


def _nearly(file: str, text: Prose) -> Finding | None:
    """Point at the first line under Steps that was meant for one."""
    line = _NEARLY.search(text.text, *text.steps_part)
    if line is None:
        return None
    wrong = "A step begins with its number, a full stop and an ordinary space. This line does not."
    mend = "Type it anew at the start of the line: 1. and a space, without HTML."
    return Finding(CODE, SEVERITY, text.place(line.start(), file), quote(line[0]), wrong, mend)


def _none(page: Page) -> Finding:
    wrong = "The procedure has no ordered list under a heading Steps."
    mend = "Write ## Steps and below it 1. and the first action."
    return Finding(CODE, SEVERITY, Place(page.file, page.body.first_line, 1), "", wrong, mend)
