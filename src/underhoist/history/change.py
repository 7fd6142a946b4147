"""One difference between two builds, in words."""

from enum import IntEnum

from attrs import frozen


class Rank(IntEnum):
    """What is told first."""

    TORQUE = 0
    CAPACITY = 1
    OTHER = 2
    TEXT = 3


@frozen(kw_only=True)
class Change:
    """One difference: "Front band seat (band-seat): 9 -> 10 lbf·ft"."""

    words: str
    rank: Rank = Rank.OTHER
    about: str = ""
    """What the page owns that changed, as in its front matter: "fasteners/band-seat"."""
    elsewhere: bool = False
    """Whether the change was made on another page, and this one shows it."""
