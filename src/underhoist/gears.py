"""Gear ratios from tooth counts, by Willis' equation for each planetary set.

For a simple planetary set, speeds n and tooth counts z: z_s n_s + z_r n_r = (z_s + z_r) n_c.
"""

from collections.abc import Mapping
from fractions import Fraction

from underhoist.model import GearTrain

Ratios = Mapping[str, Fraction]
"""Turns of the input for one turn of the output by gear, reverse negative."""


def ratios(train: GearTrain) -> Ratios:
    """Compute the ratios; none for a train of another type or without its tooth counts."""
    teeth = {name: count.value for name, count in train.teeth.items()}
    if not train.type.value.startswith("simpson") or not {"sun", "ring"} <= teeth.keys():
        return {}
    found = _simpson(teeth["sun"], teeth["ring"])
    if {"overdrive_sun", "overdrive_ring"} <= teeth.keys():
        found["fourth"] = _overdrive(teeth["overdrive_sun"], teeth["overdrive_ring"])
    return found


def _simpson(sun: int, ring: int) -> dict[str, Fraction]:
    """Solve two equal sets on one sun; the front carrier and the rear ring drive the output.

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


def _overdrive(sun: int, ring: int) -> Fraction:
    """Solve one set with its sun held, driven by the carrier, the ring going out."""
    return Fraction(ring, sun + ring)
