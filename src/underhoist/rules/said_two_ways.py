"""A thing that is said in two ways.

The text says one thing in two spellings, such as one with a hyphen and one without, or with the
words of two countries, and no page declares that they are the same. A reader looks for two things,
and the search finds half of the pages. Declare the shop's word, the other below it under `also`:
the search then knows both, and the check asks for the shop's.

Good:

```yaml title="index.md"
words:
  kick-down: {also: [kickdown]}
```

```markdown title="kestrel-3/count-turns.md"
## Steps

1. Before the kick-down test, count: <reading:turns-to-seat>.
```

Bad:

```markdown title="kestrel-3/count-turns.md"
## Steps

1. Before the kick-down test, count: <reading:turns-to-seat>.

    Why: The kickdown wants a tight band.
```

Bad (the words of two countries):

```markdown title="kestrel-3/count-turns.md"
## Steps

1. Hold the bush and count: <reading:turns-to-seat>.

    Why: A worn bushing lets the band slip.
```
"""

import re
from collections.abc import Iterator, Mapping

from underhoist.finding import Finding, Severity
from underhoist.lexicon import key_of, many, unquoted
from underhoist.model import Draft, Manual, Page, PlainPage
from underhoist.prose import prose
from underhoist.rules._pages import TEXTS

CODE = "said-two-ways"
SEVERITY = Severity.LOOK
PAGES = TEXTS

_EDGES = "\"'’‘“”.,;:!?()[]{}*_·–—"
_HYPHENED = re.compile(r"[a-z]{2,}(?:-[a-z]{2,})+")
_TWO_COUNTRIES = (
    ("bush", "bushing"), ("pan", "sump"), ("tyre", "tire"), ("bonnet", "hood"),
    ("propshaft", "driveshaft"), ("transmission", "gearbox"), ("petrol", "gasoline"),
    ("kerb", "curb"), ("aluminium", "aluminum"), ("colour", "color"), ("grey", "gray"),
    ("circlip", "snap-ring"), ("handbrake", "parking-brake"),
)  # fmt: skip
"""British and American trade English, from memory; both words of a pair mean one thing here."""


def gather(manual: Manual, page: Page) -> str | None:
    """Take the words of the page, each once, in small letters and a space between."""
    if isinstance(page, PlainPage) and page.words:
        return None
    text = unquoted(prose(page.body).words)
    if not isinstance(page, Draft):
        text = f"{page.title.value} {page.summary.value} {text}"
    return " ".join(_spellings(text))


def check_gathered(manual: Manual, gathered: Mapping[str, str]) -> Iterator[Finding]:
    """Find pairs of spellings of which no page says that they are the same."""
    said = set[str]().union(*map(str.split, gathered.values()))
    declared = _declared(manual)
    pairs = [(each, each.replace("-", "")) for each in said if _HYPHENED.fullmatch(each)]
    for ours, other in (*pairs, *_TWO_COUNTRIES):
        second = _said(other, said)
        known = key_of(ours) in declared or key_of(other) in declared
        if _said(ours, said) and second and not known:
            files = (file for file, words in gathered.items() if second in words.split())
            yield _finding(ours, other, second, _page(manual, next(files)))


def _spellings(text: str) -> dict[str, None]:
    """Return the words of a text, each once."""
    tokens = dict.fromkeys(text.casefold().split())
    return dict.fromkeys([token.strip(_EDGES) for token in tokens])


def _declared(manual: Manual) -> set[str]:
    """Return the keys of every declared name, whatever it is declared as."""
    names: set[str] = set()
    for name, word in manual.words.items():
        names |= {key_of(each) for each in (name, *(o.value for o in (*word.also, *word.heard)))}
    return names


def _said(name: str, said: set[str]) -> str | None:
    """Return the name as it is said, one or many."""
    return next((each for each in (name, many(name)) if each in said), None)


def _page(manual: Manual, file: str) -> Page:
    return next(page for page in manual.texts() if page.file == file)


def _begins(token: re.Match[str]) -> int:
    """Return where the word begins in what stands between two spaces."""
    return token.end() - len(token[0].lstrip(_EDGES))


def _finding(ours: str, other: str, written: str, page: Page) -> Finding:
    text = prose(page.body)
    tokens = re.finditer(r"\S+", unquoted(text.words))
    found = next((each for each in tokens if written in _spellings(each[0])), None)
    placed = page.title if written in _spellings(page.title.value) else page.summary
    at = text.place(_begins(found), page.file) if found else placed.at
    wrong = f"The manual says {ours} and {other}, and no page declares them as one word."
    mend = (
        f"Write one everywhere, or declare it on a page, under words: {ours}: {{also: [{other}]}}."
    )
    return Finding(CODE, SEVERITY, at, written, wrong, mend)
