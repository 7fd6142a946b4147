"""The fields that ask for the governor, and the governor read from them."""

from underhoist_calculators.declare import Choice, Field
from underhoist_calculators.governor import Governor, PlainWeight, Sprung, rising
from underhoist_calculators.inputs import EntryError, Inputs

POINTS = ("1", "2", "3", "4")
"""Governor points that can be written."""

SPEEDS = ("kilometre_per_hour", "mile_per_hour")
PRESSURES = ("kilopascal", "pound_force_per_square_inch", "bar")


def governor_given(inputs: Inputs) -> Governor:
    """Give the governor of the chosen law; raises `EntryError` for points that make none."""
    if inputs.word("law") != "points":
        return PlainWeight()
    points: list[tuple[float, float]] = []
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


def law_field(group: str) -> Field:
    """Declare the choice of the governor's law."""
    return Field(
        name="law", label="Governor", group=group, kind="choice", default="plain",
        choices=(
            Choice("plain", "Plain weight"),
            Choice("points", "By its own points"),
        ),
        fills_from="governor.law",
        help="A plain weight: pressure with the square of the speed. Spring-calibrated: by its "
        "own points.",
    )  # fmt: skip


def governor_fields(group: str) -> tuple[Field, ...]:
    """Declare the governor's own points."""
    return tuple(field for number in POINTS for field in _point(group, number))


def _point(group: str, number: str) -> tuple[Field, Field]:
    return (
        Field(
            name=f"governor-speed-{number}", label=f"Speed at point {number}", group=group,
            kind="speed", required=False, units=SPEEDS, low="1 km/h", high="300 km/h",
            fills_from=f"governor.{number}.speed",
            help="Road speed on the reference vehicle; points in rising order.",
        ),
        Field(
            name=f"governor-pressure-{number}", label=f"Pressure at point {number}",
            group=group, kind="pressure", required=False, units=PRESSURES, low="0 kPa",
            high="2000 kPa",
            fills_from=f"governor.{number}.pressure",
            help="Governor pressure at this speed. Only ratios count.",
        ),
    )  # fmt: skip
