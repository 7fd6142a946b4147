"""A unit family's gear train from its tooth counts; the arithmetic is the calculators'."""

from collections.abc import Iterator, Mapping

from underhoist_calculators.gear_train import Ratios
from underhoist_calculators.planet_fit import Ravigneaux, inner_planets, single_faults
from underhoist_calculators.train_kinds import TRAINS, Teeth

from underhoist.model import GearTrain

SUNS = {
    "ravigneaux": ("small_sun", "large_sun"),
    "ravigneaux-two-speed": ("input_sun", "low_sun"),
}
"""How a family names the suns of a Ravigneaux set: the double one first."""

PAIRS = {"inner_planet", "ring_planet", "pairs", "planets"}
"""What else is counted in a Ravigneaux set; `planets` is another word for `pairs`."""

MOST_TEETH = 300
"""As in the calculator of gear ratios; our own limit, no source."""

SETS = {"": "main set", "rear_": "rear set", "overdrive_": "overdrive set"}
"""The sets of a Simpson train by what stands before the names of their gears."""


def ratios(train: GearTrain) -> Ratios:
    """Compute the ratios; none for a train without its tooth counts."""
    kind, teeth = as_calculated(train)
    if missing(train):
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
            names = {double: "double_sun", single: "single_sun", "pairs": "planets"}
            return kind, {names.get(name, name): count for name, count in teeth.items()}
    return "ravigneaux", teeth


def missing(train: GearTrain) -> tuple[str, ...]:
    """Name the counts without which this train has no ratios, as the family would write them."""
    return tuple(name for name in _needed(train) if name not in train.teeth)


def known(train: GearTrain) -> tuple[str, ...]:
    """Name every count that a train of this type can have."""
    if train.type.value == "ravigneaux":
        return (*(sun for pair in SUNS.values() for sun in pair), "ring", *sorted(PAIRS))
    prefixes = SETS if train.type.value == "simpson-overdrive" else ("", "rear_")
    return tuple(
        prefix + gear for prefix in prefixes for gear in ("sun", "ring", "planet", "planets")
    )


def _needed(train: GearTrain) -> tuple[str, ...]:
    if train.type.value == "ravigneaux":
        begun = [pair for pair in SUNS.values() if set(pair) & train.teeth.keys()]
        return (*(begun or [SUNS["ravigneaux"]])[0], "ring")
    prefixes = ["", *(each for each in SETS if each and _has_begun(train, each))]
    if train.type.value == "simpson-overdrive" and "overdrive_" not in prefixes:
        prefixes.append("overdrive_")
    return tuple(prefix + gear for prefix in prefixes for gear in ("sun", "ring"))


def _has_begun(train: GearTrain, prefix: str) -> bool:
    return any(name.startswith(prefix) for name in train.teeth)


def faults(train: GearTrain) -> Iterator[str]:
    """Say what keeps the train from being put together; nothing where counts are missing."""
    if missing(train):
        return
    kind, teeth = as_calculated(train)
    if (most := max(teeth.values())) > MOST_TEETH:
        yield f"A gear of {most} teeth is larger than any in a transmission: {MOST_TEETH} at most."
        return
    if kind.startswith("ravigneaux"):
        yield from _ravigneaux_faults(teeth)
        return
    several = {"rear_sun", "overdrive_sun"} & teeth.keys()
    for prefix, name in SETS.items():
        if f"{prefix}sun" in teeth:
            for fault in _single(teeth, prefix):
                yield f"{name.capitalize()}: {fault}" if several else fault


def _single(teeth: Teeth, prefix: str) -> tuple[str, ...]:
    sun, ring = teeth[f"{prefix}sun"], teeth[f"{prefix}ring"]
    if sun >= ring:
        return (_too_large(sun, ring),)
    planets = teeth.get(f"{prefix}planets", teeth.get("planets"))
    return single_faults(sun, ring, teeth.get(f"{prefix}planet"), planets)


def _too_large(sun: int, ring: int) -> str:
    return f"A sun of {sun} teeth does not go into a ring of {ring}."


def _ravigneaux_faults(teeth: Mapping[str, int]) -> tuple[str, ...]:
    """Judge a Ravigneaux set; without its inner planet, whether any planet would do."""
    double, single, ring = teeth["double_sun"], teeth["single_sun"], teeth["ring"]
    if max(double, single) >= ring:
        return (_too_large(max(double, single), ring),)
    outer = single_faults(single, ring, teeth.get("ring_planet"), None)
    pairs = teeth.get("planets")
    if outer or pairs is None:
        return outer
    possible = inner_planets(double, single, ring, pairs)
    inner = teeth.get("inner_planet", possible[0] if possible else 12)
    whole = Ravigneaux(double_sun=double, single_sun=single, ring=ring, inner=inner, pairs=pairs)
    return whole.faults
