"""Whether planetary sets can be built: planets that fill their space and can all be put in.

Lengths are in modules: a gear of z standard teeth has the pitch radius z / 2 and reaches one
module further with its tips.
"""

from math import acos, cos, hypot, pi, sin

from attrs import frozen

TIP = 1.0
"""Addendum of a standard tooth, in modules (ISO 53)."""


def planet_teeth(sun: int, ring: int) -> float:
    """Give the teeth that fill the space between sun and ring: whole if they can be cut."""
    return (ring - sun) / 2


def can_assemble(sun: int, ring: int, planets: int, *, double: bool = False) -> bool:
    """Say whether equally spaced planets all mesh: (ring + sun) / planets must be whole.

    With double planets the ring follows the other way about: (ring - sun) / planets.
    """
    return (ring - sun if double else ring + sun) % planets == 0


def single_faults(sun: int, ring: int, planet: int | None, planets: int | None) -> tuple[str, ...]:
    """Say what keeps a set with single planets from being built; nothing where it can be."""
    wanted = planet_teeth(sun, ring)
    teeth = planet if planet is not None else wanted
    faults: list[str] = []
    if planet is None and wanted % 1:
        faults.append(
            f"The space between sun {sun} and ring {ring} takes a planet of {wanted:g} teeth, "
            "which is not a whole number."
        )
    elif planet is not None and planet != wanted:
        faults.append(
            f"Sun {sun}, two planets of {planet} and nothing between make {sun + 2 * planet} "
            f"teeth across, not the ring's {ring}."
        )
    if planets is not None:
        if not can_assemble(sun, ring, planets):
            faults.append(_uneven(ring + sun, planets, f"{ring} + {sun}"))
        if 2 * _reach(sun, teeth) * sin(pi / planets) <= teeth + 2 * TIP:
            faults.append(f"{planets} planets of {teeth:g} teeth would touch one another.")
    return tuple(faults)


def _uneven(total: int, planets: int, words: str) -> str:
    return (
        f"{words} = {total} does not divide by {planets}: equally spaced planets cannot all be "
        "put in."
    )


def _reach(sun: float, planet: float) -> float:
    """Give the distance from the axis to the middle of a planet."""
    return (sun + planet) / 2


@frozen(kw_only=True)
class Ravigneaux:
    """Counts of a Ravigneaux set: the ring planets mesh with ring and single sun.

    The inner planets mesh with the double sun and the ring planets.
    """

    double_sun: int
    single_sun: int
    ring: int
    inner: int
    pairs: int

    @property
    def faults(self) -> tuple[str, ...]:
        """Say what keeps the set from being built; nothing where it can be."""
        faults = list(single_faults(self.single_sun, self.ring, None, self.pairs))
        if not can_assemble(self.double_sun, self.ring, self.pairs, double=True):
            total = self.ring - self.double_sun
            faults.append(_uneven(total, self.pairs, f"{self.ring} \u2212 {self.double_sun}"))
        if abs(self.double_sun - self.single_sun) <= 4 * TIP:
            faults.append(
                f"Suns of {self.double_sun} and {self.single_sun} teeth are too alike: the long "
                "planet would touch the sun that it passes."
            )
        return (*faults, *self._pair_faults())

    def _pair_faults(self) -> tuple[str, ...]:
        """Say whether the two planets of a pair reach one another, and clear the next pair."""
        outer = planet_teeth(self.single_sun, self.ring)
        to_ring, to_inner = _reach(self.single_sun, outer), _reach(self.double_sun, self.inner)
        apart = (outer + self.inner) / 2
        if not abs(to_ring - to_inner) < apart < to_ring + to_inner:
            return (f"Inner planets of {self.inner} teeth do not reach the ring planets.",)
        angle = acos((to_ring**2 + to_inner**2 - apart**2) / (2 * to_ring * to_inner))
        next_pair = hypot(
            to_ring - to_inner * cos(2 * pi / self.pairs - angle),
            to_inner * sin(2 * pi / self.pairs - angle),
        )
        alike = 2 * to_inner * sin(pi / self.pairs)
        faults: list[str] = []
        if next_pair <= apart + 2 * TIP or alike <= self.inner + 2 * TIP:
            faults.append(f"{self.pairs} pairs of planets would touch one another.")
        if 2 * to_inner + self.inner + 2 * TIP >= self.ring:
            faults.append(f"Inner planets of {self.inner} teeth would stand out beyond the ring.")
        return tuple(faults)


def inner_planets(double_sun: int, single_sun: int, ring: int, pairs: int) -> tuple[int, ...]:
    """Give every count of the inner planets, from 12 teeth, with which the set can be built."""
    return tuple(
        inner
        for inner in range(12, ring // 2)
        if not Ravigneaux(
            double_sun=double_sun, single_sun=single_sun, ring=ring, inner=inner, pairs=pairs
        ).faults
    )
