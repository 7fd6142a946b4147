"""What a shift check says: summary, advice, verdicts, explanations, warnings and working."""

from collections.abc import Iterable, Iterator, Mapping

from attrs import frozen

from underhoist_calculators.answer import Exact, Table, Working
from underhoist_calculators.cable_answers import cable_advice, cable_assumptions
from underhoist_calculators.road_test import (
    ROWS,
    Key,
    RoadTest,
    beyond,
    in_words,
    is_down,
    is_kick_down,
)
from underhoist_calculators.shift_explanations import (
    EARNED,
    FEW,
    Comparison,
    lone_reading,
)
from underhoist_calculators.shift_signal import Signal
from underhoist_calculators.shift_signal_words import SHARED
from underhoist_calculators.shift_words import explain, name, not_judged, pattern, rivalry
from underhoist_calculators.units import Quantity, number_text, quantity, show

Readings = Mapping[Key, Quantity]
"""Speeds by shift and throttle, as this vehicle's speedometer showed them."""


@frozen
class Vehicle:
    """What this vehicle changes: reference speed over indicated speed, and how that was found."""

    factor: float
    working: Working
    assumed: tuple[str, ...]
    unit: str

    def at_reference(self, speed: Quantity) -> Quantity:
        """Give a speedometer reading as the speed of the reference vehicle."""
        return speed * self.factor

    def shown(self, speed: Quantity) -> Quantity:
        """Give a reference speed as this vehicle's speedometer shows it."""
        return (speed / self.factor).to(self.unit)

    def shows(self, speed: Quantity) -> str:
        """Write a reference speed as this vehicle's speedometer shows it."""
        return show(self.shown(speed), digits=0)

    def on_dash(self, speed: float) -> str:
        """Write a reference speed in km/h as this vehicle's speedometer shows it."""
        return self.shows(quantity(speed, "kilometre_per_hour"))


def summary(test: RoadTest, comparison: Comparison | None) -> str:
    """Put the pattern and its best explanation into two sentences."""
    never = " and ".join(
        sorted({in_words(key) if is_down(key) else key[0] for key in test.missing})
    )
    said = [f"{never} never came."] if never else []
    if comparison is not None:
        said.extend((pattern(test), _best(test, comparison)))
    return " ".join(filter(None, said))


def _best(test: RoadTest, comparison: Comparison) -> str:
    """Name the best explanation and, as plainly, what explains the readings as well."""
    best = comparison.best
    if best is None:
        return "No single cause explains these speeds."
    if best.code == "as-specified":
        return ""
    if len(test.measured) == 1:
        return "One reading cannot name the cause."
    close = " or ".join(name(rival) for rival in comparison.rivals)
    return f"Best explained by {name(best)}{f', or as well by {close}' if close else ''}."


def advice(
    test: RoadTest, comparison: Comparison | None, signal: Signal, vehicle: Vehicle
) -> tuple[str, ...]:
    """Say what the best explanation means, then what would separate it from its rivals."""
    told = [_missing_advice(test, key, signal, vehicle) for key in _first_missing(test)]
    if comparison is None:
        return tuple(told)
    told.extend(_means(test, comparison, signal))
    return (*told, *rivalry(test, comparison, signal, vehicle.on_dash))


def _means(test: RoadTest, comparison: Comparison, signal: Signal) -> Iterator[str]:
    """Say what the best explanation means; where there is none, what to drive again."""
    best = comparison.best
    if lone := lone_reading(test, comparison):
        yield (
            f"No cause tried moves the {in_words(lone)} and leaves the others. Drive it twice more "
            "and take the middle reading."
        )
    elif best is None:
        yield (
            "Drive the test again and watch the throttle. If the speeds stay as they are, more "
            "than one thing is wrong: begin with fluid, then speedometer, then the signal."
        )
    elif best is comparison.specified and test.outside:
        yield (
            "What lies outside its window may be the scatter of readings and of good units. Drive "
            "those shifts twice more and take the middle reading."
        )
    elif len(test.measured) > 1:
        yield explain(best, signal)
        yield from cable_advice(best, signal)


def _first_missing(test: RoadTest) -> tuple[Key, ...]:
    """Take the lowest missing shift of each way of driving: up, kicked down, coasting down."""
    found: dict[str, Key] = {}
    for key in sorted(test.missing):
        found.setdefault(key[1] if is_down(key) else "up", key)
    return tuple(found.values())


def _missing_advice(test: RoadTest, key: Key, signal: Signal, vehicle: Vehicle) -> str:
    """Say how to drive before a shift counts as missing."""
    shift = key[0]
    if not is_down(key):
        limit = test.windows.get((shift, "full"))
        far = f"beyond {vehicle.shows(limit.high)}" if limit else "up to full speed"
        return (
            f"Drive {far} before calling the {shift} missing: a stuck kick-down only delays it. If "
            "it is missing, look at its valve, its band or clutch, and the governor's pressure."
        )
    window = test.windows.get(key)
    below = f" below {vehicle.shows(window.low)}" if window else " at a lower speed"
    if is_kick_down(key):
        return (
            f"Kick down{below} before calling the {in_words(key)} missing: above its window it "
            f"must not come. If it is missing, look {SHARED[signal.kind].kick_down_missing} first."
        )
    return (
        f"Let it coast{below} before calling the {in_words(key)} missing. If it is missing, look "
        "at its valve and at a governor that keeps its pressure."
    )


def _row(key: Key) -> str:
    shift, throttle = key
    return in_words(key) if is_down(key) else f"{shift}, {throttle} throttle"


def verdicts(readings: Readings, test: RoadTest, vehicle: Vehicle) -> Table:
    """Set each reading against its window, as this vehicle's speedometer shows it."""
    rows = tuple(
        (
            _row(key),
            _window(test, key, vehicle),
            "never came" if key in test.missing else show(readings[key]),
            _verdict(test, key, vehicle),
        )
        for key in ROWS
        if key in readings or key in test.missing
    )
    return Table(
        title="Shift by shift, as this speedometer shows it",
        heads=("Shift", "Window", "Measured", "Verdict"),
        rows=rows,
    )


def _window(test: RoadTest, key: Key, vehicle: Vehicle) -> str:
    window = test.windows.get(key)
    if window is None:
        return "none given"
    low, high = vehicle.shown(window.low), vehicle.shown(window.high)
    return f"{number_text(low.magnitude, 0)} to {show(high, digits=0)}"


def _verdict(test: RoadTest, key: Key, vehicle: Vehicle) -> str:
    """Judge one reading in words."""
    if key in test.missing:
        return "missing"
    if key not in test.measured:
        return "not judged"
    off = beyond(test.measured[key], test.windows[key])
    if off.magnitude == 0:
        return "inside"
    up = not is_down(key)
    word = ("late" if up else "too high") if off.magnitude > 0 else ("early" if up else "too low")
    doubt = " (within the reading's uncertainty)" if abs(off) <= test.uncertainty else ""
    return f"{word} by {show(vehicle.shown(abs(off)), digits=0)}{doubt}"


def explanations(comparison: Comparison | None) -> tuple[Table, ...]:
    """List what explains anything, best first, with its misfit; nothing where all is well."""
    if comparison is None or comparison.best is comparison.specified:
        return ()
    specified = comparison.specified
    worth = [e for e in comparison.tried if e is specified or e.gain(specified) >= EARNED]
    rows = tuple(
        (
            name(e)[0].upper() + name(e)[1:],
            f"{number_text(e.chi_square, 1)}, with its penalty {number_text(e.score, 1)}",
            "fits" if e.fits else "does not fit",
        )
        for e in sorted(worth, key=lambda e: e.score)
    )
    heads = ("Explanation", f"Misfit for {specified.readings} readings", "Verdict")
    return (Table(title="What could explain it", heads=heads, rows=rows),)


def misfit_working(test: RoadTest, comparison: Comparison | None) -> Iterator[Working]:
    """Show the misfit of the best explanation, term by term."""
    if comparison is None or comparison.best is None:
        return
    best = comparison.best
    terms = [
        f"(({number_text(test.speeds[key], 1)} − {number_text(best.predicted[key], 1)}) / "
        f"{number_text(test.scatters[key], 1)})²"
        for key in ROWS
        if key in test.measured
    ]
    yield Working(
        what=f"Misfit of {name(best)}, km/h at the reference vehicle",
        formula="chi-square = sum of ((measured − explained) / scatter)²",
        numbers=" + ".join(terms),
        result=number_text(best.chi_square, 2),
    )


def warnings(
    readings: Readings,
    test: RoadTest,
    comparison: Comparison | None,
    signal: Signal,
    vehicle: Vehicle,
) -> tuple[str, ...]:
    """Say what the answer does not rest on."""
    unjudged = [in_words(key) for key in readings if key not in test.windows]
    few = len(test.measured) < FEW
    return (
        *vehicle.assumed,
        *((f"Not judged, no window given: {', '.join(unjudged)}.",) if unjudged else ()),
        *(("Fewer than three readings make no pattern: measure more.",) if few else ()),
        *(not_judged(comparison) if comparison else ()),
        *cable_assumptions(comparison, signal),
    )


def values(
    test: RoadTest, comparison: Comparison | None, vehicle: Vehicle
) -> dict[str, Exact | str]:
    """Give the pattern's code, its rivals' codes and the fitted value."""
    best = comparison.best if comparison else None
    code = "missing-shift" if test.missing else best.code if best else "unexplained"
    found: dict[str, Exact | str] = {
        "pattern": code,
        "factor": Exact(vehicle.factor, "dimensionless"),
    }
    if comparison and best:
        found["rivals"] = ", ".join(_rivals(test, comparison, code))
        if best.unit != "percent":
            found["value"] = Exact(best.value, best.unit)
    return found


def _rivals(test: RoadTest, comparison: Comparison, code: str) -> Iterable[str]:
    """Give the codes of what else these readings can be, each once."""
    others = comparison.tried if len(test.measured) < FEW else comparison.rivals
    codes = [each.code for each in others]
    if test.missing and comparison.best and comparison.best is not comparison.specified:
        codes.insert(0, comparison.best.code)
    return dict.fromkeys(each for each in codes if each != code)
