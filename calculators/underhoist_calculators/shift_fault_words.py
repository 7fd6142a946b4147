"""What in the vehicle each explanation points to, and what the readings rule out, in words.

All of it is common practice, no source; what is ruled out is computed from the readings.
"""

from collections.abc import Iterator
from math import ceil

from underhoist_calculators.answer import Table
from underhoist_calculators.road_test import (
    Key,
    RoadTest,
    in_words,
    is_down,
    is_kick_down,
    valve,
)
from underhoist_calculators.shift_explanations import Comparison, Explanation, ruled_out
from underhoist_calculators.shift_signal import Signal
from underhoist_calculators.shift_signal_words import SHARED, WORDS, Row
from underhoist_calculators.shift_words import Speedometer
from underhoist_calculators.units import unit_symbol

EVERY_SHIFT = "Speedometer, tyre, axle ratio, governor"


def points_to(test: RoadTest, comparison: Comparison | None, signal: Signal) -> tuple[Table, ...]:
    """List where to look, best explanation first; nothing where nothing is to be looked for.

    One reading names no cause, so it points nowhere.
    """
    rows = list(_missing_parts(test, signal))
    if comparison and comparison.best and len(test.measured) > 1:
        for explanation in (comparison.best, *comparison.rivals):
            rows += _parts(explanation, signal)
    if not rows:
        return ()
    unique = tuple(dict.fromkeys(rows))
    return (Table(title="What it points to", heads=("Part", "Look for"), rows=unique),)


def _parts(explanation: Explanation, signal: Signal) -> tuple[Row, ...]:
    """Give the parts that would make the speeds so."""
    match explanation.code:
        case "full-throttle":
            return SHARED[signal.kind].detent
        case "scale":
            return _every_shift_parts(late=explanation.value > 1)
        case "one-shift":
            return _valve_parts(explanation.shift)
        case "kick-down":
            return _kick_down_parts(signal, early=explanation.value > 1)
        case code:
            return WORDS[code].parts if code in WORDS else ()


def _every_shift_parts(*, late: bool) -> tuple[Row, ...]:
    """Give what moves every shift alike; late: every speed is read too high."""
    return (
        ("Speedometer", f"Reads {'high' if late else 'low'}: prove it over a measured distance."),
        (
            "Tyre",
            f"Rolls {'further' if late else 'less far'} in a turn than the size entered: roll one "
            "turn and measure it.",
        ),
        (
            "Axle ratio",
            f"Numerically {'lower' if late else 'higher'} than entered: count turns of the shaft "
            "for one turn of the wheels.",
        ),
        (
            "Governor",
            "Too little pressure: valve or weight sticking, seal rings worn or broken, screen "
            "blocked."
            if late
            else "Too much pressure: spring weak or broken, wrong weight or spring.",
        ),
    )


def _valve_parts(shift: str) -> tuple[Row, ...]:
    return (
        (f"{shift} shift valve", "Sticks: clean and dry it must fall through its bore by itself."),
        (f"Spring of the {shift} valve", "Weak, broken, or that of another unit."),
        ("Valve body joint", "A leak between two passages: face, gasket, plate, bolt torque."),
    )


def _kick_down_parts(signal: Signal, *, early: bool) -> tuple[Row, ...]:
    """Give what moves the kick-downs alone; early: they still come at too high a speed."""
    cable = (
        "Set too short: it pulls before the pedal is down."
        if early
        else "Too slack: it is not at its stop with the pedal on the floor."
    )
    return (
        (SHARED[signal.kind].kick_down_part, cable),
        ("Detent valve and its spring", "Sticking, or the spring of another unit."),
    )


def _missing_parts(test: RoadTest, signal: Signal) -> Iterator[Row]:
    """Give the parts that would keep a shift from coming at all."""
    for key in sorted(test.missing):
        shift = key[0]
        if is_kick_down(key):
            part = SHARED[signal.kind].kick_down_part
            yield part, "Does not reach its stop with the pedal down."
            yield "Detent valve", "Stuck closed in the valve body."
            continue
        stuck = "up" if is_down(key) else "down"
        yield f"{valve(shift)} shift valve", f"Stuck in its {stuck}-shifted place."
        if is_down(key):
            yield "Governor", "Stuck with pressure: it does not fall as the vehicle slows."
            continue
        yield (
            f"Band or clutch that the {shift} applies",
            "Engine speed flares where the shift should come: lining, servo or piston seal.",
        )
        if not _governed(test, shift):
            yield "Governor", "No pressure: valve stuck, seal rings broken, drive sheared."


def _governed(test: RoadTest, missing: str) -> Key | None:
    """Find an up-shift of another valve that came inside its window: the governor works there."""
    return next(
        (
            key
            for key, speed in test.measured.items()
            if not is_down(key) and key[0] != missing and test.windows[key].holds(speed)
        ),
        None,
    )


def rules_out(
    test: RoadTest, comparison: Comparison | None, shown: Speedometer
) -> tuple[Table, ...]:
    """List what the readings rule out and why; says so where they rule out nothing."""
    rows = [*_missing_rules_out(test)]
    if comparison is not None:
        rows += [_why(test, one, key, shown) for one, key in ruled_out(test, comparison)]
        if comparison.best is comparison.specified:
            rows += _at_most(test, comparison)
    if not rows:
        rows = [("Nothing", _nothing(comparison))]
    return (Table(title="What it rules out", heads=("Fault", "Why"), rows=tuple(rows)),)


def _fault(explanation: Explanation) -> str:
    """Name the faults that an explanation stands for."""
    match explanation.code:
        case "full-throttle":
            return "Kick-down or detent stuck on"
        case "one-shift":
            return f"{explanation.shift} shift valve alone"
        case "kick-down":
            return "Kick-down setting alone"
        case code:
            return WORDS[code].fault if code in WORDS else EVERY_SHIFT


def _why(test: RoadTest, explanation: Explanation, key: Key, shown: Speedometer) -> Row:
    """Say which reading contradicts an explanation: where it would put it, where it came."""
    puts = "At its best fit it puts" if explanation.parameters else "It would put"
    return (
        _fault(explanation),
        f"{puts} the {in_words(key)} at {shown(explanation.predicted[key])}; it came at "
        f"{shown(test.speeds[key])}.",
    )


def _at_most(test: RoadTest, comparison: Comparison) -> Iterator[Row]:
    """Say how large a fault could still hide behind readings that are in order.

    Within two standard deviations of the fitted value. At full throttle no vacuum loss shows.
    """
    for one in comparison.tried:
        low, high = 2 * one.low - one.value, 2 * one.high - one.value
        if one.code == "scale":
            most = ceil(100 * max(high - 1, 1 - low))
            yield EVERY_SHIFT, f"Off by more than {most} % it would show in these readings."
        if one.code in WORDS and _shows(test, one):
            said = WORDS[one.code]
            most = f"{ceil(high)} {unit_symbol(one.unit)}"
            yield said.fault, said.at_most.format(most=most)


def _shows(test: RoadTest, changed: Explanation) -> bool:
    """Say whether a changed signal would show: off full throttle, and with a size to tell."""
    off_full = any(throttle != "full" for _, throttle in test.measured)
    return off_full and changed.unit != "percent"


def _missing_rules_out(test: RoadTest) -> Iterator[Row]:
    """Say what cannot take a shift away."""
    if not test.missing:
        return
    yield "Speedometer, tyre, axle ratio", "They move a shift. They do not take it away."
    for shift in sorted({key[0] for key in test.missing if not is_down(key)}):
        if key := _governed(test, shift):
            yield (
                f"Governor without pressure, for the missing {shift}",
                f"The {in_words(key)} came inside its window, so there is governor pressure.",
            )


def _nothing(comparison: Comparison | None) -> str:
    """Say why nothing is ruled out."""
    if comparison is not None and comparison.best is None:
        return "No single cause fits, so two may be at work, and those may be any two."
    return "No reading speaks clearly against any of the causes."
