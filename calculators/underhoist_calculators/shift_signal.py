"""What tells a transmission how far the pedal is down, and the ways in which that goes wrong.

A modulator listens to the engine's vacuum, a throttle valve to the wire of a cable. Each throttle
has its level: vacuum in inHg, or how far the wire is pulled out. The shift valves answer to it.
"""

from collections.abc import Callable, Mapping

from attrs import frozen

from underhoist_calculators.declare import Choice
from underhoist_calculators.governor import Governor, PlainWeight

VACUUM, CABLE = "vacuum", "cable"

SIGNALS = (Choice(VACUUM, "Vacuum, by a modulator"), Choice(CABLE, "Throttle cable"))

PLAIN = PlainWeight()
"""The governor of a unit that states no points."""

STEP = 0.2
"""inHg between the losses tried."""

STEPS = 80
"""Steps of the wire's travel that are tried."""


@frozen(kw_only=True)
class Change:
    """One way in which the signal goes wrong: `level(level, size)` is what the valves then get.

    `moves_full` says that full throttle changes too; `most` is how much of the signal it can be.
    """

    code: str
    level: Callable[[float, float], float]
    moves_full: bool = False
    most: float = 1.0


LOSS = Change(code="vacuum-loss", level=lambda vacuum, loss: max(0.0, vacuum - loss))

TIGHT = Change(code="cable-tight", level=lambda out, by: out + by, most=0.5)
"""Every level is raised alike, until the valve is at its greatest: full throttle stays.

Tighter than by half its travel the wire would hold the throttle shut: convention, no source.
"""

SLACK = Change(code="cable-slack", level=lambda out, by: out - by, moves_full=True)
"""Every level is lowered alike, until the wire is at rest."""

HANGS = Change(code="cable-hangs", level=max)
"""The wire follows the pedal out, and does not come back further than this."""


CHANGES = (LOSS, TIGHT, SLACK, HANGS)


@frozen(kw_only=True)
class Signal:
    """The signal of one unit: its level by throttle, how it can go wrong, what it is weighed with.

    `unit` is the registry name of the levels' unit. It is `percent`, of the wire's travel, where
    that travel is not known: no size is then told. `turn` is what one turn of the adjuster moves.
    """

    kind: str
    levels: Mapping[str, float]
    unit: str
    step: float
    changes: tuple[Change, ...]
    governor: Governor
    turn: float | None = None

    @property
    def is_cable(self) -> bool:
        """Say whether a cable works a throttle valve."""
        return self.kind == CABLE

    @property
    def has_size(self) -> bool:
        """Say whether a change can be told in a unit that can be measured."""
        return self.unit != "percent"

    def sizes(self, change: Change) -> tuple[float, ...]:
        """List the sizes of a change to try, from none to the most that it can be."""
        most = change.most * max(self.levels.values())
        return tuple(self.step * i for i in range(round(most / self.step) + 1))


def by_vacuum(vacuums: Mapping[str, float], governor: Governor = PLAIN) -> Signal:
    """Give the signal of a modulator; vacuums in inHg by throttle."""
    return Signal(
        kind=VACUUM,
        levels=vacuums,
        unit="conventional_inch_of_mercury",
        step=STEP,
        changes=(LOSS,),
        governor=governor,
    )


def by_cable(
    shares: Mapping[str, float],
    travel: float | None = None,
    turn: float | None = None,
    governor: Governor = PLAIN,
) -> Signal:
    """Give the signal of a throttle cable, pulled out by these shares, 0 to 1, of its travel in mm.

    `turn` is how far one turn of the adjuster moves the sheath, in mm.
    """
    whole = 100.0 if travel is None else travel
    return Signal(
        kind=CABLE,
        levels={throttle: share * whole for throttle, share in shares.items()},
        unit="percent" if travel is None else "millimetre",
        step=whole / STEPS,
        changes=(TIGHT, SLACK, HANGS),
        governor=governor,
        turn=None if travel is None else turn,
    )
