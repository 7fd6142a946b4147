"""Judges a road test shift by shift, then names what explains the pattern and what does not."""

from collections.abc import Mapping

from underhoist_calculators.answer import Answer, Working
from underhoist_calculators.declare import Calculator, Field
from underhoist_calculators.governor_fields import governor_fields, law_field
from underhoist_calculators.inputs import EntryError, Inputs
from underhoist_calculators.road_test import (
    ROWS,
    UP_SHIFTS,
    Key,
    RoadTest,
)
from underhoist_calculators.shift_answers import (
    Vehicle,
    advice,
    explanations,
    misfit_working,
    summary,
    values,
    verdicts,
    warnings,
)
from underhoist_calculators.shift_explanations import PATTERNS, compare
from underhoist_calculators.shift_fault_words import points_to, rules_out
from underhoist_calculators.shift_signal import Signal
from underhoist_calculators.signal_fields import (
    signal_fields,
    signal_given,
    vacuum_fields,
    wire_fields,
)
from underhoist_calculators.units import Quantity, number_text, unit_name

NEVER = "none"
"""What is written where a shift was driven for and never came."""

EXAMPLE: dict[Key, tuple[str, str]] = {
    ("1-2", "light"): ("16 to 22 km/h", "31 km/h"),
    ("1-2", "half"): ("42 to 50 km/h", "54 km/h"),
    ("1-2", "full"): ("60 to 68 km/h", "65 km/h"),
    ("2-3", "light"): ("30 to 38 km/h", "56 km/h"),
    ("2-3", "half"): ("71 to 81 km/h", "88 km/h"),
    ("2-3", "full"): ("100 to 110 km/h", "104 km/h"),
    ("3-2", "full"): ("86 to 96 km/h", ""),
}
"""An invented road test of the demo family: a vacuum leak."""


def run(inputs: Inputs) -> Answer:
    """Answer for one road test."""
    readings = _readings(inputs)
    vehicle = _vehicle(inputs, readings)
    test = _road_test(inputs, readings, vehicle)
    signal = signal_given(inputs)
    _within_governor(test, signal)
    comparison = compare(test, signal) if test.measured else None
    return Answer(
        summary=summary(test, comparison),
        do=advice(test, comparison, signal, vehicle),
        tables=(
            verdicts(readings, test, vehicle),
            *points_to(test, comparison, signal),
            *rules_out(test, comparison, vehicle.on_dash),
            *explanations(comparison),
        ),
        warnings=warnings(readings, test, comparison, signal, vehicle),
        working=(vehicle.working, *misfit_working(test, comparison)),
        values=values(test, comparison, vehicle),
    )


def _within_governor(test: RoadTest, signal: Signal) -> None:
    """Raise `EntryError` where a window lies beyond the governor's own points."""
    known = signal.governor
    for (shift, throttle), point in test.points.items():
        if not known.lowest <= point.middle <= known.highest:
            wrong = "The governor's points do not reach over this window."
            mend = "Write further points, or choose the plain weight."
            raise EntryError(f"window-{shift}-{throttle}", wrong, mend)


def _vehicle(inputs: Inputs, readings: Mapping[Key, Quantity]) -> Vehicle:
    """Compare this vehicle with the reference; raises `EntryError` without a reference."""
    for what in ("tyre", "axle"):
        if what in inputs.values and f"reference-{what}" not in inputs.values:
            wrong = f"This vehicle's {what} says nothing without the reference {what}."
            mend = "Write the family page's, or leave both empty."
            raise EntryError(f"reference-{what}", wrong, mend)
    error = inputs.quantity("speedometer-error").m_as("dimensionless")
    axle, reference_axle = _axles(inputs)
    rolled, reference_rolled = _circumferences(inputs)
    factor = (axle / reference_axle) * (reference_rolled / rolled) / (1 + error)
    working = Working(
        what="Reference speed for one on this speedometer",
        formula="factor = (axle / reference axle) × (reference circumference / circumference) "
        "/ (1 + speedometer error)",
        numbers=f"({number_text(axle)} / {number_text(reference_axle)}) × "
        f"({number_text(reference_rolled, 3)} m / {number_text(rolled, 3)} m) / "
        f"{number_text(1 + error, 3)}",
        result=number_text(factor, 4),
    )
    unit = next((unit_name(speed) for speed in readings.values()), SPEEDS[0])
    return Vehicle(factor, working, _assumed(inputs), unit)


def _axles(inputs: Inputs) -> tuple[float, float]:
    """Give the axle ratios, fitted and reference; 1 and 1 where neither is known."""
    reference = inputs.maybe("reference-axle")
    if reference is None:
        return 1.0, 1.0
    fitted = inputs.maybe("axle")
    stated = reference.m_as("dimensionless")
    return (stated if fitted is None else fitted.m_as("dimensionless")), stated


def _circumferences(inputs: Inputs) -> tuple[float, float]:
    """Give the circumferences in m, fitted and reference; 1 and 1 where neither is known."""
    reference = inputs.tyre("reference-tyre")
    if reference is None:
        return 1.0, 1.0
    fitted = inputs.tyre("tyre") or reference
    return fitted.circumference.m_as("metre"), reference.circumference.m_as("metre")


def _assumed(inputs: Inputs) -> tuple[str, ...]:
    """Say what was taken for granted about this vehicle."""
    told = [
        f"The {what} is taken as the reference vehicle's."
        for what in ("tyre", "axle")
        if what not in inputs.values
    ]
    tyres = [tyre for tyre in (inputs.tyre("tyre"), inputs.tyre("reference-tyre")) if tyre]
    if len({tyre.rolled for tyre in tyres}) > 1:
        told.append(
            "One tyre is rolled, the other taken as 3.05 times its diameter: this alone can be "
            "1 % of the speed."
        )
    return tuple(told)


def _readings(inputs: Inputs) -> dict[Key, Quantity]:
    """Gather the speeds that were measured, as the speedometer showed them."""
    speeds = {key: inputs.maybe(f"measured-{key[0]}-{key[1]}") for key in ROWS}
    return {key: speed for key, speed in speeds.items() if speed is not None}


def _road_test(inputs: Inputs, readings: Mapping[Key, Quantity], vehicle: Vehicle) -> RoadTest:
    """Gather windows and readings; raises `EntryError` where nothing can be judged."""
    spans = {key: inputs.span(f"window-{key[0]}-{key[1]}") for key in ROWS}
    windows = {key: span for key, span in spans.items() if span is not None}
    missing = {key for key in ROWS if inputs.word(f"measured-{key[0]}-{key[1]}") == NEVER}
    measured = {k: vehicle.at_reference(speed) for k, speed in readings.items() if k in windows}
    if not measured and not missing:
        raise _nothing_to_judge(readings)
    uncertainty = vehicle.at_reference(inputs.quantity("uncertainty"))
    return RoadTest(windows, measured, uncertainty, frozenset(missing))


def _nothing_to_judge(readings: Mapping[Key, Quantity]) -> EntryError:
    """Say which entry is missing: a speed, or the window to judge it by."""
    for shift, throttle in readings:
        wrong = "A speed is measured, but there is no window to judge it by."
        return EntryError(f"window-{shift}-{throttle}", wrong, "Write it from the family page.")
    wrong = "No shift speed is written."
    return EntryError("measured-1-2-light", wrong, "Write at least one measured speed.")


VEHICLE = "This vehicle"
FAMILY = "From the family page"
CONVENTION = "Convention"
SPRUNG = "Governor by its points"
SPEEDS = ("kilometre_per_hour", "mile_per_hour")


def _row_fields(key: Key) -> tuple[Field, Field]:
    """Declare the window and the reading of one shift."""
    shift, throttle = key
    window, measured = EXAMPLE.get(key, (None, None))
    up = shift in UP_SHIFTS
    group = "Up-shifts" if up else "Kick-downs and coast-downs"
    how = (
        f"{throttle} throttle" if up else ("kicked down" if throttle == "full" else "coasting down")
    )
    row = f"{shift}, {how}"
    return (
        Field(
            name=f"window-{shift}-{throttle}", label="Window", group=group, row=row, kind="speed",
            span=True, required=False, low="1 km/h", high="250 km/h",
            help="Lowest to highest speed on the reference vehicle, e.g. 16 to 22 km/h.",
            example=window, fills_from=f"window.{shift}.{throttle}",
        ),
        Field(
            name=f"measured-{shift}-{throttle}", label="Measured", group=group, row=row,
            kind="speed", required=False, units=SPEEDS, low="1 km/h", high="250 km/h",
            help="As the speedometer showed it. Leave it empty if not driven; write none if the "
            "shift never came.",
            words=(NEVER,), example=measured or None,
        ),
    )  # fmt: skip


CALCULATOR = Calculator(
    name="shift-check",
    title="Shift check",
    purpose="Judges a road test against the family's shift windows and explains the pattern.",
    group="Shift",
    folded=(FAMILY, CONVENTION, SPRUNG),
    patterns=PATTERNS,
    fields=(
        *(field for key in ROWS for field in _row_fields(key)),
        Field(
            name="tyre", label="Tyre fitted", group=VEHICLE, kind="tyre", required=False,
            help="Size on the tyre wall, or the circumference rolled in one turn, e.g. 2.05 m.",
            example="215/75 R 15",
        ),
        Field(
            name="axle", label="Axle ratio fitted", group=VEHICLE, kind="ratio", required=False,
            help="From the tag, or counted: turns of the shaft for one turn of the wheel.",
            low="1.5", high="8", example="3.50",
        ),
        Field(
            name="speedometer-error", label="Speedometer reads high by", group=VEHICLE,
            kind="ratio", units=("percent",), low="-20 %", high="20 %", default="0 %",
            help="Proved over a measured distance. Below zero if it reads low.",
        ),
        Field(
            name="reference-tyre", label="Reference tyre", group=FAMILY, kind="tyre",
            required=False, help="The tyre that the windows are stated for.",
            example="215/75 R 15", fills_from="reference.tyre",
        ),
        Field(
            name="reference-axle", label="Reference axle ratio", group=FAMILY, kind="ratio",
            required=False, help="The axle that the windows are stated for.", low="1.5", high="8",
            example="3.50", fills_from="reference.axle",
        ),
        *signal_fields(FAMILY),
        Field(
            name="uncertainty", label="How well a speed is read", group=CONVENTION, kind="speed",
            units=SPEEDS, low="0.5 km/h", high="15 km/h", default="3 km/h",
            help="One standard deviation. 5 % of the speed counts where that is more.",
        ),
        law_field(CONVENTION),
        *vacuum_fields(CONVENTION),
        *wire_fields(CONVENTION),
        *governor_fields(SPRUNG),
    ),
    sources=(
        "Output-shaft speed is what the shift valve sees: v = N·C / axle; exact.",
        "Tyre: nominal diameter rim + 2 × aspect × width; rolling circumference 3.05 × diameter, "
        "ETRTO practice for radial tyres, from memory.",
        "Governor pressure with the square of the speed: a plain unsprung weight; or by its own "
        "points. Linear in the vacuum, or in the wire of a throttle cable, between the family's "
        "own windows.",
        "Comparison by chi-square with Akaike's penalty of 2 a parameter; windows taken as two "
        "standard deviations either way: convention, no source.",
        "Parts that a pattern points to, and what to look for there: common practice, no source.",
    ),
    limits=(
        "It names patterns of single causes. Two faults together may look like a third.",
        "A spring-calibrated governor is nearer to linear; without its own points the size found "
        "is then a rough one.",
        "A stuck kick-down gives the same shift speeds as a total loss of vacuum, or as a throttle "
        "cable that sticks fully out.",
        "A fault is ruled out only where a reading misses it by two standard deviations. Slip, "
        "harsh shifts, fluid level and line pressure do not show in shift speeds.",
    ),
    run=run,
)  # fmt: skip
