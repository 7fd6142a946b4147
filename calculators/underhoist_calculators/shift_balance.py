"""The balance at a shift valve: governor pressure against spring and modulator.

At an up-shift Pg(N) = alpha - beta·V: more vacuum, less modulator pressure, an earlier shift. V is
the effective vacuum, V = source - loss - e·turns in. Vacuum is in inHg, speed in km/h. A throttle
cable takes V's place with the wire still to come until full throttle, in mm.
"""

from functools import cached_property

from attrs import frozen

from underhoist_calculators.governor import Governor

Known = tuple[float, float]
"""A known point: vacuum in inHg and shift speed in km/h."""


class BalanceError(ValueError):
    """The known points make no balance; the message says why in a sentence."""


@frozen(kw_only=True)
class Balance:
    """One shift, calibrated. Beyond `limit` of vacuum the modulator does nothing more.

    `limit_is_cut_off` is False where the limit is only the end of what is known.
    """

    governor: Governor
    alpha: float
    beta: float
    limit: float
    limit_is_cut_off: bool

    def vacuum(self, speed: float) -> float:
        """Give the effective vacuum that makes the shift come at this speed, not kept in bounds."""
        return (self.alpha - self.governor.pressure(speed)) / self.beta

    def speed(self, vacuum: float) -> float:
        """Give the shift speed; under no vacuum and beyond the limit it stays as it is there."""
        effective = min(max(vacuum, 0.0), self.limit)
        return self.governor.speed(self.alpha - self.beta * effective)

    @cached_property
    def ceiling(self) -> float:
        """The speed without any vacuum: no loss makes the shift later."""
        return self.speed(0.0)

    @cached_property
    def floor(self) -> float:
        """The speed at the limit of vacuum: the earliest that is known."""
        return self.speed(self.limit)


def calibrate(
    governor: Governor, one: Known, other: Known, cut_off: float | None = None
) -> Balance:
    """Calibrate a shift from two known points; raises `BalanceError` where they make none."""
    (more, slow), (less, fast) = sorted((one, other), reverse=True)
    if more == less:
        msg = "Both known points are at the same vacuum."
        raise BalanceError(msg)
    if fast <= slow:
        msg = "With more throttle the shift must come at a higher speed."
        raise BalanceError(msg)
    if not governor.lowest <= slow < fast <= governor.highest:
        msg = "The governor's points do not reach over the shift speeds."
        raise BalanceError(msg)
    slow_pressure, fast_pressure = governor.pressure(slow), governor.pressure(fast)
    beta = (fast_pressure - slow_pressure) / (more - less)
    alpha = slow_pressure + beta * more
    limit = more if cut_off is None else cut_off
    found = Balance(
        governor=governor,
        alpha=alpha,
        beta=beta,
        limit=limit,
        limit_is_cut_off=cut_off is not None,
    )
    _within_governor(found)
    return found


def _within_governor(found: Balance) -> None:
    """Refuse a balance whose ends lie where the governor is not known or makes no pressure."""
    governor = found.governor
    if found.alpha - found.beta * found.limit <= governor.pressure(governor.lowest):
        msg = "At its earliest the shift would come at a standstill or below the governor's points."
        raise BalanceError(msg)
    if governor.highest < float("inf") and found.alpha > governor.pressure(governor.highest):
        msg = "At its latest the shift would come above the governor's points."
        raise BalanceError(msg)


@frozen
class Loss:
    """The vacuum loss that explains a measured shift: best, least and most, in inHg.

    Below zero the shift is early: less than no loss.
    """

    best: float
    least: float
    most: float

    @property
    def none(self) -> bool:
        """Say whether no loss at all is within the reading's uncertainty."""
        return self.least <= 0 <= self.most


def loss_for(balance: Balance, source: float, speed: float, uncertainty: float) -> Loss | str:
    """Give the loss at this source vacuum, or in words why vacuum alone cannot explain the speed.

    The words are "late", beyond what no vacuum at all makes, or "early", below the limit.
    """
    if speed - uncertainty > balance.ceiling:
        return "late"
    if speed + uncertainty < balance.floor:
        return "early"
    slowest, fastest = max(speed - uncertainty, 0.0), speed + uncertainty
    best, least, most = (
        source - min(max(balance.vacuum(each), 0.0), balance.limit)
        for each in (speed, slowest, fastest)
    )
    return Loss(best, least, most)
