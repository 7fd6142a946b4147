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

from attrs import frozen

from underhoist.finding import Finding, Severity
from underhoist.lexicon import key_of, many, unquoted
from underhoist.model import Draft, Manual, Page, PlainPage
from underhoist.prose import prose

CODE = "said-two-ways"
SEVERITY = Severity.LOOK

_EDGES = "\"'’‘“”.,;:!?()[]{}*_·–—"
_HYPHENED = re.compile(r"[a-z]{2,}(?:-[a-z]{2,})+")
_TWO_COUNTRIES = (
    ("bush", "bushing"), ("pan", "sump"), ("tyre", "tire"), ("bonnet", "hood"),
    ("propshaft", "driveshaft"), ("transmission", "gearbox"), ("petrol", "gasoline"),
    ("kerb", "curb"), ("aluminium", "aluminum"), ("colour", "color"), ("grey", "gray"),
    ("circlip", "snap-ring"), ("handbrake", "parking-brake"),
)  # fmt: skip
"""British and American trade English, from memory; both words of a pair mean one thing here."""


@frozen
class _Seen:
    """A spelling as it stands first in the manual."""

    page: Page
    token: str


def check(manual: Manual) -> Iterator[Finding]:
    """Find pairs of spellings of which no page says that they are the same."""
    seen = _spellings(manual)
    declared = _declared(manual)
    pairs = [(each, each.replace("-", "")) for each in seen if _HYPHENED.fullmatch(each)]
    for ours, other in (*pairs, *_TWO_COUNTRIES):
        first, second = _first(seen, ours), _first(seen, other)
        known = key_of(ours) in declared or key_of(other) in declared
        if first and second and not known:
            yield _finding(ours, other, second)


def _spellings(manual: Manual) -> Mapping[str, _Seen]:
    """Return each word of the texts, in small letters, with where it stands first."""
    tokens: dict[str, Page] = {}
    for page in manual.texts():
        if isinstance(page, PlainPage) and page.words:
            continue
        for token in set(_text(page).split()):
            tokens.setdefault(token, page)
    return {token.strip(_EDGES): _Seen(page, token) for token, page in tokens.items()}


def _text(page: Page) -> str:
    text = unquoted(prose(page.body).words).casefold()
    if isinstance(page, Draft):
        return text
    return f"{page.title.value} {page.summary.value} {text}".casefold()


def _declared(manual: Manual) -> set[str]:
    """Return the keys of every declared name, whatever it is declared as."""
    names: set[str] = set()
    for name, word in manual.words.items():
        names |= {key_of(each) for each in (name, *(o.value for o in (*word.also, *word.heard)))}
    return names


def _first(seen: Mapping[str, _Seen], name: str) -> _Seen | None:
    return seen.get(name) or seen.get(many(name))


def _finding(ours: str, other: str, second: _Seen) -> Finding:
    page = second.page
    text = prose(page.body)
    found = re.search(re.escape(second.token), text.words, re.IGNORECASE)
    in_title = second.token in page.title.value.casefold()
    placed = page.title if in_title else page.summary
    at = text.place(found.start(), page.file) if found else placed.at
    written = second.token.strip(_EDGES)
    wrong = f"The manual says {ours} and {other}, and no page declares them as one word."
    mend = (
        f"Write one everywhere, or declare it on a page, under words: {ours}: {{also: [{other}]}}."
    )
    return Finding(CODE, SEVERITY, at, written, wrong, mend)
