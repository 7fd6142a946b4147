"""The rule for independent checks that each find one cause: likeliest per minute first.

J. B. Kadane and H. A. Simon, Annals of Statistics 5 (1977), 237-255; D. Heckerman, J. S. Breese and
K. Rommelse, Communications of the ACM 38 (1995), no. 3. It is right where no way is shared, each
cause is found by its own check alone, and the last check is made as well.
"""

from collections.abc import Sequence
from math import inf


def by_likelihood_to_cost(
    shares: Sequence[float], minutes: Sequence[float], detection: Sequence[float] | None = None
) -> tuple[int, ...]:
    """Order the checks by falling share · detection / minutes; free ones first, impossible last.

    Shares need not make 1. Equal ones stay in the order given.
    """
    seen = detection or [1.0] * len(shares)
    chances = [share * each for share, each in zip(shares, seen, strict=True)]

    def index(number: int) -> float:
        if chances[number] <= 0:
            return -inf
        return chances[number] / minutes[number] if minutes[number] > 0 else inf

    return tuple(sorted(range(len(shares)), key=lambda number: -index(number)))


def expected_minutes(
    order: Sequence[int],
    shares: Sequence[float],
    minutes: Sequence[float],
    mend_minutes: Sequence[float] | None = None,
) -> float:
    """Give the mean minutes of an order; the last check is made as well. Shares are scaled to 1."""
    total = sum(shares)
    left, spent = 1.0, 0.0
    for number in order:
        spent += left * minutes[number]
        left -= shares[number] / total
    mends = mend_minutes or [0.0] * len(shares)
    return spent + sum(s / total * mend for s, mend in zip(shares, mends, strict=True))
