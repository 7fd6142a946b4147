"""Shift speed against the throttle signal for every shift, and what explains a measured shift."""

from collections.abc import Mapping

from underhoist_calculators import cable_map_answers
from underhoist_calculators.answer import Answer
from underhoist_calculators.cable_map import cable_map
from underhoist_calculators.declare import Calculator, Field
from underhoist_calculators.governor_fields import governor_fields, law_field
from underhoist_calculators.inputs import EntryError, Inputs
from underhoist_calculators.road_test import THROTTLES, UP_SHIFTS
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
from underhoist_calculators.shift_map_lines import lines_given, unit_of_windows
from underhoist_calculators.shift_plot import draw, vacuum_axis
from underhoist_calculators.shift_signal import CABLE
from underhoist_calculators.signal_fields import LENGTHS, signal_fields, wire_fields

EXAMPLE = {
    "1-2": (("16 to 22 km/h", "42 to 50 km/h", "60 to 68 km/h"), "31 km/h"),
    "2-3": (("30 to 38 km/h", "71 to 81 km/h", "100 to 110 km/h"), "56 km/h"),
}
"""The demo family's windows at light, half and full throttle, and an invented reading."""


def run(inputs: Inputs) -> Answer:
    """Answer for one family and one vehicle."""
    if inputs.word("signal") == CABLE:
        return cable_map_answers.answer(cable_map(inputs))
    given = _map(inputs)
    return Answer(
        summary=summary(given),
        plates=plates(given),
        do=advice(given),
        tables=tables(given),
        warnings=warnings(given),
        working=working(given),
        values=values(given),
        picture=draw(given, vacuum_axis(given)),
    )


def _map(inputs: Inputs) -> ShiftMap:
    """Gather the map; raises `EntryError` where a shift cannot be calibrated."""
    vacuums = _vacuums(inputs)
    cut_off = _inches(inputs, "cut-off")
    if cut_off is not None and cut_off < vacuums["light"]:
        wrong = "The modulator cannot stop working below the light throttle's vacuum."
        raise EntryError("cut-off", wrong, "Write a vacuum above it, or leave it empty.")
    lines = lines_given(inputs, vacuums, cut_off)
    return ShiftMap(
        lines=lines,
        levels=vacuums,
        source=_source(inputs, vacuums, lines),
        loss=_inches(inputs, "loss") or 0.0,
        uncertainty=inputs.quantity("uncertainty").m_as("kilometre_per_hour"),
        turn=_inches(inputs, "turn"),
        stop_in=_turns(inputs, "stop-in"),
        stop_out=_turns(inputs, "stop-out"),
        unit=unit_of_windows(inputs),
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


SPEEDS = ("kilometre_per_hour", "mile_per_hour")
VACUUMS = ("conventional_inch_of_mercury", "kilopascal", "inch_of_mercury_60F")
MEASURED, FAMILY, SPRUNG = "What was measured", "From the family page", "Governor by its points"
MODULATOR, WIRE, CONVENTION = "Modulator and adjuster", "Throttle cable", "Convention"


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


def _vacuum(name: str, label: str, group: str, default: str | None, help_: str) -> Field:
    return Field(
        name=name, label=label, group=group, kind="pressure", units=VACUUMS, low="0 inHg",
        high="26 inHg", default=default, required=default is not None, help=help_,
    )  # fmt: skip


CALCULATOR = Calculator(
    name="shift-map",
    title="Shift map",
    purpose="Draws shift speed against signal vacuum or the throttle cable, and gives the vacuum "
    "loss, the adjuster turns or the millimetres of cable that would explain a measured shift.",
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
        *signal_fields(FAMILY),
        Field(
            name="wire-measured", label="Wire out meanwhile", group=WIRE, kind="ratio",
            units=("percent",), required=False, low="0 %", high="100 %",
            help="Of its travel, while these shifts came. Empty: as at light throttle.",
        ),
        Field(
            name="cable-off", label="Too tight by, to show", group=WIRE, kind="length",
            units=LENGTHS, low="-50 mm", high="50 mm", default="3 mm",
            help="Drawn as broken lines. Below zero for too slack, 0 mm for none.",
        ),
        *wire_fields(WIRE),
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
        law_field(CONVENTION),
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
        *governor_fields(SPRUNG),
    ),
    sources=(
        "Balance of forces at the shift valve: governor pressure against spring and modulator, "
        "Pg(N) = α − β·V; modulator pressure falls with the vacuum in a straight line, throttle "
        "pressure rises with the wire of a cable in one.",
        "Plain weight: centrifugal force with the square of the speed, exact. TM 9-8000 calls the "
        "usual spring-calibrated governor approximately linear; then use its own points.",
        "Between governor points: monotone cubic interpolation, Fritsch and Carlson (1980).",
    ),
    limits=(
        "Valid between no vacuum and the modulator's cut-off, or between light and full throttle "
        "of a cable. Beyond them nothing is extrapolated.",
        "Up-shifts only: hysteresis and kick-down valves move the down-shifts elsewhere.",
        "It takes one cause. shift-check weighs a whole road test.",
    ),
    folded=(FAMILY, WIRE, MODULATOR, CONVENTION, SPRUNG),
    run=run,
)  # fmt: skip
