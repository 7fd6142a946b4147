"""A caution that holds a whole procedure.

A caution is read in the moment before the action: it says what can happen and how to avoid it, and
no more (IEC/IEEE 82079-1). Numbered steps, or more than four sentences or sixty words (our own
limits), belong into the steps or into a procedure of their own.

Good:

```yaml title="hazards/hot-fluid.md"
avoid: Wait until the pan can be touched, and wear gloves.
```

Bad:

```yaml title="hazards/hot-fluid.md"
avoid: "1. Switch off. 2. Wait an hour. 3. Touch the pan."
```
"""

import re
from collections.abc import Iterator

from underhoist.finding import Finding, Severity
from underhoist.model import Hazard, Manual
from underhoist.place import Placed
from underhoist.rules._pages import Pages
from underhoist.words import quote

CODE = "caution-with-steps"
SEVERITY = Severity.LOOK
PAGES = Pages((Hazard,))

MOST_SENTENCES = 4
MOST_WORDS = 60

_NUMBERED = re.compile(r"(?:^|\s)(?:[1-9][.)]|step [1-9][.:]?)\s", re.IGNORECASE)
_SENTENCE = re.compile(r"[.!?](?:\s|$)")


def check_page(manual: Manual, hazard: Hazard) -> Iterator[Finding]:
    """Find hazards whose harm or way to avoid it is a procedure."""
    for text in (hazard.harm, hazard.avoid):
        if why := _why(text):
            mend = "Move the steps to the procedure, and keep in the caution what to avoid."
            yield Finding(CODE, SEVERITY, text.at, quote(text.written), why, mend)


def _why(text: Placed[str]) -> str | None:
    """Say what makes it a procedure."""
    if len(_NUMBERED.findall(text.value)) > 1:
        return "The caution holds numbered steps."
    sentences, words = len(_SENTENCE.findall(text.value)), len(text.value.split())
    if sentences > MOST_SENTENCES:
        return f"The caution has {sentences} sentences here: nobody reads so many before an action."
    if words > MOST_WORDS:
        return f"The caution has {words} words here: nobody reads so many before an action."
    return None
