"""Finds what became what between two lists: by likeness, never by number."""

from collections.abc import Callable, Sequence
from difflib import SequenceMatcher

from attrs import frozen

ALIKE = 0.5
"""Texts at least so alike are one that was reworded."""


@frozen
class Pairing:
    """Indexes into the old and the new list."""

    pairs: tuple[tuple[int, int], ...]
    """What became what, in the order of the new list."""
    gone: tuple[int, ...]
    added: tuple[int, ...]

    @property
    def moved(self) -> tuple[tuple[int, int], ...]:
        """The fewest pairs that have to move to make the one order out of the other."""
        staying = _longest_rise([old for old, _ in self.pairs])
        return tuple(pair for pair in self.pairs if pair[0] not in staying)


def text_likeness(old: str, new: str) -> float:
    """Likeness of two texts from 0 to 1."""
    matcher = SequenceMatcher(None, old.split(), new.split(), autojunk=False)
    return matcher.ratio() if matcher.real_quick_ratio() >= ALIKE else 0.0


def pair(old: Sequence[str], new: Sequence[str], likeness: Callable[[int, int], float]) -> Pairing:
    """Pair equal items first, those that kept their order before others, then alike ones."""
    if old == new:
        return Pairing(tuple((at, at) for at in range(len(new))), (), ())
    pairs: list[tuple[int, int]] = []
    for block in SequenceMatcher(None, old, new, autojunk=False).get_matching_blocks():
        pairs += [(block.a + step, block.b + step) for step in range(block.size)]
    before = _left(len(old), {a for a, _ in pairs})
    after = _left(len(new), {b for _, b in pairs})
    scores = sorted(
        (-(1.0 if old[a] == new[b] else likeness(a, b)), abs(a - b), a, b)
        for a in before
        for b in after
    )
    for score, _, a, b in scores:
        if -score >= ALIKE and a in before and b in after:
            pairs.append((a, b))
            before.remove(a)
            after.remove(b)
    return Pairing(tuple(sorted(pairs, key=lambda each: each[1])), tuple(before), tuple(after))


def _left(count: int, taken: set[int]) -> list[int]:
    return [index for index in range(count) if index not in taken]


def _longest_rise(numbers: list[int]) -> set[int]:
    """Give the members of a longest rising part of the numbers, which are all different."""
    best: list[list[int]] = []
    for number in numbers:
        longest = max((rise for rise in best if rise[-1] < number), key=len, default=list[int]())
        best.append([*longest, number])
    return set(max(best, key=len, default=list[int]()))
