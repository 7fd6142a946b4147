"""A signal word weaker than the harm.

By ANSI Z535.6 and ISO 3864 the word tells the worst that can happen: DANGER and WARNING are death
or serious injury, which will or could happen; CAUTION is lesser injury; NOTICE is damage alone. A
harm that speaks of killing under CAUTION, or of an injury under NOTICE, is read too lightly.

Good:

```yaml title="hazards/flying-parts.md"
signal: warning
harm: A part that lets go kills whoever stands behind it.
```

Bad:

```yaml title="hazards/flying-parts.md"
signal: caution
harm: A part that lets go kills whoever stands behind it.
```
"""

import re
from collections.abc import Iterator

from underhoist.finding import Finding, Severity
from underhoist.model import Hazard, Manual
from underhoist.rules._pages import Pages
from underhoist.signal_words import SIGNALS, Consequence, word_for

CODE = "signal-word"
SEVERITY = Severity.STOP
PAGES = Pages((Hazard,))

_WORDS = {
    Consequence.GRAVE: re.compile(
        r"\b(?:kills?\b(?! the engine)|killed|death|deadly|(?<!engine )(?:dies|die)\b|fatal\w*"
        r"|crush(?:es|ed)? (?:whoever|somebody|people|a person|you)|blinds?\b|blinded|maims?"
        r"|los(?:es?|ing) (?:an?|the|your) (?:eye|hand|arm|finger|leg)|suffocat\w+|electrocut\w+"
        r"|takes the (?:arm|hand|finger)|burns (?:everybody|whoever|somebody|people))",
        re.IGNORECASE,
    ),
    Consequence.MINOR: re.compile(
        r"\b(?:injur\w+|scald\w*|bruis\w+|dizzy|rash(?:es)?|skin|fingers?|hands|eyes|lungs"
        r"|(?:hurts?|cuts?|burns?) (?:you|somebody|people|whoever))\b",
        re.IGNORECASE,
    ),
}
"""Words of a harm that tell of what it does to people. What a machine suffers is not here."""


def check_page(manual: Manual, hazard: Hazard) -> Iterator[Finding]:
    """Find hazards whose harm asks for a graver word."""
    for consequence, words in _WORDS.items():
        found = words.search(hazard.harm.value)
        least = word_for(consequence, certain=False)
        if found:
            if SIGNALS.index(hazard.signal.value) > SIGNALS.index(least):
                yield _finding(hazard, found[0], consequence, least)
            break


def _finding(hazard: Hazard, said: str, consequence: Consequence, least: str) -> Finding:
    signal = hazard.signal
    wrong = f"The harm says “{said}”: {consequence} is at least {least.upper()}."
    certain = word_for(consequence, certain=True)
    graver = f", or {certain} where it will happen unless avoided" if certain != least else ""
    mend = f"Write {least}{graver}."
    return Finding(CODE, SEVERITY, signal.at, signal.written, wrong, mend)
