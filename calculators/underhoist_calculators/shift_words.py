"""Says in the shop's words what a road test shows, what explains it and what to read next."""

from collections.abc import Callable

from underhoist_calculators.road_test import THROTTLES, Key, RoadTest, beyond, valve
from underhoist_calculators.shift_explanations import Comparison, Explanation, separating
from underhoist_calculators.units import number_text

Speedometer = Callable[[float], str]
"""Writes a reference speed in km/h as this vehicle's speedometer shows it."""

PROOF = {
    "as-specified": "drive the same shifts twice more and take the middle reading",
    "scale": "prove the speedometer over a measured distance",
    "vacuum-loss": "read the vacuum with a gauge at the modulator's own end of the hose",
    "full-throttle": "unhook the kick-down and drive again",
    "one-shift": "measure more of that shift and of the others",
}
"""What to do off the road test to prove each explanation."""


def name(explanation: Explanation) -> str:
    """Name an explanation with its fitted value."""
    match explanation.code:
        case "scale":
            return f"all speeds {_percent(explanation.value)}"
        case "vacuum-loss":
            return f"a vacuum loss of {number_text(explanation.value, 0)} inHg"
        case "one-shift":
            return f"the {explanation.shift} valve alone, {_percent(explanation.value)}"
        case "full-throttle":
            return "full-throttle behaviour at every throttle"
        case _:
            return "as specified"


def _percent(factor: float) -> str:
    way = "high" if factor >= 1 else "low"
    return f"{number_text(abs(factor - 1) * 100, 0)} % {way}"


def explain(explanation: Explanation) -> str:
    """Say what the explanation means and what to prove first."""
    low, high = explanation.low, explanation.high
    match explanation.code:
        case "scale":
            ends = f"{number_text(low, 2)} to {number_text(high, 2)}"
            return (
                f"One factor of {number_text(explanation.value, 2)} ({ends}) on every speed fits. "
                "Speedometer, tyre size, axle ratio and governor all do this alike. Prove the "
                "speedometer over a measured distance; if it and the entries are right, the "
                "governor is left."
            )
        case "vacuum-loss":
            return (
                f"A loss of {number_text(explanation.value, 0)} inHg ({number_text(low, 0)} to "
                f"{number_text(high, 0)}) between manifold and modulator fits. Read the vacuum at "
                "the modulator's own end of the hose before touching the adjuster: the adjuster "
                "would only hide a leak."
            )
        case "one-shift":
            return (
                f"Only the valve of the {explanation.shift} shift is out, by a factor of "
                f"{number_text(explanation.value, 2)}; the others come as they should. Governor, "
                "modulator and speedometer work on every shift, so look at that valve in the valve "
                "body."
            )
        case "full-throttle":
            return (
                "Every shift comes at its full-throttle speed, however light the pedal. Look for a "
                "kick-down or detent stuck on: its cable, rod, switch or valve."
            )
        case _:
            return "The speeds are those of a unit in order."


def pattern(test: RoadTest) -> str:
    """Say the plain pattern of the verdicts: what is late or early, at which throttle."""
    off = {key: beyond(speed, test.windows[key]).magnitude for key, speed in test.measured.items()}
    if not off:
        return "No shift speed could be judged."
    wrong = {key for key, by in off.items() if by}
    if not wrong:
        count = len(off)
        return "The one shift measured comes inside its window." if count == 1 else (
            f"All {count} shifts measured come inside their windows.")  # fmt: skip
    high = {key for key in wrong if off[key] > 0}
    if high and high != wrong:
        return "Some shifts come too high and others too low."
    return f"{_which(set(off), wrong)} too {'high' if high else 'low'}{_late(wrong, bool(high))}."


def _late(keys: set[Key], high: bool) -> str:
    """Add the shop's word, which is only right of up-shifts."""
    if any(shift[0] > shift[-1] for shift, _ in keys):
        return ""
    return " (late)" if high else " (early)"


def _which(measured: set[Key], wrong: set[Key]) -> str:
    """Name the set of shifts that are wrong, by throttle or by shift."""
    if wrong == measured:
        return "Every shift measured comes" if len(measured) > 1 else "The one shift measured comes"
    throttles = [t for t in THROTTLES if any(key[1] == t for key in wrong)]
    whole = {key for key in measured if key[1] in throttles}
    if wrong == whole and len(throttles) < len(THROTTLES):
        return f"At {' and '.join(throttles)} throttle only, the shifts come"
    valves = sorted({valve(shift) for shift, _ in wrong})
    if len(valves) == 1:
        return f"Only the {valves[0]} comes"
    if len(measured - wrong) <= 2 < len(wrong):
        return f"All but {_listed(measured - wrong)} come"
    if len(wrong) > 3:
        return f"{len(wrong)} of the {len(measured)} shifts measured come"
    named = _listed(wrong)
    return f"{named[0].upper()}{named[1:]} come"


def _listed(keys: set[Key]) -> str:
    return " and ".join(f"{shift} at {throttle} throttle" for shift, throttle in sorted(keys))


def rivalry(test: RoadTest, comparison: Comparison, shown: Speedometer) -> tuple[str, ...]:
    """Say what cannot be told from the best explanation, and what would separate the two."""
    best = comparison.best
    if best is None:
        return ()
    return tuple(_apart(test, best, rival, shown) for rival in comparison.rivals)


def _apart(test: RoadTest, best: Explanation, rival: Explanation, shown: Speedometer) -> str:
    begin = f"These readings cannot tell {name(best)} from {name(rival)}."
    found = separating(test, best, rival)
    if found is None:
        first, second = PROOF[best.code], PROOF[rival.code]
        ways = first if first == second else f"{first}, or {second}"
        return f"{begin} No further shift speed would: {ways}."
    (shift, throttle), _ = found
    one, other = best.predicted[shift, throttle], rival.predicted[shift, throttle]
    return (
        f"{begin} Measure {shift} at {throttle} throttle: {shown(one)} speaks for the first, "
        f"{shown(other)} for the second."
    )


def not_judged(comparison: Comparison) -> tuple[str, ...]:
    """Name the explanations that lack a window to be judged by."""
    words = {"vacuum-loss": "A vacuum loss", "full-throttle": "A stuck kick-down"}
    return tuple(
        f"{words[code]} could not be judged: a measured shift has no window at full throttle."
        for code in comparison.not_judged
    )
