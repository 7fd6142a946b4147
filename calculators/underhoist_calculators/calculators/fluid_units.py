"""One volume in litres, US and imperial measure, and what the wrong country's measure costs."""

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
)

METRIC = ("litre", "millilitre")
US = ("US_quart", "US_gallon", "US_pint", "US_fluid_ounce")
IMPERIAL = ("imperial_quart", "imperial_gallon", "imperial_pint", "imperial_fluid_ounce")
VOLUMES = (*METRIC, *US, *IMPERIAL)

NAMESAKES = {**dict(zip(US, IMPERIAL, strict=True)), **dict(zip(IMPERIAL, US, strict=True))}
"""The measure of the other country that carries the same name."""


def in_every_unit(volume: Quantity) -> dict[str, Quantity]:
    """Give the volume in each of VOLUMES, by the unit's registry name."""
    return {unit: volume.to(unit) for unit in VOLUMES}


def namesake(volume: Quantity) -> Quantity | None:
    """Give the same number in the other country's measure; None for litres."""
    other = NAMESAKES.get(unit_name(volume))
    return quantity(volume.magnitude, other) if other else None


def run(inputs: Inputs) -> Answer:
    """Answer for one volume."""
    volume = inputs.quantity("volume")
    others = tuple(
        unit for unit in ("litre", "US_quart", "imperial_quart") if unit != unit_name(volume)
    )
    return Answer(
        summary=f"{show(volume)} is {', '.join(show(volume, unit) for unit in others)}.",
        plates=(plate("Volume", volume, others=others),),
        tables=(_table(volume),),
        warnings=_warnings(volume),
        working=_working(volume),
        values={unit: exact(value) for unit, value in in_every_unit(volume).items()},
    )


def _table(volume: Quantity) -> Table:
    rows = tuple(
        (_bare(us).capitalize(), show(volume, us), show(volume, imperial))
        for us, imperial in zip(US, IMPERIAL, strict=True)
    )
    return Table(title="In every measure", heads=("Measure", "US", "Imperial"), rows=rows)


def _bare(unit: str) -> str:
    """Give the unit's name in the singular, without its country."""
    return unit.removeprefix("US_").replace("_", " ")


def _warnings(volume: Quantity) -> tuple[str, ...]:
    """Warn of the other country's measure of the same name."""
    wrong = namesake(volume)
    if wrong is None:
        return ()
    share = (wrong / volume).m_as("dimensionless") - 1
    way = "more" if share > 0 else "less"
    percent = number_text(abs(share) * 100, 0)
    return (
        f"Look whose measure the jug carries: {show(wrong)} would be {show(wrong, 'litre', 2)}, "
        f"{percent} % {way} than {show(volume)}.",
    )


def _working(volume: Quantity) -> tuple[Working, ...]:
    """Show the conversion to litres and from there to both quarts."""
    lines: list[Working] = []
    litres = volume.to("litre")
    if unit_name(volume) != "litre":
        lines.append(_line(volume, litres))
    for other in ("US_quart", "imperial_quart"):
        if other != unit_name(volume):
            lines.append(_line(litres, volume.to(other)))
    return tuple(lines)


def _line(start: Quantity, end: Quantity) -> Working:
    """Show one conversion through the litres of one unit, which are exact."""
    old, new = unit_name(start), unit_name(end)
    whole = old if new == "litre" else new
    factor = number_text(quantity(1, whole).m_as("litre"), figures=9)
    number = number_text(start.magnitude, figures=9)
    return Working(
        what=f"{unit_symbol(old)} to {unit_symbol(new)}",
        formula=f"1 {unit_symbol(whole)} = {factor} L",
        numbers=f"{number} {'×' if new == 'litre' else '/'} {factor}",
        result=f"{number_text(end.magnitude, figures=7)} {unit_symbol(new)}",
    )


CALCULATOR = Calculator(
    name="fluid-units",
    title="Fluid units",
    purpose="Gives one volume in litres, US and imperial measure, and keeps the two apart.",
    group="Fluid",
    fields=(
        Field(
            name="volume",
            label="Volume",
            help="A quart, pint, gallon or fluid ounce must say US or imperial. Dry quarts "
            "measure grain and are refused.",
            kind="volume",
            group="Volume",
            units=VOLUMES,
            low="1 mL",
            high="1000 L",
            example="9.5 US qt",
            fills_from="fluid.service_fill",
        ),
    ),
    sources=(
        "US gallon: 231 cubic inches, exact (NIST Handbook 44, appendix C). Quart, pint and fluid "
        "ounce: 1/4, 1/8 and 1/128 of it.",
        "Imperial gallon: 4.54609 L, exact (Weights and Measures Act 1985). Quart, pint and fluid "
        "ounce: 1/4, 1/8 and 1/160 of it.",
    ),
    limits=(
        "Converted values are shown to three figures, finer than a jug can be read. The working "
        "keeps seven.",
        "Volumes as measured: a change of temperature is another calculator's work.",
    ),
    run=run,
)
