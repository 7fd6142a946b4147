"""What a throttle cable adds to an answer: the rule, turns of its adjuster, and the assumptions."""

from collections.abc import Iterator

from underhoist_calculators.shift_explanations import Comparison, Explanation
from underhoist_calculators.shift_signal import HANGS, SLACK, TIGHT, Signal
from underhoist_calculators.shift_signal_words import CABLE_RULE
from underhoist_calculators.units import number_text

CODES = {TIGHT.code, SLACK.code, HANGS.code}
SET_BY_TURNS = {TIGHT.code, SLACK.code}


def cable_advice(best: Explanation, signal: Signal) -> Iterator[str]:
    """Say what to measure before anything is set, and how many turns would explain the speeds."""
    if best.code not in CODES:
        return
    yield CABLE_RULE
    if signal.turn is not None and best.code in SET_BY_TURNS:
        yield turns_told(best.low, best.value, best.high, signal.turn)


def turns_told(low: float, value: float, high: float, turn: float) -> str:
    """Write millimetres of cable as turns of its adjuster; all in mm."""
    ends = f"{number_text(low / turn, 0)} to {number_text(high / turn, 0)}"
    return (
        f"So much is about {number_text(value / turn, 0)} turns of the adjuster ({ends}), at "
        f"{number_text(turn)} mm a turn. Take it as a check on the gap that you measure, not as a "
        "setting."
    )


def cable_assumptions(comparison: Comparison | None, signal: Signal) -> tuple[str, ...]:
    """Say what a cable explanation rests on; nothing where none is given."""
    if not signal.is_cable or comparison is None or comparison.best is None:
        return ()
    given = {each.code for each in (comparison.best, *comparison.rivals)}
    if not given & CODES:
        return ()
    return (wire_told(signal), ENDS_TOLD)


ENDS_TOLD = (
    "The throttle valve is taken to be at its greatest at full throttle, so a cable that is too "
    "tight moves nothing there; below light throttle nothing is known, so one that is too slack "
    "moves light throttle no further than its window. Kick-downs have a valve of their own."
)


def wire_told(signal: Signal) -> str:
    """Say how far the wire is taken to be out at each throttle."""
    if not signal.has_size:
        return "The travel of the wire is not written, so only the direction is told, not how far."
    light, half, full = (number_text(signal.levels[t], 1) for t in ("light", "half", "full"))
    return (
        f"Millimetres are reckoned with a wire that is {light} mm out at light throttle, {half} mm "
        f"at half and {full} mm at full, and with a throttle pressure that changes evenly between "
        "the windows."
    )
