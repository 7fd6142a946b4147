"""A reference that is not closed, or that a space tears apart.

`<torque:band-seat` without its second bracket, `< torque:band-seat >` and
`[the seat] (torque:band-seat)` are no references: the page would show the words as they stand, and
nobody at the vehicle would see the value.

Good:

```markdown title="kestrel-3/clean-adjuster.md"
## Steps

1. Hold the screw with the <tool:square-socket>.
```

Bad:

```markdown title="kestrel-3/clean-adjuster.md"
## Steps

1. Hold the screw with the <tool:square-socket.
```
"""

import re
from collections.abc import Iterator

from underhoist.finding import Finding, Severity
from underhoist.model import Manual, Page
from underhoist.prose import prose
from underhoist.references import SCHEMES
from underhoist.rules._edits import in_text
from underhoist.rules._pages import TEXTS
from underhoist.words import quote

CODE = "unfinished-reference"
SEVERITY = Severity.STOP
PAGES = TEXTS

_NAME = rf"({'|'.join(sorted(SCHEMES))}):( ?)([a-z0-9][a-z0-9/-]*[a-z0-9])"
_LEFT_OVER = re.compile(
    rf"<[ ]?{_NAME}[ ]?>?|\][ ]+\({_NAME}\)|(?<![\w:/.<-])(?<!\]: ){_NAME}", re.IGNORECASE
)
"""What looks like a reference where no reference was read: open, after a space, or bare."""

_ENDS = tuple(f"{scheme}:" for scheme in SCHEMES)
"""For a quick look before the slow one: most pages have no such text outside of references."""


def check_page(manual: Manual, page: Page) -> Iterator[Finding]:
    """Find what was surely meant as a reference and is none."""
    text = prose(page.body)
    if not any(end in text.folded for end in _ENDS):
        return
    for found in _LEFT_OVER.finditer(text.words):
        scheme, space, name = (part for part in found.groups() if part is not None)
        is_bare, is_label = found[0][0] not in "<]", found[0][0] == "]"
        if is_bare and space:  # "the tool: a spanner" is ordinary prose
            continue
        whole = f"({scheme}:{name})" if is_label else f"<{scheme}:{name}>"
        wrong = "This is no reference as it stands: the page would show the words themselves."
        mend = f"Write {whole} right after the bracket." if is_label else f"Write {whole}."
        put = f"]{whole}" if is_label else whole
        edit = None if is_bare else in_text(page, found.start(), found.end(), put)
        at = text.place(found.start(), page.file)
        yield Finding(CODE, SEVERITY, at, quote(found[0]), wrong, mend, edit=edit)
