"""A word that is declared twice.

Each thing has one word, and each other name belongs to one thing. A name that stands under two
words tells the text two things to say. What can mean several things is `heard`, not `also`: the
search then offers each of them.

Good:

```yaml title="index.md"
words:
  petrol: {also: [gasoline], heard: [gas]}
  gas fuel: {also: [autogas], heard: [gas]}
```

Bad:

```yaml title="index.md"
words:
  petrol: {also: [gasoline, gas]}
  gas fuel: {also: [autogas, gas]}
```
"""

from collections.abc import Iterator

from underhoist.finding import Finding, Severity
from underhoist.lexicon import key_of, many
from underhoist.links import word_anchor
from underhoist.model import Manual
from underhoist.place import Place
from underhoist.words import quote

CODE = "word-declared-twice"
SEVERITY = Severity.STOP


def check(manual: Manual) -> Iterator[Finding]:
    """Find words declared by two pages, and other names that belong to two words."""
    pages = [page for page in manual.plain.values() if page.words]
    first: dict[str, tuple[str, str]] = {}
    for page in pages:
        for name in page.words:
            word, file = first.setdefault(word_anchor(name), (name, page.file))
            if (word, file) != (name, page.file):
                wrong = f"{file} declares {word} already."
                mend = "Keep one of the two and put the other names there."
                yield Finding(CODE, SEVERITY, Place(page.file, 1, 1), quote(name), wrong, mend)
    keys = {key_of(word): word for word, _ in first.values()}
    taken = {form: word for key, word in keys.items() for form in (key, many(key))}
    for page in pages:
        for name, word in page.words.items():
            for other in word.also:
                key = key_of(other.value)
                owner = taken.get(key)
                if owner is None:
                    taken[key] = name
                else:
                    wrong, mend = _wrong(owner, name)
                    yield Finding(CODE, SEVERITY, other.at, quote(other.value), wrong, mend)


def _wrong(owner: str, name: str) -> tuple[str, str]:
    if owner == name:
        return f"It stands under {name} twice.", "Take it out here."
    return (
        f"It belongs to {owner} already.",
        "Keep it under one of them. If it can mean both, put it under heard in both.",
    )
