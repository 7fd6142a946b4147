"""Small pieces of the sentences that findings are made of."""

from collections.abc import Iterable
from functools import lru_cache

LONGEST_QUOTE = 60
"""Characters of the author's text that a finding repeats."""

SURE, CLEARLY = 0.75, 0.08
"""Likeness from which a word is surely meant, and its lead over the next (1 is the same word)."""

NOT_WRITTEN = "???"
"""What an author puts, and a drafted page has, where something is still to be written."""


def quote(text: str) -> str:
    """Put the author's text on one line, without control characters, cut where it is long."""
    line = " ".join(text[: 10 * LONGEST_QUOTE].split())
    line = "".join(sign if sign.isprintable() else "\ufffd" for sign in line)
    return line if len(line) <= LONGEST_QUOTE else line[: LONGEST_QUOTE - 1] + "…"


def nearest(word: str, known: Iterable[str]) -> str | None:
    """Return the known word that was probably meant, or None where none is near."""
    return _nearest(word[:LONGEST_QUOTE], tuple(known))


@lru_cache(maxsize=65_536)
def _nearest(word: str, known: tuple[str, ...]) -> str | None:
    from difflib import get_close_matches  # noqa: PLC0415  # only a mistake needs it

    by_folded = {choice.casefold(): choice for choice in reversed(known)}
    near = get_close_matches(word.casefold(), by_folded, n=1, cutoff=0.6)
    return by_folded[near[0]] if near else None


def sure(word: str, known: Iterable[str]) -> str | None:
    """Return the known word that is surely meant: very near, and no other as near."""
    choices = tuple(known)
    near = nearest(word, choices)
    if near is None or len(word) > LONGEST_QUOTE:
        return None
    from difflib import SequenceMatcher  # noqa: PLC0415  # only a mistake needs it

    def likeness(choice: str) -> float:
        return SequenceMatcher(None, choice.casefold(), word.casefold()).ratio()

    others = max((likeness(each) for each in choices if each != near), default=0.0)
    return near if likeness(near) >= max(SURE, others + CLEARLY) else None


def listing(words: Iterable[str], last: str = "and") -> str:
    """Join words as in a sentence: a, b and c."""
    *most, final = list(words)
    return f"{', '.join(most)} {last} {final}" if most else final


def meant(word: str, known: Iterable[str], otherwise: str) -> str:
    """Ask whether a near known word was meant, else give the other advice."""
    near = nearest(word, known)
    return f"Did you mean {near}?" if near else otherwise
