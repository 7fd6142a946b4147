"""Signal words by ANSI Z535.4 / Z535.6 and ISO 3864: which harm asks for which word."""

from collections.abc import Iterable
from enum import StrEnum
from typing import Literal

Signal = Literal["danger", "warning", "caution", "notice"]

SIGNALS: tuple[Signal, ...] = ("danger", "warning", "caution", "notice")
"""The words, the gravest first."""


class Consequence(StrEnum):
    """What happens where a hazard is not avoided."""

    GRAVE = "death or serious injury"
    MINOR = "minor or moderate injury"
    DAMAGE = "damage only, no injury"


def word_for(consequence: Consequence, *, certain: bool) -> Signal:
    """Give the word for a consequence; `certain` where it will happen if not avoided, not could."""
    if consequence is Consequence.GRAVE:
        return "danger" if certain else "warning"
    return "caution" if consequence is Consequence.MINOR else "notice"


def gravest(words: Iterable[Signal]) -> Signal:
    """Give the word of a message that covers several hazards: that of the greatest."""
    return min(words, key=SIGNALS.index)


def has_alert_symbol(word: Signal) -> bool:
    """Whether the safety alert symbol goes with the word: it means injury, so not with NOTICE."""
    return word != "notice"
