"""Says in the shop's words what a road test shows, what explains it and what to read next."""

from collections.abc import Callable

from underhoist_calculators.road_test import (
    THROTTLES,
    Key,
    RoadTest,
    beyond,
    in_words,
    is_down,
    is_kick_down,
    valve,
)
from underhoist_calculators.shift_explanations import Comparison, Explanation, separating
from underhoist_calculators.shift_signal import Signal
from underhoist_calculators.shift_signal_words import SHARED, WORDS
from underhoist_calculators.units import number_text, unit_symbol

Speedometer = Callable[[float], str]
"""Writes a reference speed in km/h as this vehicle's speedometer shows it."""

PROOF = {
    "as-specified": "drive the same shifts twice more and take the middle reading",
    "scale": "prove the speedometer over a measured distance",
    "one-shift": "measure more of that shift and of the others",
}
"""What to do off the road test to prove what has nothing to do with the signal."""


def name(explanation: Explanation) -> str:
    """Name an explanation with its fitted value."""
    match explanation.code:
        case "scale":
            return f"all speeds {_percent(explanation.value)}"
        case "one-shift":
            return f"the {explanation.shift} valve alone, {_percent(explanation.value)}"
        case "kick-down":
            return f"the kick-down alone, {_percent(explanation.value)}"
        case "full-throttle":
            return "full-throttle behaviour at every throttle"
        case "as-specified":
            return "as specified"
        case code:
            said = WORDS[code]
            shown = _size(explanation, explanation.value)
            return said.name.format(size=shown) if shown else said.unsized


def _size(explanation: Explanation, value: float) -> str:
    """Write a size of a changed signal; nothing where no size is known."""
    if explanation.unit == "percent":
        return ""
    return f"{number_text(value, 0)} {unit_symbol(explanation.unit)}"


def _proof(explanation: Explanation, signal: Signal) -> str:
    """Say what to do off the road test to prove an explanation."""
    shared = SHARED[signal.kind]
    match explanation.code:
        case "full-throttle":
            return shared.proof_full
        case "kick-down":
            return shared.proof_kick_down
        case code:
            return PROOF[code] if code in PROOF else WORDS[code].proof


def _percent(factor: float) -> str:
    way = "high" if factor >= 1 else "low"
    return f"{number_text(abs(factor - 1) * 100, 0)} % {way}"


def _explain_signal(explanation: Explanation) -> str:
    """Say what a changed signal means, with its size where it is known."""
    said, shown = WORDS[explanation.code], _size(explanation, explanation.value)
    if not shown:
        return said.means_unsized
    low = number_text(explanation.low, 0)
    return said.means.format(size=shown, range=f"{low} to {_size(explanation, explanation.high)}")


def explain(explanation: Explanation, signal: Signal) -> str:
    """Say what the explanation means and what to prove first."""
    low, high = explanation.low, explanation.high
    shared = SHARED[signal.kind]
    match explanation.code:
        case "scale":
            ends = f"{number_text(low, 2)} to {number_text(high, 2)}"
            return (
                f"One factor of {number_text(explanation.value, 2)} ({ends}) on every speed fits. "
                "Speedometer, tyre size, axle ratio and governor all do this alike. Prove the "
                "speedometer over a measured distance; if it and the entries are right, the "
                "governor is left."
            )
        case "one-shift":
            return (
                f"Only the valve of the {explanation.shift} shift is out, by a factor of "
                f"{number_text(explanation.value, 2)}; the others come as they should. Governor, "
                f"{shared.carrier} and speedometer work on every shift, so look at that valve in "
                "the valve body."
            )
        case "kick-down":
            return (
                f"Only the kick-down is out, by a factor of {number_text(explanation.value, 2)}; "
                f"the up-shifts come as they should. Look at {shared.kick_down}, before the valve "
                "body."
            )
        case "full-throttle":
            return (
                "Every shift comes at its full-throttle speed, however light the pedal. "
                f"{shared.full}"
            )
        case "as-specified":
            return "These speeds are those of a unit in order."
        case _:
            return _explain_signal(explanation)


def pattern(test: RoadTest) -> str:
    """Say the plain pattern of the verdicts: what is late or early, at which throttle."""
    off = {key: beyond(speed, test.windows[key]).magnitude for key, speed in test.measured.items()}
    if not off:
        return "No shift speed could be judged."
    wrong = {key for key, by in off.items() if by}
    if not wrong:
        return _all_inside(len(off))
    high = {key for key in wrong if off[key] > 0}
    if high and high != wrong:
        return "Some shifts come too high and others too low."
    return f"{_which(set(off), wrong)} too {'high' if high else 'low'}{_late(wrong, bool(high))}."


def _all_inside(count: int) -> str:
    if count == 1:
        return "The one shift measured comes inside its window."
    which = "Both" if count == 2 else f"All {count}"
    return f"{which} shifts measured come inside their windows."


def _late(keys: set[Key], high: bool) -> str:
    """Add the shop's word, which is only right of up-shifts."""
    if any(is_down(key) for key in keys):
        return ""
    return " (late)" if high else " (early)"


def _which(measured: set[Key], wrong: set[Key]) -> str:
    """Name the set of shifts that are wrong, by throttle or by shift."""
    if wrong == measured:
        return "Every shift measured comes" if len(measured) > 1 else "The one shift measured comes"
    return _by_kind(measured, wrong) or _by_name(measured, wrong)


def _by_kind(measured: set[Key], wrong: set[Key]) -> str:
    """Name the wrong shifts by what they alone have in common; nothing where they have not."""
    if len(wrong) == 1:
        return f"Only the {in_words(next(iter(wrong)))} comes"
    if all(is_kick_down(key) for key in wrong):
        return "Only the kick-downs come"
    throttles = [t for t in THROTTLES if any(key[1] == t for key in wrong)]
    whole = {key for key in measured if key[1] in throttles}
    if wrong == whole and len(throttles) < len(THROTTLES):
        return f"At {' and '.join(throttles)} throttle only, the shifts come"
    valves = sorted({valve(shift) for shift, _ in wrong})
    return f"Only the {valves[0]} comes" if len(valves) == 1 else ""


def _by_name(measured: set[Key], wrong: set[Key]) -> str:
    """List the wrong shifts, or the few that are right, or count them."""
    if len(measured - wrong) <= 2 < len(wrong):
        return f"All but {_listed(measured - wrong)} come"
    if len(wrong) > 3:
        return f"{len(wrong)} of the {len(measured)} shifts measured come"
    named = _listed(wrong)
    return f"{named[0].upper()}{named[1:]} come"


def _listed(keys: set[Key]) -> str:
    return " and ".join(in_words(key) for key in sorted(keys))


def rivalry(
    test: RoadTest, comparison: Comparison, signal: Signal, shown: Speedometer
) -> tuple[str, ...]:
    """Say what cannot be told from the best explanation, and what would separate the two."""
    best = comparison.best
    if best is None:
        return ()
    told = (_apart(test, (best, rival), signal, shown) for rival in comparison.rivals)
    return tuple(told)


def _apart(
    test: RoadTest, pair: tuple[Explanation, Explanation], signal: Signal, shown: Speedometer
) -> str:
    best, rival = pair
    begin = f"These readings cannot tell {name(best)} from {name(rival)}."
    found = separating(test, best, rival)
    if found is None:
        first, second = _proof(best, signal), _proof(rival, signal)
        ways = first if first == second else f"{first}, or {second}"
        return f"{begin} No further shift speed would: {ways}."
    key, _ = found
    one, other = best.predicted[key], rival.predicted[key]
    return (
        f"{begin} Measure {in_words(key)}: {shown(one)} speaks for the first, "
        f"{shown(other)} for the second."
    )


def not_judged(comparison: Comparison) -> tuple[str, ...]:
    """Name the explanations that lack a window to be judged by."""
    return tuple(
        WORDS[code].lacking
        if code in WORDS
        else "A stuck kick-down could not be judged: a measured shift has no window at full "
        "throttle."
        for code in comparison.not_judged
    )
