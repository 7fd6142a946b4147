"""Signal vacuum: what the engine should make at this altitude, and what the hose loses."""

from attrs import frozen

from underhoist_calculators.answer import Answer, Plate, Table, Working, exact, plate
from underhoist_calculators.atmosphere import SEA_LEVEL, standard_pressure, vacuum_here
from underhoist_calculators.declare import Calculator, Choice, Field
from underhoist_calculators.inputs import EntryError, Inputs
from underhoist_calculators.shift_signal import CABLE
from underhoist_calculators.shift_signal_words import CABLE_RULE
from underhoist_calculators.signal_fields import signal_field
from underhoist_calculators.units import Quantity, number_text, quantity, show, unit_name

INHG = "conventional_inch_of_mercury"

NO_LINE = "no-line"

PATTERNS = (
    "sound",
    "line-losing",
    "low-and-losing",
    "source-low",
    "source-good",
    "source-high",
    "impossible",
    "not-read",
    NO_LINE,
)
"""Every pattern that an answer can name: source and line in one word."""


@frozen(kw_only=True)
class Readings:
    """What is known of one vehicle's vacuum here; None where it was not read."""

    ambient: Quantity
    expected: Quantity
    source: Quantity | None
    modulator: Quantity | None
    tolerance: Quantity

    @property
    def drop(self) -> Quantity | None:
        """Vacuum lost between the source and the modulator."""
        if self.source is None or self.modulator is None:
            return None
        return self.source - self.modulator


def run(inputs: Inputs) -> Answer:
    """Answer for one vehicle."""
    if inputs.word("signal") == CABLE:
        return _no_line(inputs)
    readings = _readings(inputs)
    return Answer(
        summary=_summary(readings),
        plates=_plates(readings),
        do=_advice(readings),
        tables=(_verdicts(readings),),
        warnings=_warnings(readings),
        working=_working(inputs, readings),
        values={
            "ambient": exact(readings.ambient),
            "expected": exact(readings.expected),
            "pattern": _pattern(readings),
            "source": _judge_source(readings),
            "line": _judge_line(readings),
            **({"drop": exact(readings.drop)} if readings.drop is not None else {}),
        },
    )


def _no_line(inputs: Inputs) -> Answer:
    """Say that a unit with a throttle cable has no signal line; nothing read is judged."""
    read = any(inputs.maybe(name) is not None for name in ("source", "modulator"))
    return Answer(
        summary="This unit has no signal line: a throttle cable tells it how far the pedal is "
        "down.",
        do=(CABLE_RULE, "Put the speeds of a road test into shift-check."),
        warnings=("What the gauge reads is not judged.",) if read else (),
        values={"pattern": NO_LINE, "source": "no line", "line": "no line"},
    )


def _readings(inputs: Inputs) -> Readings:
    """Gather the readings; raises `EntryError` for a vacuum deeper than the air allows."""
    ambient = _ambient(inputs)
    normal = inputs.quantity("sea-level")
    expected = vacuum_here(normal, ambient, proportional=inputs.word("law") == "proportional")
    for name in ("source", "modulator"):
        vacuum = inputs.maybe(name)
        if vacuum is not None and vacuum > ambient:
            wrong = (
                f"The vacuum exceeds the ambient pressure of {show(ambient, unit_name(vacuum))}: "
                "no gauge can show that here."
            )
            raise EntryError(name, wrong, "Read the gauge again, and check altitude and unit.")
    read = [found for name in ("source", "modulator") if (found := inputs.maybe(name)) is not None]
    unit = unit_name(read[0] if read else normal)
    return Readings(
        ambient=ambient,
        expected=max(expected, quantity(0, INHG)).to(unit),
        source=inputs.maybe("source"),
        modulator=inputs.maybe("modulator"),
        tolerance=inputs.quantity("tolerance"),
    )


def _ambient(inputs: Inputs) -> Quantity:
    """Give the barometer's pressure, or the standard one; raises `EntryError` without either."""
    barometer, altitude = inputs.maybe("barometer"), inputs.maybe("altitude")
    if barometer is not None:
        return barometer
    if altitude is None:
        wrong = "Neither altitude nor barometer is written."
        raise EntryError("altitude", wrong, "Write the altitude of the place, e.g. 120 m.")
    return standard_pressure(altitude)


def _judge_source(readings: Readings) -> str:
    """Judge the engine: good, low, high or not read."""
    if readings.source is None:
        return "not read"
    off = readings.source - readings.expected
    if abs(off) <= readings.tolerance:
        return "good"
    return "low" if off < quantity(0, INHG) else "high"


def _judge_line(readings: Readings) -> str:
    """Judge the line: sound, losing, impossible or not read."""
    drop = readings.drop
    if drop is None:
        return "not read"
    if abs(drop) <= readings.tolerance:
        return "sound"
    return "losing" if drop > quantity(0, INHG) else "impossible"


def _pattern(readings: Readings) -> str:
    """Put both verdicts into one word."""
    source, line = _judge_source(readings), _judge_line(readings)
    if line == "impossible" or source == "not read":
        return line.replace(" ", "-")
    if line == "losing":
        return "low-and-losing" if source == "low" else "line-losing"
    return "sound" if (source, line) == ("good", "sound") else f"source-{source}"


def _summary(readings: Readings) -> str:
    expected = show(readings.expected, digits=1)
    said = {
        "not read": f"An engine in order should make about {expected} here.",
        "good": f"The engine makes what it should here, about {expected}.",
        "low": f"The engine makes less than the {expected} to expect here.",
        "high": f"The engine makes more than the {expected} to expect here.",
    }[_judge_source(readings)]
    drop = readings.drop
    line = {
        "not read": "",
        "sound": " The line brings it to the modulator.",
        "losing": f" The line loses {show(drop, digits=1) if drop is not None else ''} on the way.",
        "impossible": " The modulator cannot have more vacuum than the source.",
    }[_judge_line(readings)]
    return said + line


def _plates(readings: Readings) -> tuple[Plate, ...]:
    others = tuple(u for u in (INHG, "kilopascal") if u != unit_name(readings.expected))
    expected = plate("Expected at the manifold", readings.expected, digits=1, others=others)
    if readings.drop is None:
        return (expected,)
    drop = readings.drop
    return expected, plate("Lost in the line", drop, digits=1, others=others)


def _advice(readings: Readings) -> tuple[str, ...]:
    """Say what to look for, the line first: it is the cheapest."""
    told: list[str] = []
    if _judge_line(readings) == "losing":
        told.append(
            "Renew the hose end to end with vacuum hose of 1/4 in bore, and read again before "
            "anything else is touched."
        )
        told.append(
            "If it still loses, close the modulator's end: if the vacuum then comes back, the "
            "modulator's diaphragm leaks. Fluid in the hose says the same."
        )
    if _judge_line(readings) == "impossible":
        told.append("Read both with the same gauge, the engine warm and at the same idle speed.")
    if _judge_source(readings) == "low":
        told.append(
            "Put the engine right first: idle speed, timing, leaks at the manifold. The "
            "transmission only obeys the vacuum it is given."
        )
    return tuple(told)


def _verdicts(readings: Readings) -> Table:
    """Write readings and expectations side by side."""
    deepest = show(readings.ambient, unit_name(readings.expected), 1)
    tolerance = show(readings.tolerance)
    rows = (
        ("Deepest vacuum that can be here", deepest, "the ambient pressure itself"),
        ("At the manifold", _read(readings.source),
         f"{_judge_source(readings)}, expected {show(readings.expected, digits=1)} ± {tolerance}"),
        ("At the modulator", _read(readings.modulator), _judge_line(readings)),
    )  # fmt: skip
    return Table(title="Readings", heads=("What", "Vacuum", "Verdict"), rows=rows)


def _read(vacuum: Quantity | None) -> str:
    return "not read" if vacuum is None else show(vacuum)


def _warnings(readings: Readings) -> tuple[str, ...]:
    less = (SEA_LEVEL - readings.ambient).to(INHG)
    if less < quantity(1, INHG):
        return ()
    return (
        f"The air is {show(less, digits=1)} thinner here than at sea level. Shifts come later at "
        "light throttle with nothing wrong; do not set the adjuster by sea-level speeds.",
    )


def _working(inputs: Inputs, readings: Readings) -> tuple[Working, ...]:
    ambient = show(readings.ambient.to("kilopascal"), digits=2)
    normal = inputs.quantity("sea-level")
    start: tuple[Working, ...] = ()
    if inputs.maybe("barometer") is None:
        metres = number_text(inputs.quantity("altitude").m_as("metre"), 0)
        start = (
            Working(
                what="Ambient pressure",
                formula="p = 101.325 kPa · (1 − 0.0065·h / 288.15)^5.25588",
                numbers=f"101.325 × (1 − 0.0065 × {metres} / 288.15)^5.25588", result=ambient,
            ),
        )  # fmt: skip
    proportional = inputs.word("law") == "proportional"
    formula = "V = V₀ · p / p₀" if proportional else "V = V₀ − (p₀ − p)"
    here, sea = (show(p.to(INHG), digits=2) for p in (readings.ambient, SEA_LEVEL))
    numbers = (
        f"{show(normal)} × {here} / {sea}" if proportional else f"{show(normal)} − ({sea} − {here})"
    )
    expected = Working(
        what="Vacuum to expect", formula=formula, numbers=numbers,
        result=show(readings.expected, digits=1),
    )  # fmt: skip
    if readings.drop is None:
        return (*start, expected)
    drop = Working(
        what="Lost in the line", formula="drop = source − modulator",
        numbers=f"{_read(readings.source)} − {_read(readings.modulator)}",
        result=show(readings.drop, digits=1),
    )  # fmt: skip
    return (*start, expected, drop)


HERE, READ, CONVENTION = "Where the vehicle stands", "What the gauge reads, at idle", "Convention"
GAUGES = (INHG, "kilopascal", "conventional_millimetre_of_mercury", "inch_of_mercury_60F")


def _vacuum(name: str, label: str, help_: str, example: str) -> Field:
    return Field(
        name=name, label=label, group=READ, kind="pressure", units=GAUGES, low="0 inHg",
        high="31 inHg", required=False, help=help_, example=example,
    )  # fmt: skip


CALCULATOR = Calculator(
    name="signal-vacuum",
    title="Signal vacuum",
    purpose="Gives the manifold vacuum to expect at this altitude and judges what the line loses "
    "on the way to the modulator.",
    group="Shift",
    fields=(
        _vacuum("source", "At the manifold", "Warm, idling, selector as for the idle speed.",
                "17 inHg"),
        _vacuum("modulator", "At the modulator's end of the hose",
                "Gauge in a tee at the modulator, the modulator connected.", "13 inHg"),
        Field(
            name="altitude", label="Altitude", group=HERE, kind="length", units=("metre", "foot"),
            required=False, low="-500 m", high="6000 m", example="120 m",
            help="Of the place where the gauge is read.",
        ),
        Field(
            name="barometer", label="Barometer", group=HERE, kind="pressure", required=False,
            units=("kilopascal", INHG), low="45 kPa", high="110 kPa",
            help="Station pressure, not reduced to sea level. Used instead of the altitude.",
        ),
        signal_field(CONVENTION),
        Field(
            name="sea-level", label="Good vacuum at sea level", group=CONVENTION, kind="pressure",
            units=GAUGES, low="5 inHg", high="25 inHg", default="18 inHg",
            help="At idle, warm. 17 to 21 inHg is common practice, no source; the engine's own "
            "figure is better.",
        ),
        Field(
            name="law", label="How it falls with altitude", group=CONVENTION, kind="choice",
            default="absolute",
            choices=(
                Choice("absolute", "Same absolute manifold pressure, as at idle"),
                Choice("proportional", "In proportion to the ambient pressure"),
            ),
            help="At idle the engine wants the same air, so the absolute pressure stays.",
        ),
        Field(
            name="tolerance", label="A gauge is good for", group=CONVENTION, kind="pressure",
            units=GAUGES, low="0.1 inHg", high="3 inHg", default="1 inHg",
            help="Either way. Less than this is no loss. Common practice, no source.",
        ),
    ),
    sources=(
        "Standard atmosphere: ISO 2533, geopotential altitude, troposphere.",
        "Gauge vacuum = ambient − absolute pressure; exact by definition.",
        "Inch of mercury: conventional, 3386.389 Pa (NIST SP 811), unless 60 °F is chosen, 0.28 % "
        "less.",
        "Vacuum hose of 1/4 in bore for the signal line: common practice, no source.",
    ),
    limits=(
        "One inch of mercury per 1000 ft is a rule of thumb: 1.07 at sea level, 0.81 at 9500 ft.",
        "Weather moves the pressure by up to 1 inHg either way; write the barometer where it "
        "matters.",
        "Idle only. Under way the vacuum is what the throttle makes it.",
    ),
    folded=(CONVENTION,),
    patterns=PATTERNS,
    run=run,
)  # fmt: skip
