"""Which of the shop's own words a page says."""

import re
from collections.abc import Mapping
from functools import lru_cache

from attrs import field, frozen

from underhoist.lexicon import many
from underhoist.model import Manual, Page
from underhoist.prose import prose


@frozen
class _Forms:
    """The words as they may be said, one and many."""

    word_of: Mapping[str, str] = field(factory=dict[str, str])
    """Our word by its form."""
    by_first: Mapping[str, tuple[tuple[str, ...], ...]] = field(
        factory=dict[str, tuple[tuple[str, ...], ...]]
    )
    """The forms, each in its single words, by the first of them."""


def words_said(manual: Manual, page: Page) -> tuple[str, ...]:
    """Name each of the shop's words that a page says in its title, summary or text, once."""
    forms = _forms(tuple(manual.words))
    text = f"{page.title.value} {page.summary.value} {prose(page.body).said}"
    said = _plain(text).split()
    found: dict[str, None] = {}
    for at, word in enumerate(said):
        for parts in forms.by_first.get(word, ()):
            if tuple(said[at : at + len(parts)]) == parts:
                found[forms.word_of[" ".join(parts)]] = None
    return tuple(found)


@lru_cache(maxsize=8)
def _forms(names: tuple[str, ...]) -> _Forms:
    word_of = {form: name for name in names for form in (_plain(many(name)), _plain(name))}
    by_first: dict[str, tuple[tuple[str, ...], ...]] = {}
    for form in word_of:
        parts = tuple(form.split())
        by_first[parts[0]] = (*by_first.get(parts[0], ()), parts)
    return _Forms(word_of, by_first)


def _plain(text: str) -> str:
    """Lower the letters, and put one space between words: hyphens and line ends part them too."""
    return " ".join(_WORD.findall(text.casefold()))


_WORD = re.compile(r"[^\W_]+(?:[·'][^\W_]+)*")
