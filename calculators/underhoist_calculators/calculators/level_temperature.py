"""What the dipstick will show at another temperature: all expansion shows in the pan."""

from attrs import frozen

from underhoist_calculators.answer import Answer, Exact, Plate, Table, Working, exact, plate
from underhoist_calculators.declare import Calculator, Field
from underhoist_calculators.dipstick_plot import Shown, draw
from underhoist_calculators.filling import READABLE
from underhoist_calculators.fluid_expansion import correction_factor, rise
from underhoist_calculators.fluid_fields import BETWEEN_MARKS, CONVENTION, DENSITY, FAMILY, VOLUMES
from underhoist_calculators.inputs import EntryError, Inputs
from underhoist_calculators.units import Quantity, Span, number_text, quantity, show, unit_name

TEMPERATURES = ("degree_Celsius", "degree_Fahrenheit")

LADDER = {
    "degree_Celsius": (0, 20, 40, 60, 80, 100),
    "degree_Fahrenheit": (30, 70, 110, 150, 190, 220),
}
"""Temperatures of the table, by the unit in which the fluid's was written."""

FARTHEST = 3.0
"""Marks from full beyond which a dipstick tells nothing. Common practice, no source."""


@frozen(kw_only=True)
class Stick:
    """A reading at a temperature, and the unit it was taken in."""

    read: Quantity
    temperature: Quantity
    total: Quantity
    between_marks: Quantity
    density: Quantity

    def risen(self, at: Quantity) -> Quantity:
        """Give the change of the whole volume from the reading to another temperature."""
        return rise(self.total, self.temperature, at, self.density)

    def level(self, at: Quantity) -> Quantity:
        """Give the level to expect at another temperature, in marks above full."""
        marks = (self.risen(at) / self.between_marks).m_as("dimensionless")
        return quantity(self.read.m_as("mark_above_full") + marks, "mark_above_full")


def run(inputs: Inputs) -> Answer:
    """Answer for another temperature, or for both ends of the level rule."""
    stick, rule = _stick(inputs), inputs.span("level-temperature")
    ends = _ends(inputs, rule)
    levels = tuple(_within(stick, at) for at in ends)
    return Answer(
        summary=_summary(ends, levels),
        plates=tuple(_plate(at, level) for at, level in zip(ends, levels, strict=True)),
        tables=(_table(stick),),
        picture=_picture(stick, ends, levels),
        warnings=_warnings(stick, rule),
        working=tuple(line for at in ends for line in _working(stick, at)),
        values=_values(stick, ends),
    )


def _stick(inputs: Inputs) -> Stick:
    """Gather the reading; raises `EntryError` for marks too wide for the unit."""
    total, between = inputs.quantity("dry-fill"), inputs.quantity("between-marks")
    if between >= total:
        wrong = f"{show(between)} between the marks is no less than the whole {show(total)}."
        raise EntryError("between-marks", wrong, "Look both up again on the family page.")
    return Stick(
        read=inputs.quantity("level"),
        temperature=inputs.quantity("temperature"),
        total=total,
        between_marks=between,
        density=inputs.quantity("density"),
    )


def _ends(inputs: Inputs, rule: Span | None) -> tuple[Quantity, ...]:
    """Give the temperatures asked for; raises `EntryError` where there is none."""
    other = inputs.maybe("other")
    if other is not None:
        return (other,)
    if rule is None:
        wrong = "Neither the level rule nor another temperature is known."
        raise EntryError("level-temperature", wrong, "Write 65 to 80 °C.")
    return rule.low, rule.high


def _within(stick: Stick, at: Quantity) -> Quantity:
    """Give the level; raises `EntryError` where it would be off the stick."""
    level = stick.level(at)
    if abs(level.magnitude) <= FARTHEST:
        return level
    wrong = f"At {show(at)} the level would be {_level(level)}, where a stick tells nothing."
    raise EntryError("level", wrong, "Read again nearer to the temperature of the rule.")


def _level(level: Quantity) -> str:
    """Write a level to a tenth of a mark, which is what a stick shows."""
    marks = level.m_as("mark_above_full")
    if abs(marks) < READABLE / 2:
        return "at the full mark"
    way = "above" if marks > 0 else "below"
    tenths = number_text(abs(marks), 1)
    return f"{tenths} {'mark' if tenths in {'1.0', '0.1'} else 'marks'} {way} full"


def _summary(ends: tuple[Quantity, ...], levels: tuple[Quantity, ...]) -> str:
    told = (f"{_level(level)} at {show(at)}" for at, level in zip(ends, levels, strict=True))
    return f"Expect the level {' and '.join(told)}."


def _plate(at: Quantity, level: Quantity) -> Plate:
    marks = level.m_as("mark_above_full")
    shown = level.to("mark_below_full" if marks <= 0 else "mark_above_full")
    other = "degree_Fahrenheit" if unit_name(at) == "degree_Celsius" else "degree_Celsius"
    note = f"Fluid at {show(at)}, which is {show(at, other, 0)}."
    return plate(f"At {show(at)}", shown, digits=1, note=note)


def _picture(stick: Stick, ends: tuple[Quantity, ...], levels: tuple[Quantity, ...]) -> str:
    """Draw the reading and what to expect."""
    now = Shown(stick.read.m_as("mark_above_full"), f"now, {show(stick.temperature)}", now=True)
    expected = (
        Shown(level.m_as("mark_above_full"), f"at {show(at)}")
        for at, level in zip(ends, levels, strict=True)
    )
    told = f"Now {_level(stick.read)} at {show(stick.temperature)}. {_summary(ends, levels)}"
    return draw((now, *expected), told)


def _table(stick: Stick) -> Table:
    """List the level up the ladder of temperatures."""
    unit = unit_name(stick.temperature)
    steps = (quantity(number, unit) for number in LADDER.get(unit, LADDER["degree_Celsius"]))
    rows = tuple((show(at), _on_stick(stick.level(at))) for at in steps)
    return Table(
        title="The same fill at other temperatures", heads=("Fluid at", "Level"), rows=rows
    )


def _on_stick(level: Quantity) -> str:
    return _level(level) if abs(level.magnitude) <= FARTHEST else "off the stick"


def _warnings(stick: Stick, rule: Span | None) -> tuple[str, ...]:
    """Warn of what will stand over the mark, and of a reading too low to trust."""
    told: list[str] = []
    if rule is not None and (over := stick.level(rule.high).magnitude) > READABLE:
        volume = stick.between_marks * over
        told.append(
            f"Do not add. At {show(rule.high)} it will stand over the mark, by about "
            f"{show(volume, digits=1)}: warm it up, read again, and take out what is over."
        )
    if stick.read.m_as("mark_below_full") > 1:
        told.append("The reading is below the low mark, where the volume of a mark is a guess.")
    return tuple(told)


def _working(stick: Stick, at: Quantity) -> tuple[Working, ...]:
    now, then = (
        number_text(correction_factor(t, stick.density), 5) for t in (stick.temperature, at)
    )
    risen = stick.risen(at)
    unit = unit_name(stick.total)
    return (
        Working(
            what=f"Change of volume from {show(stick.temperature)} to {show(at)}",
            formula="change = total · (1 / VCF there − 1 / VCF now)",
            numbers=f"{show(stick.total)} × (1 / {then} − 1 / {now})",
            result=show(risen, unit, 3),
        ),
        Working(
            what=f"Level at {show(at)}, above full",
            formula="level = reading + change / volume between the marks",
            numbers=f"{number_text(stick.read.m_as('mark_above_full'), 2)} + "
            f"{show(risen, unit, 3)} / {show(stick.between_marks)}",
            result=f"{number_text(stick.level(at).magnitude, 2)} marks",
        ),
    )


def _values(stick: Stick, ends: tuple[Quantity, ...]) -> dict[str, Exact | str]:
    values: dict[str, Exact | str] = {
        "vcf-now": Exact(correction_factor(stick.temperature, stick.density), "dimensionless")
    }
    for name, at in zip(("low", "high"), ends, strict=False):
        values[f"vcf-{name}"] = Exact(correction_factor(at, stick.density), "dimensionless")
        values[f"change-{name}"] = exact(stick.risen(at).to("litre"))
        values[f"level-{name}"] = exact(stick.level(at))
    return values


READING = "Reading"

CALCULATOR = Calculator(
    name="level-temperature",
    title="Level and temperature",
    purpose="Gives the dipstick reading to expect when the fluid is warmer or colder.",
    group="Fluid",
    folded=(FAMILY, CONVENTION),
    fields=(
        Field(
            name="level", label="Dipstick reading", group=READING, kind="level",
            units=("mark_below_full", "mark_above_full"), low="3 marks below full",
            help="In marks from the full mark: the low mark is 1 mark below full, half way is 0.5.",
            high="3 marks above full", example="1 mark below full",
        ),
        Field(
            name="temperature", label="Fluid temperature at the reading", group=READING,
            kind="temperature", units=TEMPERATURES, low="-20 °C", high="140 °C", example="20 °C",
            help="Measured in the filler tube or on the pan.",
        ),
        Field(
            name="other", label="Other temperature", group=READING, kind="temperature",
            required=False, units=TEMPERATURES, low="-20 °C", high="140 °C",
            help="Left empty, both ends of the level rule are answered.",
        ),
        Field(
            name="level-temperature", label="Temperature of the level rule", group=FAMILY,
            kind="temperature", span=True, required=False, units=TEMPERATURES, low="0 °C",
            high="120 °C", help="Between which fluid temperatures the marks hold.",
            example="65 to 80 °C", fills_from="fluid.level.temperature",
        ),
        Field(
            name="dry-fill", label="Dry fill", group=FAMILY, kind="volume", units=VOLUMES,
            help="All the fluid there is, as at 15 °C: all of it expands.", low="1 L",
            high="30 L", example="8.6 L", fills_from="fluid.dry_fill",
        ),
        BETWEEN_MARKS,
        DENSITY,
    ),
    sources=(
        "Expansion: API MPMS 11.1 / ASTM D1250-80, table 54D, lubricating oils, short form: "
        "K0 = 0, K1 = 0.6278 per °C, base 15 °C; constants at second hand.",
        "A stick shows a tenth of a mark at best: common practice, no source.",
    ),
    limits=(
        "Valid for densities of 800.9 to 1163.5 kg/m³ and fluid of −50 to 150 °C.",
        "All expansion is taken to show in the pan: converter and cooler stay full, and the pan "
        "does not grow. The volume between the marks is taken as even, and to go on so.",
        "The 2004 edition differs from this short form by less than 0.0001 between 0 and 120 °C, "
        "which no stick shows.",
        "A level worked out is no reading: the stick at the rule's temperature decides.",
    ),
    run=run,
)  # fmt: skip
