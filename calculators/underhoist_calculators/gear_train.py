"""Gear ratios from tooth counts: Willis' equation for every planetary set, solved together.

For a set with single planets, speeds n and tooth counts z: z_s n_s + z_r n_r = (z_s + z_r) n_c.
With double planets the ring turns the other way about, so z_r counts as negative.
"""

from collections.abc import Iterable, Mapping
from fractions import Fraction

from attrs import frozen

Weights = Mapping[str, int]
"""A linear equation in the speeds of named members: the weighted sum is zero."""

Ratios = Mapping[str, Fraction]
"""Turns of the input for one turn of the output by gear, reverse negative."""


@frozen(kw_only=True)
class PlanetarySet:
    """One planetary set by the names of its members; sets that share a name are joined."""

    sun: str
    ring: str
    carrier: str
    sun_teeth: int
    ring_teeth: int
    double: bool = False

    @property
    def weights(self) -> Weights:
        """Willis' equation of this set."""
        ring = -self.ring_teeth if self.double else self.ring_teeth
        return {self.sun: self.sun_teeth, self.ring: ring, self.carrier: -self.sun_teeth - ring}


@frozen(kw_only=True)
class Gear:
    """How one gear is made: which member drives, which is driven, what is held and joined."""

    name: str
    input: str
    output: str
    held: tuple[str, ...] = ()
    joined: tuple[tuple[str, str], ...] = ()

    @property
    def locks(self) -> tuple[Weights, ...]:
        """Write the brakes and clutches of this gear as equations."""
        held = tuple({member: 1} for member in self.held)
        return held + tuple({first: 1, second: -1} for first, second in self.joined)


def speeds(sets: Iterable[PlanetarySet], gear: Gear) -> dict[str, Fraction]:
    """Solve the speeds of all members for one turn of the input.

    Raises `ValueError` where the gear leaves a member free or locks the train.
    """
    equations = [*(each.weights for each in sets), *gear.locks]
    members = sorted({name for equation in equations for name in equation} - {gear.input})
    rows = [
        [Fraction(equation.get(name, 0)) for name in members]
        + [Fraction(-equation.get(gear.input, 0))]
        for equation in equations
    ]
    return {gear.input: Fraction(1), **dict(zip(members, _solved(rows, gear.name), strict=True))}


def ratio(sets: Iterable[PlanetarySet], gear: Gear) -> Fraction:
    """Give turns of the input for one turn of the output; below zero is reverse."""
    out = speeds(sets, gear)[gear.output]
    if out == 0:
        msg = f"{gear.name}: the output is locked"
        raise ValueError(msg)
    return 1 / out


def _solved(rows: list[list[Fraction]], name: str) -> list[Fraction]:
    """Solve by elimination in exact fractions; the last column is the right-hand side."""
    size = len(rows[0]) - 1
    for column in range(size):
        pivot = next((i for i in range(column, len(rows)) if rows[i][column]), None)
        if pivot is None:
            msg = f"{name}: a member is left free"
            raise ValueError(msg)
        rows[column], rows[pivot] = rows[pivot], rows[column]
        top = rows[column]
        scale = top[column]
        rows[column] = top = [value / scale for value in top]
        for i, row in enumerate(rows):
            if i != column and row[column]:
                rows[i] = [a - row[column] * b for a, b in zip(row, top, strict=True)]
    if any(row[-1] for row in rows[size:]):
        msg = f"{name}: the train is locked"
        raise ValueError(msg)
    return [row[-1] for row in rows[:size]]
