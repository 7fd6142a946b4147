"""Another word than the shop's.

Each thing has one word in this manual, declared under `words` on a page. A reader who meets two
names looks for two things. The search knows the others, so nobody has to write them; what an owner
says, in quotation marks or as a complaint, stays as it was said.

Good:

```yaml title="index.md"
words:
  bush: {also: [bushing, plain bearing]}
```

```markdown title="kestrel-3/count-turns.md"
## Steps

1. Hold the bush and count: <reading:turns-to-seat>. The owner says "the bushing knocks".
```

Bad:

```yaml title="index.md"
words:
  bush: {also: [bushing, plain bearing]}
```

```markdown title="kestrel-3/count-turns.md"
## Steps

1. Hold the bushing and count: <reading:turns-to-seat>.
```
"""

import re
from collections.abc import Iterator

from underhoist.finding import Edit, Finding, Severity
from underhoist.lexicon import Lexicon, Said, lexicon_of, unquoted
from underhoist.model import Draft, Manual, Page, PlainPage
from underhoist.place import Place, Placed
from underhoist.prose import Prose, prose
from underhoist.rules._front_texts import front_texts
from underhoist.rules._pages import TEXTS
from underhoist.words import quote

CODE = "other-word"
SEVERITY = Severity.LOOK
PAGES = TEXTS

_PLAIN = re.compile(r"[\w ·-]+")
"""What may stand in the front matter without quotes."""


def check_page(manual: Manual, page: Page) -> Iterator[Finding]:
    """Find other names of declared things in titles, names and text; pages of words are free."""
    if isinstance(page, PlainPage) and page.words:
        return
    lexicon = lexicon_of(manual.words)
    if not lexicon.ours:
        return
    if not isinstance(page, Draft):
        yield from _in_front(page, lexicon)
    yield from _in_text(page, lexicon)


def _in_front(page: Page, lexicon: Lexicon) -> Iterator[Finding]:
    texts = list(front_texts(page))
    near = lexicon.near("\n".join(placed.value for placed in texts))
    for placed in texts if near else ():
        for said in lexicon.said_of(near, unquoted(placed.value)):
            yield _in_value(said, placed)


def _in_value(said: Said, placed: Placed[str]) -> Finding:
    """Point at the word itself where the value stands as it was written, else at the value."""
    at = placed.at
    if not placed.is_plain:
        return _finding(said, at, None)
    start, end = at.column + said.start, at.column + said.end
    plain = _PLAIN.fullmatch(said.instead)
    edit = Edit(at.file, at.line, start, at.line, end, said.instead) if plain else None
    return _finding(said, Place(at.file, at.line, start), edit)


def _in_text(page: Page, lexicon: Lexicon) -> Iterator[Finding]:
    text = prose(page.body)
    near = lexicon.near(text.said)
    for said in lexicon.said_of(near, unquoted(text.words)) if near else ():
        yield _finding(said, text.place(said.start, page.file), _edit(said, text, page.file))


def _edit(said: Said, text: Prose, file: str) -> Edit:
    start, end = text.place(said.start, file), text.place(said.end, file)
    return Edit(file, start.line, start.column, end.line, end.column, said.instead)


def _finding(said: Said, at: Place, edit: Edit | None) -> Finding:
    wrong = f"This manual says {said.ours}."
    mend = f"Write {said.instead}, or put what somebody else said in quotation marks."
    return Finding(CODE, SEVERITY, at, quote(said.written), wrong, mend, edit)
