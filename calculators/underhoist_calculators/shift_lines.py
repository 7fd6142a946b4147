"""What a shift map is made of: every shift with its balance, its windows and its reading."""

from collections.abc import Mapping
from functools import cached_property

from attrs import frozen

from underhoist_calculators.shift_balance import Balance, Loss, loss_for
from underhoist_calculators.units import Quantity, quantity, show, show_number

SHARPEST = 0.01
"""inHg. No reading weighs as if it were sharper: a vacuum gauge shows no less than this."""


@frozen(kw_only=True)
class Line:
    """One shift: balances through the middles and through both edges of its windows.

    Windows are km/h by throttle. `measured` is km/h, None where it was not driven.
    """

    shift: str
    balance: Balance
    low: Balance | None
    high: Balance | None
    windows: Mapping[str, tuple[float, float]]
    measured: float | None


@frozen(kw_only=True)
class ShiftMap:
    """Every shift, with the signal's level by throttle and what is asked of the map.

    Levels fall as the throttle opens: vacuum in inHg, or for a cable the mm of wire still to come
    until full throttle. `loss` and `source` are of the same unit; a loss is a cable too tight.
    `whole` is how far a cable's wire is out at full throttle, mm.
    """

    lines: tuple[Line, ...]
    levels: Mapping[str, float]
    source: float
    loss: float
    uncertainty: float
    unit: str
    turn: float | None = None
    stop_in: float | None = None
    stop_out: float | None = None
    whole: float = 0.0

    @property
    def widest(self) -> float:
        """The highest level that the map shows."""
        limits = [line.balance.limit for line in self.lines]
        return max(*limits, *self.levels.values(), self.source)

    @cached_property
    def losses(self) -> dict[str, Loss | str]:
        """For every measured shift the loss that explains it, or why none does."""
        return {
            line.shift: loss_for(line.balance, self.source, line.measured, self.uncertainty)
            for line in self.lines
            if line.measured is not None
        }

    def common(self) -> tuple[float, float] | None:
        """Give the losses that explain every measured shift, or None where none does."""
        found = self.losses.values()
        every = [loss for loss in found if isinstance(loss, Loss)]
        if not every or len(every) < len(found):
            return None
        least, most = max(loss.least for loss in every), min(loss.most for loss in every)
        return (least, most) if least <= most else None

    def likeliest(self, common: tuple[float, float]) -> float:
        """Give the loss that fits best in this range: each reading weighs by how sharp it is."""
        every = [loss for loss in self.losses.values() if isinstance(loss, Loss)]
        weights = [max(loss.most - loss.least, SHARPEST) ** -2 for loss in every]
        weighed = sum(w * loss.best for w, loss in zip(weights, every, strict=True))
        return min(max(weighed / sum(weights), common[0]), common[1])

    def speed(self, kmh: float, digits: int | None = 0) -> str:
        """Write a speed in the unit of the windows."""
        return show(self.quantity(kmh), digits=digits)

    def number(self, kmh: float) -> str:
        """Write a speed's number alone, in the unit of the windows."""
        return show_number(self.quantity(kmh), digits=0)

    def quantity(self, kmh: float) -> Quantity:
        """Give a speed in the unit of the windows."""
        return quantity(kmh, "kilometre_per_hour").to(self.unit)
