"""The setting of a torque wrench that pulls through an offset adapter, and what it applied."""

from math import floor

from attrs import frozen

from underhoist_calculators.adapter import Arm
from underhoist_calculators.adapter_plot import draw
from underhoist_calculators.answer import Answer, Exact, Plate, Working, exact, plate
from underhoist_calculators.calculators.torque_units import SCALES
from underhoist_calculators.declare import Calculator, Field
from underhoist_calculators.inputs import EntryError, Inputs
from underhoist_calculators.units import Quantity, Span, number_text, quantity, show, unit_name

LENGTHS = ("millimetre", "centimetre", "inch")


CLOSE = 0.05
"""Share off that a wrench in order can make too."""


@frozen(kw_only=True)
class Setting:
    """The exact setting, and what can be set on the scale."""

    exactly: Quantity
    shown: Quantity
    stepped: bool


def run(inputs: Inputs) -> Answer:
    """Answer with the setting; also with what was applied where the wrench was pulled already."""
    torque, arm = inputs.quantity("torque"), _arm(inputs)
    scale = inputs.span("range")
    setting = _setting(inputs, arm, scale)
    outside = _outside(setting.exactly, scale)
    done = inputs.maybe("set-to")
    plates = (_plate(torque, arm, setting), *_applied(torque, arm, done))
    return Answer(
        summary=f"Set {_rounded(setting)} for {show(torque)} at the fastener.",
        plates=plates,
        picture=draw(arm),
        do=_do(setting),
        warnings=(*_range_warning(outside, setting, scale), *_done_warning(torque, arm, done)),
        working=_working(torque, arm, setting),
        values=_values(arm, setting, outside, done),
    )


def _arm(inputs: Inputs) -> Arm:
    """Gather the lengths; raises `EntryError` where they make no arm."""
    try:
        return Arm(
            wrench=inputs.quantity("wrench"),
            adapter=inputs.quantity("adapter"),
            angle=inputs.quantity("angle"),
        )
    except ValueError as error:
        mend = "Take a shorter adapter or a longer wrench, or turn the adapter to 90°."
        raise EntryError("adapter", str(error), mend) from error


def _setting(inputs: Inputs, arm: Arm, scale: Span | None) -> Setting:
    """Work out the setting in the unit that the wrench reads, rounded to its finest step."""
    torque, step = inputs.quantity("torque"), inputs.maybe("step")
    unit = unit_name(scale.high if scale else step or torque)
    exactly = arm.setting(torque).to(unit)
    if step is None:
        return Setting(exactly=exactly, shown=exactly, stepped=False)
    fine = step.m_as(unit)
    # Half a step rounds up; the small addition stands for the last binary digit.
    shown = quantity(floor(exactly.magnitude / fine + 0.5 + 1e-9) * fine, unit)
    if shown.magnitude <= 0:
        wrong = f"Steps of {show(step)} are too coarse for {show(exactly, unit, 2)}."
        raise EntryError("step", wrong, "Take a wrench with a finer scale.")
    return Setting(exactly=exactly, shown=shown, stepped=True)


def _rounded(setting: Setting) -> str:
    figures = 6 if setting.stepped else 3
    return f"{number_text(setting.shown.magnitude, figures=figures)} {_symbol(setting.shown)}"


def _symbol(torque: Quantity) -> str:
    return show(quantity(1, unit_name(torque))).removeprefix("1 ")


def _plate(torque: Quantity, arm: Arm, setting: Setting) -> Plate:
    others = tuple(unit for unit in SCALES[:3] if unit != unit_name(setting.shown))
    gets = arm.applied(setting.shown).to(unit_name(torque))
    note = f"The fastener gets {number_text(gets.magnitude, figures=3)} {_symbol(torque)}."
    return Plate(
        name="Set the wrench to",
        number=number_text(setting.shown.magnitude, figures=6 if setting.stepped else 3),
        unit=plate("", setting.shown).unit,
        others=tuple(show(setting.shown, unit) for unit in others),
        note=note,
        exact=exact(setting.exactly),
        exact_others=tuple(exact(setting.exactly.to(unit)) for unit in others),
    )


def _applied(torque: Quantity, arm: Arm, done: Quantity | None) -> tuple[Plate, ...]:
    if done is None:
        return ()
    gets = arm.applied(done).to(unit_name(torque))
    share = gets.m_as("newton_metre") / torque.m_as("newton_metre")
    note = f"{_percent(share)} of what is wanted."
    return (plate("Was applied", gets, digits=_digits(gets), note=note),)


def _digits(torque: Quantity) -> int:
    return 0 if torque.magnitude >= 100 else 1 if torque.magnitude >= 10 else 2


def _percent(share: float) -> str:
    return f"{number_text(share * 100, 0)} %"


def _outside(setting: Quantity, scale: Span | None) -> str:
    """Say where the setting lies against the wrench's range, or that this is not known."""
    if scale is None:
        return "range not known"
    if setting < scale.low:
        return "below wrench range"
    return "above wrench range" if setting > scale.high else "within wrench range"


def _do(setting: Setting) -> tuple[str, ...]:
    return (
        "Mark the middle of the grip and pull there only: the formula counts on it.",
        f"Set {_rounded(setting)} and pull slowly, at right angles to the wrench.",
        "Set the wrench back afterwards and take the adapter off it.",
    )


def _range_warning(outside: str, setting: Setting, scale: Span | None) -> tuple[str, ...]:
    if scale is None or outside not in {"below wrench range", "above wrench range"}:
        return ()
    which = "below" if outside.startswith("below") else "above"
    return (
        f"{_rounded(setting)} is {which} this wrench's range of {show(scale.low)} to "
        f"{show(scale.high)}. Take another wrench, or set the adapter square to it (90°), "
        "where nothing has to be corrected.",
    )


def _done_warning(torque: Quantity, arm: Arm, done: Quantity | None) -> tuple[str, ...]:
    if done is None:
        return ()
    share = arm.applied(done).m_as("newton_metre") / torque.m_as("newton_metre")
    if abs(share - 1) <= CLOSE + 1e-9:  # so that a twentieth itself is still in
        return ()
    way = "more" if share > 1 else "less"
    return (
        f"At {show(done)} the fastener got {_percent(share)} of {show(torque)}, {way} than is "
        "wanted. Loosen it and tighten it again; look at the thread where it was too much.",
    )


def _working(torque: Quantity, arm: Arm, setting: Setting) -> tuple[Working, ...]:
    unit = unit_name(torque)
    return (
        Working(
            what="Setting",
            formula="S = T·L / (L + E·cos θ)",
            numbers=arm.in_numbers(torque),
            result=f"{number_text(setting.exactly.m_as(unit), figures=6)} {_symbol(torque)}",
        ),
    )


def _values(
    arm: Arm, setting: Setting, outside: str, done: Quantity | None
) -> dict[str, Exact | str]:
    values: dict[str, Exact | str] = {
        "setting": exact(setting.exactly),
        "set": exact(setting.shown),
        "range": outside,
    }
    return {**values, "applied": exact(arm.applied(done))} if done else values


TORQUE, LEVER, WRENCH = "Torque", "Wrench and adapter", "The wrench's scale"

CALCULATOR = Calculator(
    name="adapter-setting",
    title="Adapter setting",
    purpose="Gives the wrench setting when an offset adapter changes the length of the arm.",
    group="Torque",
    folded=(WRENCH,),
    fields=(
        Field(
            name="torque", label="Torque at the fastener", group=TORQUE, kind="torque",
            help="What the procedure states for the fastener.", units=SCALES,
            low="0.01 N·m", high="5000 N·m", example="19 lbf·ft", fills_from="torque",
        ),
        Field(
            name="wrench", label="Wrench length", group=LEVER, kind="length", units=LENGTHS,
            help="From the middle of the square drive to the middle of the grip.",
            low="50 mm", high="2000 mm", example="22 in",
        ),
        Field(
            name="adapter", label="Adapter length", group=LEVER, kind="length", units=LENGTHS,
            help="From the middle of the square drive to the middle of the fastener.",
            low="0 mm", high="2000 mm", example="3 in",
        ),
        Field(
            name="angle", label="Angle of the adapter", group=LEVER, kind="angle",
            units=("degree",), help="0° straight on, 90° square to the wrench, 180° pointing back "
            "along the handle.", low="0°", high="180°", default="0°",
        ),
        Field(
            name="range", label="Range of the wrench", group=WRENCH, kind="torque", span=True,
            required=False, units=SCALES, help="From the lowest to the highest marked value.",
            low="0.01 N·m", high="5000 N·m",
        ),
        Field(
            name="step", label="Finest step of the scale", group=WRENCH, kind="torque",
            required=False, units=SCALES, help="The setting is rounded to it, e.g. 1 lbf·ft.",
            low="0.01 N·m", high="100 N·m",
        ),
        Field(
            name="set-to", label="Was set to", group=WRENCH, kind="torque", required=False,
            units=SCALES, help="Where it was pulled already: shows what the fastener got.",
            low="0.01 N·m", high="5000 N·m",
        ),
    ),
    sources=(
        "S = T·L / (L + E): US Navy NAVEDTRA 14315, figures 3-44 and 3-45.",
        "With the adapter at an angle, E·cos θ: US Army TM 9-254, figures 45 and 46.",
    ),
    limits=(
        "It holds for a hand at the middle of the grip. Handles with a pivot make sure of this.",
        "Refused: an adapter longer than its wrench, and an arm of no length.",
        "A shop rule leaves adapters of 1 in (25 mm) uncorrected. On 18 in that is 5.3 %, more "
        "than a wrench may be off, so they are corrected here.",
        "Without a step the setting is shown to three figures. The exact one stands behind it.",
    ),
    run=run,
)  # fmt: skip
