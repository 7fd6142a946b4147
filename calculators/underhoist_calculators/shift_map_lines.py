"""The shifts of a map, read from the entries and calibrated."""

from collections.abc import Callable, Mapping

from underhoist_calculators.governor import Governor
from underhoist_calculators.governor_fields import governor_given
from underhoist_calculators.inputs import EntryError, Inputs
from underhoist_calculators.road_test import THROTTLES, UP_SHIFTS
from underhoist_calculators.shift_balance import Balance, BalanceError, calibrate
from underhoist_calculators.shift_lines import Line
from underhoist_calculators.units import Span, unit_name

Levels = Mapping[str, float]
"""Level of the signal by throttle, falling as the throttle opens: inHg, or mm of wire to come."""


def lines_given(inputs: Inputs, levels: Levels, cut_off: float | None = None) -> tuple[Line, ...]:
    """Calibrate every shift that has two windows; raises `EntryError` where none has."""
    governor = governor_given(inputs)
    lines = tuple(
        line
        for shift in UP_SHIFTS
        if (line := _line(inputs, shift, governor, levels, cut_off)) is not None
    )
    if not lines:
        wrong = "No shift has two windows, so nothing can be calibrated."
        mend = "Write the windows of one shift at light and full throttle, from the family page."
        raise EntryError("window-1-2-light", wrong, mend)
    return lines


def unit_of_windows(inputs: Inputs) -> str:
    """Give the unit of speed that the windows are written in."""
    spans = (inputs.span(f"window-{s}-{t}") for s in UP_SHIFTS for t in THROTTLES)
    return next(unit_name(span.low) for span in spans if span is not None)


def _line(
    inputs: Inputs,
    shift: str,
    governor: Governor,
    levels: Levels,
    cut_off: float | None,
) -> Line | None:
    """Calibrate one shift; None without two windows; raises `EntryError` where they make none."""
    spans = {t: span for t in THROTTLES if (span := inputs.span(f"window-{shift}-{t}")) is not None}
    measured = inputs.maybe(f"measured-{shift}")
    windows = {t: _ends(span) for t, span in spans.items()}
    if len(windows) < 2:
        if measured is not None:
            wrong = "This shift is measured, but has not two windows to calibrate it by."
            raise EntryError(f"measured-{shift}", wrong, "Write its windows, or leave it empty.")
        return None

    def by(edge: float) -> Balance:
        """Calibrate by the windows' low ends (0), middles (1/2) or high ends (1)."""
        ends = (next(iter(windows)), list(windows)[-1])
        known = [(levels[t], w[0] + edge * (w[1] - w[0])) for t in ends if (w := windows[t])]
        return calibrate(governor, known[0], known[1], cut_off)

    try:
        balance = by(0.5)
    except BalanceError as error:
        mend = (
            "Mend the windows or the governor's points."
            if cut_off is None
            else "Mend the windows, the governor's points or the cut-off."
        )
        raise EntryError(f"window-{shift}-{next(iter(windows))}", str(error), mend) from None
    return Line(
        shift=shift,
        balance=balance,
        low=_edge(by, 0.0),
        high=_edge(by, 1.0),
        windows=windows,
        measured=None if measured is None else measured.m_as("kilometre_per_hour"),
    )


def _edge(by: Callable[[float], Balance], edge: float) -> Balance | None:
    """Calibrate by an edge of the windows; None where that edge makes no balance."""
    try:
        return by(edge)
    except BalanceError:
        return None


def _ends(span: Span) -> tuple[float, float]:
    return span.low.m_as("kilometre_per_hour"), span.high.m_as("kilometre_per_hour")
