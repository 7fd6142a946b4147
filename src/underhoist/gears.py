"""Gear ratios of a unit family from its tooth counts; the arithmetic is the calculators'."""

from underhoist_calculators.gear_train import Ratios
from underhoist_calculators.train_kinds import TRAINS, Teeth

from underhoist.model import GearTrain

SUNS = {
    "ravigneaux": ("small_sun", "large_sun"),
    "ravigneaux-two-speed": ("input_sun", "low_sun"),
}
"""How a family names the suns of a Ravigneaux set: the double one first."""


def ratios(train: GearTrain) -> Ratios:
    """Compute the ratios; none for a train without its tooth counts."""
    teeth = {name: count.value for name, count in train.teeth.items()}
    kind, counts = train.type.value, teeth
    if kind == "ravigneaux":
        kind, counts = _ravigneaux(teeth)
    elif {"overdrive_sun", "overdrive_ring"} <= teeth.keys():
        kind = "simpson-overdrive"
    elif kind == "simpson-overdrive":
        kind = "simpson"
    if not {"sun", "ring"} <= counts.keys() and "double_sun" not in counts:
        return {}
    found = TRAINS[kind](counts).ratios
    return {gear: ratio for gear, ratio in found.items() if gear != "overdrive"}


def _ravigneaux(teeth: Teeth) -> tuple[str, Teeth]:
    """Tell a two-speed set from one with more gears by the names of its suns."""
    for kind, (double, single) in SUNS.items():
        if {double, single, "ring"} <= teeth.keys():
            found = {"double_sun": teeth[double], "single_sun": teeth[single]}
            return kind, {**found, "ring": teeth["ring"]}
    return "ravigneaux", {}
