"""A caution that comes after the action it is for.

A step's own caution stands first in the step, before the action. Read afterwards it is too late.

Good:

```markdown title="kestrel-3/clean-adjuster.md"
## Steps

1. <hazard:hot-fluid>

    Loosen the adjuster's locknut.
```

Bad:

```markdown title="kestrel-3/clean-adjuster.md"
## Steps

1. Loosen the adjuster's locknut.

    <hazard:hot-fluid>
```
"""

import re
from collections.abc import Iterator

from underhoist.finding import Edit, Finding, Severity
from underhoist.model import Manual, Procedure
from underhoist.place import Place
from underhoist.prose import prose
from underhoist.rules._actions import CAUTION
from underhoist.rules._pages import Pages
from underhoist.words import quote

CODE = "caution-after-step"
SEVERITY = Severity.STOP
PAGES = Pages((Procedure,))

_SEVERAL = re.compile(rf"(?:(?:{CAUTION.pattern})\s*){{2,}}")


def check_page(manual: Manual, procedure: Procedure) -> Iterator[Finding]:
    """Paragraphs that are only a caution and stand below a step's action, or hold two of them."""
    text = prose(procedure.body)
    for step in text.steps if "hazard:" in text.text else ():
        begun = False
        for offset, paragraph in step.paragraphs():
            if _SEVERAL.fullmatch(paragraph):
                at = text.place(offset, procedure.file)
                wrong = "Two cautions in one paragraph are read as an action."
                mend = "Give each a paragraph of its own, first in the step."
                edit = _parted(at, paragraph)
                yield Finding(CODE, SEVERITY, at, quote(paragraph), wrong, mend, edit)
            elif not CAUTION.fullmatch(paragraph):
                begun = True
            elif begun:
                at = text.place(offset, procedure.file)
                wrong = f"The caution stands below the action of step {step.number}."
                yield Finding(CODE, SEVERITY, at, paragraph, wrong, "Put it first in the step.")


def _parted(at: Place, paragraph: str) -> Edit | None:
    """Put each caution of a line into a paragraph of its own."""
    if "\n" in paragraph:
        return None
    parted = "\n\n    ".join(CAUTION.findall(paragraph))
    return Edit(at.file, at.line, at.column, at.line, at.column + len(paragraph), parted)
