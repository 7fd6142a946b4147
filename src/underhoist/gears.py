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
    kind, teeth = as_calculated(train)
    suns = {"double_sun", "single_sun"} if kind.startswith("ravigneaux") else {"sun"}
    if not {"ring", *suns} <= teeth.keys():
        return {}
    found = TRAINS[kind](teeth).ratios
    return {gear: ratio for gear, ratio in found.items() if gear != "overdrive"}


def as_calculated(train: GearTrain) -> tuple[str, Teeth]:
    """Give the train's kind and tooth counts by the names that the calculators use."""
    teeth = {name: count.value for name, count in train.teeth.items()}
    if train.type.value != "ravigneaux":
        overdrive = {"overdrive_sun", "overdrive_ring"} <= teeth.keys()
        return "simpson-overdrive" if overdrive else "simpson", teeth
    for kind, (double, single) in SUNS.items():
        if {double, single} <= teeth.keys():
            names = {double: "double_sun", single: "single_sun"}
            return kind, {names.get(name, name): count for name, count in teeth.items()}
    return "ravigneaux", teeth
