"""Gear ratios from tooth counts, by Willis' equation for each planetary set.

For a simple planetary set, speeds n and tooth counts z: z_s n_s + z_r n_r = (z_s + z_r) n_c.
"""

from collections.abc import Mapping
from fractions import Fraction

from underhoist.model import GearTrain

Ratios = Mapping[str, Fraction]


def ratios(train: GearTrain) -> Ratios:
    """Ratio of input to output speed by gear, reverse negative; none for a train not known here."""
    teeth = {name: count.value for name, count in train.teeth.items()}
    if not {"sun", "ring"} <= teeth.keys():
        return {}
    if train.type.value == "simpson":
        return _simpson(teeth["sun"], teeth["ring"])
    return {}


def _simpson(sun: int, ring: int) -> Ratios:
    """Two equal sets on one sun: the front carrier and the rear ring drive the output.

    First: input to the front ring, rear carrier held. Second: input to the front ring, sun held.
    Third: all turn together. Reverse: input to the sun, rear carrier held.
    """
    step = Fraction(sun, ring)
    return {
        "first": 2 + step,
        "second": 1 + step,
        "third": Fraction(1),
        "reverse": -1 / step,
    }
