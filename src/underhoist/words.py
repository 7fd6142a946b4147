"""Small pieces of the sentences that findings are made of."""

from collections.abc import Iterable


def nearest(word: str, known: Iterable[str]) -> str | None:
    """The known word that was probably meant, or None where none is near."""
    from difflib import get_close_matches  # only a mistake needs it  # noqa: PLC0415

    choices = list(known)
    by_folded = {choice.casefold(): choice for choice in reversed(choices)}
    near = get_close_matches(word.casefold(), by_folded, n=1, cutoff=0.6)
    return by_folded[near[0]] if near else None


def listing(words: Iterable[str], last: str = "and") -> str:
    """ "a, b and c"."""
    *most, final = list(words)
    return f"{', '.join(most)} {last} {final}" if most else final


def meant(word: str, known: Iterable[str], otherwise: str) -> str:
    """ "Did you mean …?" where a known word is near, else the other advice."""
    near = nearest(word, known)
    return f"Did you mean {near}?" if near else otherwise
