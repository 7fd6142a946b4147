"""Shift speed against signal vacuum for every shift, and which loss explains a measured shift."""

from collections.abc import Callable, Mapping

from underhoist_calculators.answer import Answer
from underhoist_calculators.declare import Calculator, Choice, Field
from underhoist_calculators.governor import Governor, PlainWeight, Sprung, rising
from underhoist_calculators.inputs import EntryError, Inputs
from underhoist_calculators.road_test import THROTTLES, UP_SHIFTS
from underhoist_calculators.shift_balance import Balance, BalanceError, Known, calibrate
from underhoist_calculators.shift_lines import Line, ShiftMap
from underhoist_calculators.shift_map_answers import (
    advice,
    plates,
    summary,
    tables,
    values,
    warnings,
    working,
)
from underhoist_calculators.shift_plot import draw
from underhoist_calculators.units import Span, unit_name

EXAMPLE = {
    "1-2": (("16 to 22 km/h", "42 to 50 km/h", "60 to 68 km/h"), "31 km/h"),
    "2-3": (("30 to 38 km/h", "71 to 81 km/h", "100 to 110 km/h"), "56 km/h"),
}
"""The demo family's windows at light, half and full throttle, and an invented reading."""

POINTS = ("1", "2", "3", "4")
"""Governor points that can be written."""


def run(inputs: Inputs) -> Answer:
    """Answer for one family and one vehicle."""
    given = _map(inputs)
    return Answer(
        summary=summary(given),
        plates=plates(given),
        do=advice(given),
        tables=tables(given),
        warnings=warnings(given),
        working=working(given),
        values=values(given),
        picture=draw(given),
    )


def _map(inputs: Inputs) -> ShiftMap:
    """Gather the map; raises `EntryError` where a shift cannot be calibrated."""
    vacuums = _vacuums(inputs)
    governor = _governor(inputs)
    cut_off = _inches(inputs, "cut-off")
    if cut_off is not None and cut_off < vacuums["light"]:
        wrong = "The modulator cannot stop working below the light throttle's vacuum."
        raise EntryError("cut-off", wrong, "Write a vacuum above it, or leave it empty.")
    lines = tuple(
        line
        for shift in UP_SHIFTS
        if (line := _line(inputs, shift, governor, vacuums, cut_off)) is not None
    )
    if not lines:
        wrong = "No shift has two windows, so nothing can be calibrated."
        mend = "Write the windows of one shift at light and full throttle, from the family page."
        raise EntryError("window-1-2-light", wrong, mend)
    spans = (inputs.span(f"window-{s}-{t}") for s in UP_SHIFTS for t in THROTTLES)
    return ShiftMap(
        lines=lines,
        vacuums=vacuums,
        source=_source(inputs, vacuums, lines),
        loss=_inches(inputs, "loss") or 0.0,
        uncertainty=inputs.quantity("uncertainty").m_as("kilometre_per_hour"),
        turn=_inches(inputs, "turn"),
        stop_in=_turns(inputs, "stop-in"),
        stop_out=_turns(inputs, "stop-out"),
        unit=next(unit_name(span.low) for span in spans if span is not None),
    )


def _inches(inputs: Inputs, name: str) -> float | None:
    found = inputs.maybe(name)
    return None if found is None else found.m_as("conventional_inch_of_mercury")


def _turns(inputs: Inputs, name: str) -> float | None:
    found = inputs.maybe(name)
    return None if found is None else found.m_as("turn")


def _vacuums(inputs: Inputs) -> dict[str, float]:
    """Read the vacuums in inHg; raises `EntryError` unless more throttle means less vacuum."""
    found = {throttle: _inches(inputs, f"vacuum-{throttle}") or 0.0 for throttle in THROTTLES}
    if not found["light"] > found["half"] > found["full"]:
        wrong = "The vacuum must fall as the throttle opens."
        raise EntryError("vacuum-half", wrong, "Write it between light and full throttle's.")
    return found


def _source(inputs: Inputs, vacuums: Mapping[str, float], lines: tuple[Line, ...]) -> float:
    """Give the vacuum at the source while the shifts were measured."""
    found = _inches(inputs, "vacuum-measured")
    source = vacuums["light"] if found is None else found
    if source <= 0 and any(line.measured is not None for line in lines):
        wrong = "Without vacuum at the source there is none to lose."
        raise EntryError("vacuum-measured", wrong, "Measure the shifts at light throttle.")
    return source


def _governor(inputs: Inputs) -> Governor:
    """Give the governor of the chosen law; raises `EntryError` for points that make none."""
    if inputs.word("law") != "points":
        return PlainWeight()
    points: list[Known] = []
    for number in POINTS:
        speed = inputs.maybe(f"governor-speed-{number}")
        pressure = inputs.maybe(f"governor-pressure-{number}")
        if (speed is None) != (pressure is None):
            empty = "speed" if speed is None else "pressure"
            wrong = "A governor point needs both its speed and its pressure."
            raise EntryError(
                f"governor-{empty}-{number}", wrong, "Write both, or leave both empty."
            )
        if speed is not None and pressure is not None:
            points.append((speed.m_as("kilometre_per_hour"), pressure.m_as("kilopascal")))
    if len(points) < 2:
        wrong = "A governor by its own points needs at least two of them."
        empty = f"governor-speed-{POINTS[len(points)]}"
        raise EntryError(empty, wrong, "Write them, or choose the plain weight.")
    if not rising(points):
        wrong = "Speed and pressure must both rise from each governor point to the next."
        raise EntryError("governor-speed-1", wrong, "Write the points in rising order.")
    return Sprung(tuple(points))


def _line(
    inputs: Inputs,
    shift: str,
    governor: Governor,
    vacuums: Mapping[str, float],
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
        known = [(vacuums[t], w[0] + edge * (w[1] - w[0])) for t in ends if (w := windows[t])]
        return calibrate(governor, known[0], known[1], cut_off)

    try:
        balance = by(0.5)
    except BalanceError as error:
        mend = "Mend the windows, the governor's points or the cut-off."
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


SPEEDS = ("kilometre_per_hour", "mile_per_hour")
PRESSURES = ("kilopascal", "pound_force_per_square_inch", "bar")
VACUUMS = ("conventional_inch_of_mercury", "kilopascal", "inch_of_mercury_60F")
MEASURED, FAMILY, SPRUNG = "What was measured", "From the family page", "Governor by its points"
MODULATOR, CONVENTION = "Modulator and adjuster", "Convention"


def _window(shift: str, throttle: str) -> Field:
    at = THROTTLES.index(throttle)
    return Field(
        name=f"window-{shift}-{throttle}", label=f"{shift} at {throttle} throttle", group=FAMILY,
        kind="speed", span=True, required=False, units=SPEEDS, low="1 km/h", high="250 km/h",
        example=EXAMPLE[shift][0][at] if shift in EXAMPLE else None,
        fills_from=f"window.{shift}.{throttle}",
        help="Window on the reference vehicle, e.g. 16 to 22 km/h. Two throttles calibrate a "
        "shift, the third is checked.",
    )  # fmt: skip


def _measured(shift: str) -> Field:
    return Field(
        name=f"measured-{shift}", label=f"{shift} came at", group=MEASURED, row=f"Shift {shift}",
        kind="speed", required=False, units=SPEEDS, low="1 km/h", high="250 km/h",
        example=EXAMPLE[shift][1] if shift in EXAMPLE else None,
        help="As the reference vehicle's; shift-check converts tyre, axle and speedometer. Leave "
        "it empty if not driven.",
    )  # fmt: skip


def _governor_fields(number: str) -> tuple[Field, Field]:
    return (
        Field(
            name=f"governor-speed-{number}", label=f"Speed at point {number}", group=SPRUNG,
            kind="speed", required=False, units=SPEEDS, low="1 km/h", high="300 km/h",
            fills_from=f"governor.{number}.speed",
            help="Road speed on the reference vehicle; points in rising order.",
        ),
        Field(
            name=f"governor-pressure-{number}", label=f"Pressure at point {number}",
            group=SPRUNG, kind="pressure", required=False, units=PRESSURES, low="0 kPa",
            high="2000 kPa",
            fills_from=f"governor.{number}.pressure",
            help="Governor pressure at this speed. Only ratios count.",
        ),
    )  # fmt: skip


def _vacuum(name: str, label: str, group: str, default: str | None, help_: str) -> Field:
    return Field(
        name=name, label=label, group=group, kind="pressure", units=VACUUMS, low="0 inHg",
        high="26 inHg", default=default, required=default is not None, help=help_,
    )  # fmt: skip


CALCULATOR = Calculator(
    name="shift-map",
    title="Shift map",
    purpose="Draws shift speed against signal vacuum, and gives the vacuum loss or the adjuster "
    "turns that would explain a measured shift.",
    group="Shift",
    fields=(
        *(_measured(shift) for shift in UP_SHIFTS),
        _vacuum(
            "vacuum-measured", "Vacuum at the manifold meanwhile", MEASURED, "16 inHg",
            "Read at the source while these shifts came; about 16 inHg at light throttle.",
        ),
        _vacuum(
            "loss", "Loss to show", MEASURED, "4 inHg",
            "Vacuum lost between manifold and modulator, drawn as broken lines. 0 inHg for none.",
        ),
        *(_window(shift, throttle) for shift in UP_SHIFTS for throttle in THROTTLES),
        Field(
            name="turn", label="One turn of the adjuster is worth", group=MODULATOR,
            kind="pressure", required=False, units=VACUUMS, low="0.05 inHg", high="10 inHg",
            example="0.6 inHg", fills_from="modulator.turn",
            help="Vacuum that makes the same change as one turn. In raises and firms all shifts.",
        ),
        Field(
            name="cut-off", label="Modulator does nothing above", group=MODULATOR,
            kind="pressure", required=False, units=VACUUMS, low="1 inHg", high="28 inHg",
            example="17 inHg", fills_from="modulator.cut_off",
            help="Vacuum beyond which shifts come no earlier. Empty: the map ends at the last "
            "known window.",
        ),
        Field(
            name="stop-in", label="Turns left inwards", group=MODULATOR, kind="turns",
            required=False, units=("turn",), low="0 turns", high="30 turns",
            help="From the present setting until the screw stops. Count, do not force.",
        ),
        Field(
            name="stop-out", label="Turns left outwards", group=MODULATOR, kind="turns",
            required=False, units=("turn",), low="0 turns", high="30 turns",
            help="From the present setting until the screw stops.",
        ),
        Field(
            name="law", label="Governor", group=CONVENTION, kind="choice", default="plain",
            choices=(
                Choice("plain", "Plain weight"),
                Choice("points", "By its own points"),
            ),
            help="A plain weight: pressure with the square of the speed. Spring-calibrated: by its "
            "own points.",
        ),
        _vacuum("vacuum-light", "Vacuum at light throttle", CONVENTION, "16 inHg",
                "At the manifold of an engine in order, where the light windows hold."),
        _vacuum("vacuum-half", "Vacuum at half throttle", CONVENTION, "8 inHg",
                "At the manifold of an engine in order, where the half windows hold."),
        _vacuum("vacuum-full", "Vacuum at full throttle", CONVENTION, "0 inHg",
                "At the manifold of an engine in order, where the full windows hold."),
        Field(
            name="uncertainty", label="How well a speed is read", group=CONVENTION, kind="speed",
            units=SPEEDS, low="0.1 km/h", high="15 km/h", default="3 km/h",
            help="Either way. It widens the loss that is found.",
        ),
        *(field for number in POINTS for field in _governor_fields(number)),
    ),
    sources=(
        "Balance of forces at the shift valve: governor pressure against spring and modulator, "
        "Pg(N) = α − β·V; modulator pressure falls with the vacuum in a straight line.",
        "Plain weight: centrifugal force with the square of the speed, exact. TM 9-8000 calls the "
        "usual spring-calibrated governor approximately linear; then use its own points.",
        "Between governor points: monotone cubic interpolation, Fritsch and Carlson (1980).",
    ),
    limits=(
        "Valid between no vacuum and the modulator's cut-off. Beyond them the speed no longer "
        "depends on vacuum, and nothing is extrapolated.",
        "Up-shifts only: hysteresis and kick-down valves move the down-shifts elsewhere.",
        "It takes one cause. shift-check weighs a whole road test.",
    ),
    folded=(FAMILY, MODULATOR, CONVENTION, SPRUNG),
    run=run,
)  # fmt: skip
