"""The shop's declared words as a text is compared with them: every spelling, one and many."""

import re
from collections.abc import Iterator, Mapping
from functools import cached_property, lru_cache

from attrs import frozen

from underhoist.model import Word

_GAP = r"(?:[ \t-]+|[ \t]*\n[ \t]*)"
"""What may stand between two words of one name: a space, a hyphen, the end of a line."""
_MANY_ES = re.compile(r"(?:s|x|z|ch|sh)$")
_MANY_IES = re.compile(r"[^aeiou]y$")

_QUOTED = re.compile(r'"[^"\n]{1,500}"|“[^”]{1,500}”')


def unquoted(text: str) -> str:
    """Blank what stands in quotation marks: it is what somebody else said."""
    if '"' not in text and "“" not in text:
        return text
    return _QUOTED.sub(lambda found: re.sub(r"[^\n]", " ", found[0]), text)


def many(name: str) -> str:
    """Return the plural of a name by the common rule: bush, bushes; a unit has none."""
    if "·" in name:
        return name
    if _MANY_ES.search(name):
        return f"{name}es"
    return f"{name[:-1]}ies" if _MANY_IES.search(name) else f"{name}s"


def key_of(name: str) -> str:
    """Return what two spellings of one name have in common: letters, digits, one space between."""
    return " ".join(name.casefold().replace("-", " ").split())


@frozen
class Said:
    """Another name found in a text: where, as written, the shop's word and what to write."""

    start: int
    end: int
    written: str
    ours: str
    instead: str


@frozen(slots=False)
class Lexicon:
    """The other names that the text must not use, with the shop's word for each."""

    words: tuple[tuple[str, tuple[str, ...]], ...]
    """The shop's words, each with its other names."""

    @cached_property
    def ours(self) -> dict[str, str]:
        """The shop's word for each other name, by its key."""
        return {key_of(other): name for name, others in self.words for other in others}

    def said_of(self, near: tuple[str, ...], text: str) -> Iterator[Said]:
        """Find other names in a text, of those that `near` gave for it or for more than it.

        A name inside a longer one that is declared is not found.
        """
        for found in _pattern(near).finditer(text):
            ours = self._forms.get(key_of(found[0]))
            if ours is not None:
                yield Said(*found.span(), found[0], *_like(found[0], *ours))

    def near(self, text: str) -> tuple[str, ...]:
        """Return the keys of the names that may stand in a text, the longest first.

        A quick look: most texts hold none of the other names, and nothing is returned for them.
        """
        line = key_of(text)
        if not any(stem in line for stem in self._stems):
            return ()
        return tuple(name for name, stem in self._names if stem in line)

    @cached_property
    def _stems(self) -> tuple[str, ...]:
        return tuple(map(_stem, self.ours))

    @cached_property
    def _forms(self) -> dict[str, tuple[str, str]]:
        """Our word, and the form of it to write, by the key of each other name, one and many."""
        one = {other: (ours, ours) for other, ours in self.ours.items()}
        more = {many(other): (ours, many(ours)) for other, ours in self.ours.items()}
        return more | one

    @cached_property
    def _names(self) -> tuple[tuple[str, str], ...]:
        """Every declared name with its stem, the longest first: it goes before those inside it."""
        names = {*(key_of(name) for name, _ in self.words), *self.ours}
        longest_first = sorted(filter(None, names), key=len, reverse=True)
        return tuple((name, _stem(name)) for name in longest_first)


def lexicon_of(words: Mapping[str, Word]) -> Lexicon:
    """Return the lexicon of these words, for the same words the one that was made before."""
    return _lexicon(
        tuple((name, tuple(each.value for each in word.also)) for name, word in words.items())
    )


_lexicon = lru_cache(maxsize=4)(Lexicon)


def _stem(name: str) -> str:
    """Return what one and many have in common."""
    return name[:-1] if _MANY_IES.search(name) else name


@lru_cache(maxsize=1024)
def _pattern(names: tuple[str, ...]) -> re.Pattern[str]:
    forms = (form for name in names for form in (many(name), name))
    written = (_GAP.join(map(re.escape, form.split())) for form in forms)
    return re.compile(rf"(?<![\w-])(?:{'|'.join(written)})(?![\w-])", re.IGNORECASE)


def _like(written: str, ours: str, instead: str) -> tuple[str, str]:
    """Return our word, and what to write with the capitals of what stands there."""
    if len(written) > 1 and written.isupper() and written.casefold() != ours.casefold():
        short = len(written) <= _SHORT
        return ours, instead if short else instead.upper()
    if written[0].isupper():
        return ours, instead[0].upper() + instead[1:]
    return ours, instead


_SHORT = 4
"""Letters. Capitals so short are an abbreviation, such as ATF: they say nothing of the line."""
