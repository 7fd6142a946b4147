"""The fields that ask for the throttle signal, and the signal read from them."""

from underhoist_calculators.declare import Field
from underhoist_calculators.governor_fields import governor_given
from underhoist_calculators.inputs import EntryError, Inputs
from underhoist_calculators.road_test import THROTTLES
from underhoist_calculators.shift_signal import (
    CABLE,
    SIGNALS,
    VACUUM,
    Signal,
    by_cable,
    by_vacuum,
)

VACUUMS = ("conventional_inch_of_mercury", "kilopascal")
LENGTHS = ("millimetre", "inch")


def signal_given(inputs: Inputs) -> Signal:
    """Read the signal that was chosen; raises `EntryError` where its levels make none."""
    governor = governor_given(inputs)
    if inputs.word("signal") == CABLE:
        return by_cable(_shares(inputs), wire_travel(inputs), wire_turn(inputs), governor)
    return by_vacuum(_vacuums(inputs), governor)


def wire_travel(inputs: Inputs) -> float | None:
    """Give the middle of the wire's travel in mm, or None where it is not written."""
    span = inputs.span("cable-travel")
    if span is None:
        return None
    return (span.low.m_as("millimetre") + span.high.m_as("millimetre")) / 2


def wire_turn(inputs: Inputs) -> float | None:
    """Give how far one turn of the cable's adjuster moves the sheath, in mm, or None."""
    found = inputs.maybe("cable-turn")
    return None if found is None else found.m_as("millimetre")


def _shares(inputs: Inputs) -> dict[str, float]:
    """Read how far the wire is out, 0 to 1 of its travel, by throttle."""
    shares = {t: inputs.quantity(f"wire-{t}").m_as("dimensionless") for t in THROTTLES}
    if not shares["light"] < shares["half"] < shares["full"]:
        wrong = "The wire must come further out as the throttle opens."
        raise EntryError("wire-half", wrong, "Write it between light and full throttle's.")
    return shares


def _vacuums(inputs: Inputs) -> dict[str, float]:
    """Read the vacuums in inHg; raises `EntryError` unless more throttle means less vacuum."""
    vacuums = {
        throttle: inputs.quantity(f"vacuum-{throttle}").m_as("conventional_inch_of_mercury")
        for throttle in THROTTLES
    }
    if not vacuums["light"] > vacuums["half"] > vacuums["full"]:
        wrong = "The vacuum must fall as the throttle opens."
        raise EntryError("vacuum-half", wrong, "Write it between light and full throttle's.")
    return vacuums


def signal_field(group: str) -> Field:
    """Declare the choice of the throttle signal."""
    return Field(
        name="signal", label="Throttle signal", group=group, kind="choice", default=VACUUM,
        choices=SIGNALS, fills_from="signal",
        help="What tells the unit how far the pedal is down: the engine's vacuum, or a cable.",
    )  # fmt: skip


def signal_fields(group: str) -> tuple[Field, ...]:
    """Declare the choice and what the family states of its cable."""
    return (
        signal_field(group),
        Field(
            name="cable-travel", label="Travel of the cable's wire", group=group, kind="length",
            span=True, required=False, low="5 mm", high="150 mm",
            fills_from="throttle_cable.travel",
            help="From idle to full throttle, e.g. 36 to 38 mm. Without it no size is told.",
        ),
        Field(
            name="cable-turn", label="One turn of the cable's adjuster", group=group,
            kind="length", units=LENGTHS, required=False, low="0.1 mm", high="5 mm",
            fills_from="throttle_cable.turn", help="How far it moves the sheath, e.g. 1 mm.",
        ),
    )  # fmt: skip


def vacuum_fields(group: str) -> tuple[Field, ...]:
    """Declare the vacuum at each throttle."""
    return tuple(
        Field(
            name=f"vacuum-{throttle}", label=f"Vacuum at {throttle} throttle", group=group,
            kind="pressure", units=VACUUMS, low="0 inHg", high="26 inHg", default=default,
            help="At the manifold of an engine in order. It sets how a vacuum loss shows.",
        )
        for throttle, default in zip(THROTTLES, ("16 inHg", "8 inHg", "0 inHg"), strict=True)
    )  # fmt: skip


def wire_fields(group: str) -> tuple[Field, ...]:
    """Declare how far the wire is out at each throttle, as a share of its travel."""
    return tuple(
        Field(
            name=f"wire-{throttle}", label=f"Wire out at {throttle} throttle", group=group,
            kind="ratio", units=("percent",), low="0 %", high="100 %", default=default,
            help="Of its travel, for a throttle cable in order. Common practice, no source.",
        )
        for throttle, default in zip(THROTTLES, ("5 %", "50 %", "100 %"), strict=True)
    )  # fmt: skip
