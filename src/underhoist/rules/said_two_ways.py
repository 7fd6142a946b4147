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
from collections.abc import Iterable, Iterator, Mapping
from functools import lru_cache

from underhoist.finding import Finding, Severity
from underhoist.lexicon import key_of, many, unquoted
from underhoist.model import Body, Draft, Manual, Page, PlainPage
from underhoist.prose import prose
from underhoist.rules._pages import TEXTS

CODE = "said-two-ways"
SEVERITY = Severity.LOOK
PAGES = TEXTS

_EDGES = "\"'’‘“”.,;:!?()[]{}*_·–—"
_TOKEN = re.compile(r"\S+")
_HYPHENED = re.compile(r"[a-z]{2,}(?:-[a-z]{2,})+")
_TWO_COUNTRIES = (
    ("bush", "bushing"), ("pan", "sump"), ("tyre", "tire"), ("bonnet", "hood"),
    ("propshaft", "driveshaft"), ("transmission", "gearbox"), ("petrol", "gasoline"),
    ("kerb", "curb"), ("aluminium", "aluminum"), ("colour", "color"), ("grey", "gray"),
    ("circlip", "snap-ring"), ("handbrake", "parking-brake"),
)  # fmt: skip
"""British and American trade English, from memory; both words of a pair mean one thing here."""


def gather(manual: Manual, page: Page) -> str | None:
    """Take what stands between the page's spaces, each once, in small letters, a space between."""
    if isinstance(page, PlainPage) and page.words:
        return None
    text = unquoted(prose(page.body).said)
    if not isinstance(page, Draft):
        text = f"{page.title.value} {page.summary.value} {text}"
    return " ".join(dict.fromkeys(text.casefold().split()))


def check_gathered(manual: Manual, gathered: Mapping[str, str]) -> Iterator[Finding]:
    """Find pairs of spellings of which no page says that they are the same."""
    said = _words(set[str]().union(*map(str.split, gathered.values())))
    declared = _declared(manual)
    pairs = [(each, each.replace("-", "")) for each in said if _HYPHENED.fullmatch(each)]
    second = {
        (ours, other): written
        for ours, other in (*pairs, *_TWO_COUNTRIES)
        if _said(ours, said) and (written := _said(other, said))
        if key_of(ours) not in declared and key_of(other) not in declared
    }
    first = _first_pages(manual, gathered, frozenset(second.values()))
    for (ours, other), written in second.items():
        yield _finding(ours, other, written, first[written])


def _words(tokens: Iterable[str]) -> set[str]:
    """Return the words without the signs around them."""
    return {token.strip(_EDGES) for token in tokens}


def _declared(manual: Manual) -> set[str]:
    """Return the keys of every declared name, whatever it is declared as."""
    names: set[str] = set()
    for name, word in manual.words.items():
        names |= {key_of(each) for each in (name, *(o.value for o in (*word.also, *word.heard)))}
    return names


def _said(name: str, said: set[str]) -> str | None:
    """Return the name as it is said, one or many."""
    return next((each for each in (name, many(name)) if each in said), None)


def _first_pages(
    manual: Manual, gathered: Mapping[str, str], wanted: frozenset[str]
) -> dict[str, Page]:
    """Return for each of these words the first page that says it."""
    found: dict[str, Page] = {}
    for page in manual.texts() if wanted else ():
        for each in wanted & _words(gathered.get(page.file, "").split()):
            found.setdefault(each, page)
    return found


@lru_cache(maxsize=64)
def _offsets(body: Body) -> dict[str, int]:
    """Return where each word of a text begins, the first time."""
    found: dict[str, int] = {}
    for token in _TOKEN.finditer(unquoted(prose(body).words)):
        begin = token.end() - len(token[0].lstrip(_EDGES))
        for word in _words(token[0].casefold().split()):
            found.setdefault(word, begin)
    return found


def _finding(ours: str, other: str, written: str, page: Page) -> Finding:
    offset = _offsets(page.body).get(written)
    is_in_title = written in _words(page.title.value.casefold().split())
    placed = page.title if is_in_title else page.summary
    at = placed.at if offset is None else prose(page.body).place(offset, page.file)
    wrong = f"The manual says {ours} and {other}, and no page declares them as one word."
    mend = (
        f"Write one everywhere, or declare it on a page, under words: {ours}: {{also: [{other}]}}."
    )
    return Finding(CODE, SEVERITY, at, written, wrong, mend)
