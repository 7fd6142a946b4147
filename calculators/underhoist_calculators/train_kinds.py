"""The trains of the trade: which sets they join, and which brakes and clutches make each gear."""

from collections.abc import Callable, Mapping
from functools import partial
from itertools import permutations

from attrs import frozen

from underhoist_calculators.gear_train import Gear, PlanetarySet, Ratios, ratio

Teeth = Mapping[str, int]
"""Tooth counts by name: sun, ring, rear_sun, rear_ring, overdrive_sun, double_sun and so on."""


@frozen
class Train:
    """A train with its tooth counts: sets and gears."""

    sets: tuple[PlanetarySet, ...]
    gears: tuple[Gear, ...]

    @property
    def ratios(self) -> Ratios:
        """Solve every gear, in order."""
        return {gear.name: ratio(self.sets, gear) for gear in self.gears}


def single(teeth: Teeth) -> Train:
    """Build one set on its own, each member held in turn."""
    one = PlanetarySet(
        sun="sun", ring="ring", carrier="carrier", sun_teeth=teeth["sun"], ring_teeth=teeth["ring"]
    )
    gears = (
        Gear(name=f"{held} held, {driver} in, {out} out", input=driver, output=out, held=(held,))
        for held, driver, out in permutations(("ring", "sun", "carrier"))
    )
    return Train((one,), tuple(gears))


def simpson(teeth: Teeth) -> Train:
    """Two sets on one sun shaft; the front carrier and the rear ring drive the output.

    The rear set is as the front one unless `rear_sun` and `rear_ring` are given.
    """
    front = PlanetarySet(
        sun="sun", ring="front ring", carrier="output",
        sun_teeth=teeth["sun"], ring_teeth=teeth["ring"],
    )  # fmt: skip
    rear = PlanetarySet(
        sun="sun", ring="output", carrier="rear carrier",
        sun_teeth=teeth.get("rear_sun", teeth["sun"]),
        ring_teeth=teeth.get("rear_ring", teeth["ring"]),
    )  # fmt: skip
    return Train((front, rear), _simpson_gears("input"))


def _simpson_gears(shaft: str) -> tuple[Gear, ...]:
    """Write the Simpson gears driven by this shaft: the front ring's clutch, the sun's, or both."""
    forward, direct, low = (shaft, "front ring"), (shaft, "sun"), ("rear carrier",)
    gear = partial(Gear, input=shaft, output="output")
    return (
        gear(name="first", held=low, joined=(forward,)),
        gear(name="second", held=("sun",), joined=(forward,)),
        gear(name="third", joined=(forward, direct)),
        gear(name="reverse", held=low, joined=(direct,)),
    )


def simpson_overdrive(teeth: Teeth) -> Train:
    """Put an overdrive set before a Simpson train: carrier in, ring out, sun held in fourth."""
    rear = simpson(teeth)
    overdrive = PlanetarySet(
        sun="overdrive sun", ring="shaft", carrier="input",
        sun_teeth=teeth["overdrive_sun"], ring_teeth=teeth["overdrive_ring"],
    )  # fmt: skip
    locked = (("input", "overdrive sun"),)
    first, second, third, reverse = (
        Gear(name=g.name, input="input", output="output", held=g.held, joined=g.joined + locked)
        for g in _simpson_gears("shaft")
    )
    fourth = Gear(
        name="fourth", input="input", output="output", held=("overdrive sun",),
        joined=(("shaft", "front ring"), ("shaft", "sun")),
    )  # fmt: skip
    return Train((*rear.sets, overdrive), (first, second, third, fourth, reverse))


def _ravigneaux_sets(teeth: Teeth) -> tuple[PlanetarySet, PlanetarySet]:
    """One ring and one carrier; one sun works through double planets, one through single ones."""
    double = PlanetarySet(
        sun="double sun", ring="ring", carrier="carrier",
        sun_teeth=teeth["double_sun"], ring_teeth=teeth["ring"], double=True,
    )  # fmt: skip
    plain = PlanetarySet(
        sun="single sun", ring="ring", carrier="carrier",
        sun_teeth=teeth["single_sun"], ring_teeth=teeth["ring"],
    )  # fmt: skip
    return double, plain


def ravigneaux(teeth: Teeth) -> Train:
    """Ravigneaux set with the ring as output; the double sun is the small one."""
    small, large, ring = "double sun", "single sun", "ring"
    return Train(
        _ravigneaux_sets(teeth),
        (
            Gear(name="first", input=small, output=ring, held=("carrier",)),
            Gear(name="second", input=small, output=ring, held=(large,)),
            Gear(name="third", input=small, output=ring, joined=((small, large),)),
            Gear(name="overdrive", input="carrier", output=ring, held=(large,)),
            Gear(name="reverse", input=large, output=ring, held=("carrier",)),
        ),
    )


def ravigneaux_two_speed(teeth: Teeth) -> Train:
    """Ravigneaux set with the carrier as output; the double sun is always driven."""
    driver, low, out = "double sun", "single sun", "carrier"
    return Train(
        _ravigneaux_sets(teeth),
        (
            Gear(name="first", input=driver, output=out, held=(low,)),
            Gear(name="second", input=driver, output=out, joined=((driver, low),)),
            Gear(name="reverse", input=driver, output=out, held=("ring",)),
        ),
    )


TRAINS: Mapping[str, Callable[[Teeth], Train]] = {
    "simpson": simpson,
    "simpson-overdrive": simpson_overdrive,
    "ravigneaux": ravigneaux,
    "ravigneaux-two-speed": ravigneaux_two_speed,
    "single": single,
}
"""Every train by name."""
