"""One torque in every unit that a wrench reads, and what the same number means on a wrong scale."""

from underhoist_calculators.answer import Answer, Table, Working, exact, plate
from underhoist_calculators.declare import Calculator, Field
from underhoist_calculators.inputs import Inputs
from underhoist_calculators.units import (
    Quantity,
    number_text,
    quantity,
    show,
    unit_name,
    unit_symbol,
    unit_words,
)

SCALES = (
    "newton_metre",
    "pound_force_foot",
    "pound_force_inch",
    "kilogram_force_metre",
    "kilogram_force_centimetre",
)
"""The scales that torque wrenches carry."""

NEIGHBOURS = {
    "newton_metre": ("pound_force_foot",),
    "pound_force_foot": ("pound_force_inch", "newton_metre"),
    "pound_force_inch": ("pound_force_foot",),
    "kilogram_force_metre": ("newton_metre", "kilogram_force_centimetre"),
    "kilogram_force_centimetre": ("kilogram_force_metre", "newton_metre"),
}
"""The scales that one is mistaken for: on the same wrench or in the same column of a table."""

SMALL = quantity(40, "newton_metre")
"""Below this a slip to a neighbouring scale breaks small fasteners: common practice, no source."""


def in_every_unit(torque: Quantity) -> dict[str, Quantity]:
    """Give the torque in each of SCALES, by the unit's registry name."""
    return {unit: torque.to(unit) for unit in SCALES}


def misread(torque: Quantity) -> dict[str, Quantity]:
    """Give the torque that the same number makes on each other scale, by that scale's name."""
    number = torque.magnitude
    return {unit: quantity(number, unit) for unit in SCALES if unit != unit_name(torque)}


def times(wrong: Quantity, right: Quantity) -> float:
    """Give how many times the wrong torque is of the right one."""
    return wrong.m_as("newton_metre") / right.m_as("newton_metre")


def _how_much(share: float) -> str:
    """Say a share as the shop would: "12 times", "74 % of"."""
    if share >= 1:
        return f"{number_text(share, figures=3)} times"
    return f"{number_text(share * 100, figures=2)} % of"


def _warnings(torque: Quantity) -> tuple[str, ...]:
    """Warn of the scales that this one is mistaken for, where the torque is small."""
    unit = unit_name(torque)
    if torque >= SMALL or unit not in NEIGHBOURS:
        return ()
    number = number_text(torque.magnitude)
    told: list[str] = []
    for wrong_unit in NEIGHBOURS[unit]:
        wrong = quantity(torque.magnitude, wrong_unit)
        told.append(
            f"Set on the {unit_symbol(wrong_unit)} scale, {number} gives {show(wrong, unit)}, "
            f"{_how_much(times(wrong, torque))} what is wanted."
        )
    return (
        f"Read the scale before pulling: {number} means {unit_words(unit)} here. {' '.join(told)}",
    )


def _misreadings(torque: Quantity) -> Table:
    number = number_text(torque.magnitude)
    rows = tuple(
        (
            f"{number} {unit_symbol(unit)}",
            show(wrong, "newton_metre"),
            f"{_how_much(times(wrong, torque))} what is wanted",
        )
        for unit, wrong in misread(torque).items()
    )
    return Table(
        title="The same number on another scale",
        heads=("Wrench set to", "Gives", "Compared"),
        rows=rows,
    )


def _working(torque: Quantity) -> tuple[Working, ...]:
    """Show the conversion to newton metres and from there to each other scale."""
    unit = unit_name(torque)
    newton_metres = torque.to("newton_metre")
    lines: list[Working] = []
    if unit != "newton_metre":
        factor = quantity(1, unit).m_as("newton_metre")
        lines.append(_line(torque, newton_metres, factor))
    for other in SCALES:
        if other not in {unit, "newton_metre"}:
            factor = quantity(1, "newton_metre").m_as(other)
            lines.append(_line(newton_metres, newton_metres.to(other), factor))
    return tuple(lines)


def _line(start: Quantity, end: Quantity, factor: float) -> Working:
    old, new = unit_symbol(unit_name(start)), unit_symbol(unit_name(end))
    return Working(
        what=f"{old} to {new}",
        formula=f"1 {old} = {number_text(factor, figures=9)} {new}",
        numbers=f"{number_text(start.magnitude, figures=9)} × {number_text(factor, figures=9)}",
        result=f"{number_text(end.magnitude, figures=7)} {new}",
    )


def run(inputs: Inputs) -> Answer:
    """Answer for one torque."""
    torque = inputs.quantity("torque")
    every = in_every_unit(torque)
    others = tuple(unit for unit in SCALES if unit != unit_name(torque))
    return Answer(
        summary=f"{show(torque)} is {', '.join(show(torque, unit) for unit in others)}.",
        plates=(plate("Torque", torque, others=others),),
        tables=(_misreadings(torque),) if torque < SMALL else (),
        warnings=_warnings(torque),
        working=_working(torque),
        values={unit: exact(value) for unit, value in every.items()},
    )


CALCULATOR = Calculator(
    name="torque-units",
    title="Torque units",
    purpose="Gives one torque in every unit that a wrench reads, and warns of the wrong scale.",
    group="Torque",
    fields=(
        Field(
            name="torque",
            label="Torque",
            help="The number and the unit from the procedure. Workshop spellings such as ft-lb and "
            "in-lb are understood; lb alone is not a torque.",
            kind="torque",
            group="Torque",
            units=SCALES,
            low="0.01 N·m",
            high="5000 N·m",
            example="120 lbf·in",
            fills_from="torque",
        ),
    ),
    sources=(
        "Pound and inch: international yard and pound agreement, 1959, exact.",
        "Standard gravity 9.80665 m/s²: 3rd CGPM, 1901, exact.",
        "Factors as printed to seven figures in NIST Special Publication 811 (2008), appendix B.8.",
    ),
    limits=(
        "Shown to three figures, finer than a wrench can be set. The working keeps seven.",
        "It converts what was stated. It does not judge whether the torque suits the fastener.",
    ),
    run=run,
)
