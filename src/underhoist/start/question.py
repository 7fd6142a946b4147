"""One question of `underhoist draft`, and what an answer to it means."""

import re
import unicodedata
from itertools import chain, count
from typing import Any

from attrs import field, frozen

from underhoist.place import Place
from underhoist.source.faults import Faults
from underhoist.source.nodes import Scalar
from underhoist.source.scalars import placed_reader
from underhoist.words import listing, nearest

NONE = "-"
"""Answers that nothing of what is proposed is wanted."""
NEW = "+"
"""Before a word: it is new, however near it is to one that is there."""

type Answer = tuple[str, ...]


class UnclearError(Exception):
    """An answer that cannot be taken; the text says why and what to type."""


@frozen
class Offer:
    """Something that the manual has already: what is written, and what people call it."""

    id: str
    title: str = ""

    @property
    def shown(self) -> str:
        """Return both, once where they are alike."""
        return f"{self.id}  {self.title}" if self.title else self.id

    @property
    def names(self) -> tuple[str, ...]:
        """Return what it may be called: id, title and the words of both."""
        whole = (self.id, self.title)
        return (*filter(None, whole), *self.id.split("-"), *self.title.split())


@frozen(kw_only=True)
class Question:
    """A question, by the key of the page that its answer fills.

    `new` is the model's type of what may be written besides the offers; None where only they will
    do. With `named` an answer is a name, and after a colon a value of that type. `proposed` stands
    where nothing is answered; `fixed` stands whatever is answered.
    """

    key: str
    words: str
    offers: tuple[Offer, ...] = ()
    several: bool = False
    new: Any = None
    named: bool = False
    proposed: Answer = ()
    fixed: Answer = ()
    taken: frozenset[str] = frozenset()
    """What must not be answered because something else is called so."""
    why: str = field(default="")
    """Why something is proposed or fixed."""

    def read(self, text: str) -> Answer:
        """Return what is meant. Raises UnclearError where that is not certain."""
        text = " ".join(text.split())
        if text == NONE:
            return self.fixed
        if not text:
            return tuple(dict.fromkeys([*self.fixed, *self.proposed]))
        pieces = [each.strip() for each in text.split(",")] if self.several else [text]
        given = (self._one(piece) for piece in pieces if piece)
        return tuple(dict.fromkeys([*self.fixed, *given]))

    def _one(self, text: str) -> str:
        if self.named:
            return self._pair(text)
        if text.startswith(NEW) and self.new is not None:
            return self._checked(text.removeprefix(NEW).strip())
        if found := self._offered(text):
            return found
        if self.new is None:
            raise UnclearError(self._not_there(text))
        near = nearest(text, [each.id for each in self.offers])
        if near:
            number = self._number(near)
            msg = f"Did you mean {near}? Type {number}, or {NEW}{text} for a new one."
            raise UnclearError(msg)
        return self._checked(text)

    def _offered(self, text: str) -> str | None:
        """Find an offer by its number, id, title or a part of either."""
        if text.isdecimal() and self.offers and self.new in (None, str):
            if 1 <= int(text) <= len(self.offers):
                return self.offers[int(text) - 1].id
            msg = f"There are {len(self.offers)} to choose from; {text} is none of them."
            raise UnclearError(msg)
        wanted = text.casefold()
        for offer in self.offers:
            if wanted in (offer.id.casefold(), offer.title.casefold()):
                return offer.id
        if self.new is not None:
            return None
        parts = [each.id for each in self.offers if wanted in each.shown.casefold()]
        if len(parts) > 1:
            msg = f'"{text}" can be {listing(parts, "or")}. Type one of them or its number.'
            raise UnclearError(msg)
        return parts[0] if parts else None

    def _not_there(self, text: str) -> str:
        near = self._near(text)
        if near:
            return f'"{text}" is not there. Did you mean {near}? Type {self._number(near)}.'
        if not self.offers:
            return f'"{text}" is not there, and there is nothing to choose from. Press Enter.'
        return f'"{text}" is not there. Type a number, or Enter to go on without.'

    def _near(self, text: str) -> str | None:
        """Find the offer that was meant, by its id, its title or a word of either."""
        names = {name: each.id for each in reversed(self.offers) for name in each.names}
        near = nearest(text, names)
        return names[near] if near else None

    def _number(self, offer_id: str) -> int:
        return [each.id for each in self.offers].index(offer_id) + 1

    def _pair(self, text: str) -> str:
        name, colon, value = (part.strip() for part in text.partition(":"))
        if not name:
            msg = f'"{text}" has no name. Write a name, a colon and its value.'
            raise UnclearError(msg)
        return f"{name}: {self._checked(value)}" if colon and value else name

    def _checked(self, text: str) -> str:
        """Return the text if the model would read it."""
        try:
            placed_reader(self.new)(Scalar(text, Place("", 1, 1), self.key), None)
        except Faults as faults:
            found = faults.findings[0]
            msg = f"{found.wrong} {found.mend}"
            raise UnclearError(msg) from None
        if text in self.taken:
            msg = f"{text} is there already. Write another name, such as {free(text, self.taken)}."
            raise UnclearError(msg)
        return text


def id_of(words: str) -> str:
    """Make an id of a title: Set the band becomes set-the-band; empty where no letter is left."""
    plain = unicodedata.normalize("NFKD", words).encode("ascii", "ignore").decode()
    return "-".join(re.findall(r"[a-z0-9]+", plain.lower()))


def free(name: str, taken: frozenset[str]) -> str:
    """Return the name, with the first number behind it that makes it a new one if it is not."""
    numbered = (f"{name}-{number}" for number in count(2))
    return next(each for each in chain([name], numbered) if each not in taken)
