"""Refills in stages: a safe first fill, then the top-up by the dipstick, with a ledger kept."""

from underhoist_calculators.answer import Answer, Working
from underhoist_calculators.declare import Calculator, Choice, Field
from underhoist_calculators.fill_answers import (
    Drained,
    Filled,
    Stick,
    before_starting,
    by_the_stick,
)
from underhoist_calculators.filling import Sump, drained_share, level_at_rule, rule_temperature
from underhoist_calculators.fluid_choice import choose
from underhoist_calculators.fluid_expansion import correction_factor
from underhoist_calculators.fluid_fields import BETWEEN_MARKS, CONVENTION, DENSITY, FAMILY, VOLUMES
from underhoist_calculators.inputs import EntryError, Inputs
from underhoist_calculators.units import number_text, show


def run(inputs: Inputs) -> Answer:
    """Answer for the stage that the entries reach: before starting, or by the dipstick."""
    fluid = choose(inputs)
    sump = _sump(inputs)
    out = _drained(inputs, sump)
    if inputs.maybe("level") is None:
        return before_starting(sump, out, fluid, inputs.word("selector"))
    filled = Filled(
        fluid=fluid, added=inputs.maybe("added"), level_before=inputs.maybe("level-before")
    )
    return by_the_stick(sump, out, _stick(inputs, sump), filled)


def _sump(inputs: Inputs) -> Sump:
    """Gather what the family says; raises `EntryError` for a service fill above the dry fill."""
    service, dry = inputs.quantity("service-fill"), inputs.quantity("dry-fill")
    if service > dry:
        wrong = f"A service fill of {show(service)} is more than the dry fill of {show(dry)}."
        raise EntryError("service-fill", wrong, "Look both up again on the family page.")
    rule = inputs.span("level-temperature")
    if rule is None:
        raise EntryError("level-temperature", "Nothing is written.", "Write 65 to 80 °C.")
    return Sump(
        service_fill=service,
        dry_fill=dry,
        between_marks=inputs.quantity("between-marks"),
        rule=rule,
        density=inputs.quantity("density"),
    )


def _drained(inputs: Inputs, sump: Sump) -> Drained:
    """Take what was measured, or estimate it from how the unit was drained."""
    measured = inputs.maybe("drained")
    if measured is None:
        return _estimated(inputs, sump)
    temperature = inputs.maybe("drained-temperature")
    factor = 1.0 if temperature is None else correction_factor(temperature, sump.density)
    volume = measured * factor
    # A twentieth covers measuring hot fluid in a bucket.
    if volume > sump.dry_fill * 1.05:
        wrong = f"{show(measured)} is more than the whole unit holds, {show(sump.dry_fill)}."
        raise EntryError("drained", wrong, "Measure again, or look the dry fill up again.")
    warm = "" if temperature is None else f" at {show(temperature)}, VCF {number_text(factor, 4)}"
    how = Working(
        what="Came out, as at 15 °C",
        formula="out = drained × VCF" if warm else "out = drained",
        numbers=f"{show(measured)}{warm}",
        result=show(volume, digits=2),
    )
    return Drained(volume=volume, measured=True, how=how)


def _estimated(inputs: Inputs, sump: Sump) -> Drained:
    """Estimate what came out; raises `EntryError` where nothing is known of the drain."""
    method = inputs.word("drained-by")
    if method is None:
        wrong = "Neither the drained volume nor how it was drained is known."
        raise EntryError("drained", wrong, "Write what came out, or choose how it was drained.")
    share = drained_share(method, sump)
    volume = sump.dry_fill * share
    how = Working(
        what="Came out, estimated",
        formula="out = dry fill × share that leaves by this way of draining",
        numbers=f"{show(sump.dry_fill)} × {number_text(share, 2)}",
        result=show(volume, digits=2),
    )
    return Drained(volume=volume, measured=False, how=how)


def _stick(inputs: Inputs, sump: Sump) -> Stick:
    """Correct the reading to the level rule; raises `EntryError` without a fluid temperature."""
    temperature = inputs.maybe("fluid-temperature")
    if temperature is None:
        wrong = "A reading without the fluid's temperature cannot be judged."
        raise EntryError("fluid-temperature", wrong, "Measure it and write it, e.g. 40 °C.")
    read = inputs.quantity("level")
    return Stick(
        read=read,
        temperature=temperature,
        at=rule_temperature(temperature, sump.rule),
        level=level_at_rule(read, temperature, sump),
    )


DRAIN = "What came out"
FILL = "What goes in"
READING = "After starting"

CALCULATOR = Calculator(
    name="staged-fill",
    title="Staged fill",
    purpose="Gives the first fill before starting, the top-up by the dipstick, and the ledger.",
    group="Fluid",
    folded=(FAMILY, CONVENTION),
    fields=(
        Field(
            name="drained", label="Drained volume", group=DRAIN, kind="volume", required=False,
            help="Measure it in a marked bucket. Leave it empty if nobody did.",
            units=VOLUMES, low="0.1 L", high="30 L", example="4.3 L",
        ),
        Field(
            name="drained-temperature", label="Its temperature when measured", group=DRAIN,
            kind="temperature", required=False, units=("degree_Celsius", "degree_Fahrenheit"),
            help="Hot fluid measures more. Left empty, the volume is taken as it was measured.",
            low="-20 °C", high="120 °C",
        ),
        Field(
            name="drained-by", label="How it was drained", group=DRAIN, kind="choice",
            required=False, help="Needed only where the volume was not measured.",
            choices=(
                Choice("pan", "Pan taken down"),
                Choice("plug", "Drain plug only"),
                Choice("converter", "Pan and converter drained"),
                Choice("empty", "Unit and converter empty"),
            ),
        ),
        Field(
            name="level-before", label="Level as found", group=DRAIN, kind="level",
            required=False, units=("mark_below_full", "mark_above_full"),
            help="The reading before draining, hot, in marks from the full mark.",
            low="3 marks below full", high="3 marks above full",
        ),
        Field(
            name="fluid", label="Fluid to be put in", group=FILL, kind="text", required=False,
            help="The specification as its container says it, not its colour.",
            example="Dunmere D2",
        ),
        Field(
            name="level", label="Dipstick reading", group=READING, kind="level", required=False,
            units=("mark_below_full", "mark_above_full"),
            help="In marks from the full mark: the low mark is 1 mark below full, half way is 0.5.",
            low="3 marks below full", high="3 marks above full",
        ),
        Field(
            name="fluid-temperature", label="Fluid temperature at the reading", group=READING,
            kind="temperature", required=False, units=("degree_Celsius", "degree_Fahrenheit"),
            help="Measured in the filler tube or on the pan.", low="-20 °C", high="140 °C",
        ),
        Field(
            name="added", label="Put in so far", group=READING, kind="volume", required=False,
            help="Everything since draining. It closes the ledger.", units=VOLUMES,
            low="0 L", high="30 L",
        ),
        Field(
            name="specification", label="Fluid it was built for", group=FAMILY, kind="text",
            required=False, help="The specification that the family page states.",
            example="Dunmere D2", fills_from="fluid.specification",
        ),
        Field(
            name="accepts", label="Superseded by", group=FAMILY, kind="text", required=False,
            help="Fluids that supersede it by the family page, with commas between.",
            example="Dunmere D3", fills_from="fluid.accepts",
        ),
        Field(
            name="service-fill", label="Service fill", group=FAMILY, kind="volume",
            help="What a normal service takes.", units=VOLUMES, low="0.5 L", high="20 L",
            example="4.2 L", fills_from="fluid.service_fill",
        ),
        Field(
            name="dry-fill", label="Dry fill", group=FAMILY, kind="volume",
            help="What the empty unit with its converter takes.", units=VOLUMES, low="1 L",
            high="30 L", example="8.6 L", fills_from="fluid.dry_fill",
        ),
        BETWEEN_MARKS,
        Field(
            name="level-temperature", label="Temperature of the level rule", group=FAMILY,
            kind="temperature", span=True, units=("degree_Celsius", "degree_Fahrenheit"),
            help="Between which fluid temperatures the marks hold, e.g. 65 to 80 °C.",
            low="0 °C", high="120 °C", example="65 to 80 °C",
            fills_from="fluid.level.temperature",
        ),
        Field(
            name="selector", label="Selector while reading", group=FAMILY, kind="choice",
            required=False, help="Where the lever stands while the dipstick is read.",
            choices=(Choice("park", "Park"), Choice("neutral", "Neutral")),
            example="park", fills_from="fluid.level.selector",
        ),
        DENSITY,
    ),
    sources=(
        "Expansion: API MPMS 11.1 / ASTM D1250-80, table 54D, lubricating oils, short form: "
        "K0 = 0, K1 = 0.6278 per °C, base 15 °C.",
        "First fill, shares by way of draining, half-mark steps and the 0.3 L gap: common "
        "practice, no source.",
    ),
    limits=(
        "Valid for densities of 800.9 to 1163.5 kg/m³ and for one fluid throughout.",
        "Fluids are compared by name: only the family page says which supersedes which.",
        "All expansion is taken to show in the pan; the volume between the marks is taken as "
        "even, and to go on so one mark above and below.",
        "Pours are rounded down to 0.05 of the unit, which is what a jug shows.",
        "The dipstick at the rule's temperature decides, not this sheet.",
    ),
    run=run,
)  # fmt: skip
