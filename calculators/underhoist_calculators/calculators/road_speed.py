"""Engine speed, road speed and converter slip: two of them give the third."""

from attrs import frozen

from underhoist_calculators.answer import Answer, Plate, Working, exact, plate
from underhoist_calculators.declare import Calculator, Field
from underhoist_calculators.driveline import Driveline, engine_of, slip_of, turbine_of
from underhoist_calculators.inputs import EntryError, Inputs
from underhoist_calculators.rolling import CHOICES, SOURCES, Rolling, roll_fitted
from underhoist_calculators.units import Quantity, number_text, show

NAMES = {"engine": "engine speed", "road": "road speed", "slip": "converter slip"}


@frozen(kw_only=True)
class Run:
    """A vehicle under way: all three are known, and the turbine between them."""

    driveline: Driveline
    engine: Quantity
    road: Quantity
    slip: Quantity
    turbine: Quantity


def run(inputs: Inputs) -> Answer:
    """Answer for one vehicle."""
    sought = _sought(inputs)
    rolling = roll_fitted(inputs)
    driveline = Driveline(
        inputs.quantity("gear").m_as("dimensionless"),
        inputs.quantity("axle").m_as("dimensionless"),
        rolling.circumference,
    )
    found = _solve(inputs, driveline, sought)
    return Answer(
        summary=_summary(found, sought),
        plates=_plates(found, sought, rolling),
        warnings=_warnings(found, sought, rolling),
        working=_working(found, sought, rolling),
        values={
            **{name: exact(getattr(found, name)) for name in (*NAMES, "turbine")},
            "circumference": exact(rolling.circumference),
            "tyre_turns": exact(rolling.turns),
        },
    )


def _sought(inputs: Inputs) -> str:
    """Name the one of the three that is left empty; raises `EntryError` unless it is one."""
    empty = [name for name in NAMES if inputs.maybe(name) is None]
    if len(empty) == 1:
        return empty[0]
    mend = "Write two of engine speed, road speed and converter slip. The third is worked out."
    if empty:
        wrong = f"Two are needed to work out the third; {NAMES[empty[0]]} is empty as well."
        raise EntryError(empty[-1], wrong, mend)
    raise EntryError("slip", "All three are written, so there is nothing to work out.", mend)


def _solve(inputs: Inputs, driveline: Driveline, sought: str) -> Run:
    """Work out the third; raises `EntryError` where there is none."""
    if sought == "road":
        engine, slip = inputs.quantity("engine"), inputs.quantity("slip")
        turbine = turbine_of(engine, slip)
        road = driveline.road(turbine)
    elif sought == "engine":
        road, slip = inputs.quantity("road"), inputs.quantity("slip")
        turbine = driveline.turbine(road)
        engine = _engine(turbine, slip)
    else:
        engine, road = inputs.quantity("engine"), inputs.quantity("road")
        turbine = driveline.turbine(road)
        slip = _slip(engine, turbine)
    return Run(driveline=driveline, engine=engine, road=road, slip=slip, turbine=turbine)


def _engine(turbine: Quantity, slip: Quantity) -> Quantity:
    try:
        return engine_of(turbine, slip)
    except ValueError:
        wrong = "At full slip the vehicle stands, whatever the engine does."
        raise EntryError("slip", wrong, "Write less than 100 %.") from None


def _slip(engine: Quantity, turbine: Quantity) -> Quantity:
    try:
        return slip_of(engine, turbine)
    except ValueError:
        wrong = "With the engine stopped there is no slip: the impeller must turn."
        raise EntryError("engine", wrong, "Write an engine speed above zero.") from None


def _slip_words(found: Run) -> str:
    return f"{number_text(found.slip.m_as('percent'), 1)} %"


def _summary(found: Run, sought: str) -> str:
    engine, road = show(found.engine, digits=0), show(found.road, digits=1)
    if sought == "engine":
        return f"At {show(found.road)} the engine turns at {engine}."
    if sought == "road":
        return f"At {show(found.engine)} the vehicle does {road}."
    return f"The converter slips {_slip_words(found)}."


def _plates(found: Run, sought: str, rolling: Rolling) -> tuple[Plate, ...]:
    answers = {
        "engine": plate("Engine", found.engine, digits=0),
        "road": plate("Road", found.road, digits=1, others=("mile_per_hour",)),
        "slip": plate("Converter slip", found.slip, digits=1),
    }
    circle = plate(
        "One turn of the wheel", rolling.circumference, digits=3, others=("inch",),
        note=f"{rolling.how}. {show(rolling.turns, digits=0)}, "
        f"{show(rolling.turns.to('turn_per_mile'), digits=0)}.",
    )  # fmt: skip
    return answers[sought], plate("Turbine", found.turbine, digits=0), circle


def _warnings(found: Run, sought: str, rolling: Rolling) -> tuple[str, ...]:
    """Say how well the answer can be known, and what a strange slip means."""
    told: list[str] = []
    share = number_text(100 * rolling.uncertainty, figures=2)
    if sought == "slip":
        turbine = found.turbine.m_as("revolution_per_minute")
        points = 100 * rolling.uncertainty * turbine / found.engine.m_as("revolution_per_minute")
        told.append(
            f"The tyre is known to about {share} %, which alone moves the slip by "
            f"{number_text(points, 1)} points. Roll one turn and measure it for a surer figure."
        )
    slip = found.slip.m_as("percent")
    if slip < 0:
        told.append(
            "Below zero slip the wheels drive the engine: coasting, or a gear, axle or tyre that "
            "is not the one written."
        )
    return tuple(told)


def _working(found: Run, sought: str, rolling: Rolling) -> tuple[Working, ...]:
    line = found.driveline
    gear, axle = number_text(line.gear, figures=4), number_text(line.axle, figures=4)
    circle = f"{number_text(rolling.circumference.m_as('metre'), 4)} m"
    engine, road, turbine = (
        f"{number_text(value.m_as(unit), 1)} {symbol}"
        for value, unit, symbol in (
            (found.engine, "revolution_per_minute", "r/min"),
            (found.road, "kilometre_per_hour", "km/h"),
            (found.turbine, "revolution_per_minute", "r/min"),
        )
    )
    slip = number_text(found.slip.m_as("dimensionless"), 4)
    rolled = Working(what="One turn of the wheel", formula="C", numbers=rolling.how, result=circle)
    to_turbine = Working(
        what="Turbine from road speed", formula="n_t = v · gear · axle / C",
        numbers=f"{road} × 1000 / 60 × {gear} × {axle} / {circle}", result=turbine,
    )  # fmt: skip
    last = {
        "road": (
            Working(what="Turbine", formula="n_t = n · (1 − s)", numbers=f"{engine} × (1 − {slip})",
                    result=turbine),
            Working(what="Road speed", formula="v = n_t · C / (gear · axle)",
                    numbers=f"{turbine} × 60 / 1000 × {circle} / ({gear} × {axle})", result=road),
        ),
        "engine": (
            to_turbine,
            Working(what="Engine", formula="n = n_t / (1 − s)", numbers=f"{turbine} / (1 − {slip})",
                    result=engine),
        ),
        "slip": (
            to_turbine,
            Working(what="Slip", formula="s = 1 − n_t / n", numbers=f"1 − {turbine} / {engine}",
                    result=_slip_words(found)),
        ),
    }  # fmt: skip
    return (rolled, *last[sought])


TWO, VEHICLE, CONVENTION = "Two of these three", "Vehicle", "Convention"
SPEEDS = ("kilometre_per_hour", "mile_per_hour")

CALCULATOR = Calculator(
    name="road-speed",
    title="Road speed",
    purpose="Gives road speed from engine speed, the other way round, or the converter's slip from "
    "both.",
    group="Shift",
    fields=(
        Field(
            name="engine", label="Engine speed", group=TWO, kind="rotation_speed", required=False,
            units=("revolution_per_minute",), low="0 rpm", high="9000 rpm", example="2500 rpm",
            help="Leave it empty to have it worked out.",
        ),
        Field(
            name="road", label="Road speed", group=TWO, kind="speed", required=False, units=SPEEDS,
            low="0 km/h", high="300 km/h",
            help="True road speed. Leave it empty to have it worked out.",
        ),
        Field(
            name="slip", label="Converter slip", group=TWO, kind="ratio", required=False,
            units=("percent",), low="-50 %", high="100 %", example="3 %",
            help="0 % where it is locked or a clutch, about 3 % cruising. Leave it empty to have "
            "it worked out.",
        ),
        Field(
            name="gear", label="Gear ratio", group=VEHICLE, kind="ratio", low="0.4", high="8",
            example="1.425", help="Of the gear that is in; 1 in direct.",
        ),
        Field(
            name="axle", label="Axle ratio", group=VEHICLE, kind="ratio", low="1.5", high="8",
            example="3.50", fills_from="reference.axle",
            help="Turns of the shaft for one turn of the wheel.",
        ),
        Field(
            name="tyre", label="Tyre", group=VEHICLE, kind="tyre", example="215/75 R 15",
            fills_from="reference.tyre",
            help="Size on the tyre wall, or the circumference rolled in one turn, e.g. 2.05 m.",
        ),
        Field(
            name="convention", label="Rolling circumference", group=CONVENTION, kind="choice",
            choices=CHOICES, default="radial",
            help="What one turn covers where only the size is known. Rolling one turn is best.",
        ),
    ),
    sources=(
        "v = n · (1 − s) · C / (gear · axle); exact by definition.",
        "Slip = 1 − turbine speed / impeller speed; exact by definition.",
        *SOURCES,
    ),
    limits=(
        "The nominal diameter is not rounded as UN Regulation 30 does; that moves it by up to "
        "1.4 mm. Wear takes off up to 2 %.",
        "Slip is speed only. A converter's efficiency is speed ratio × torque ratio, not 1 − slip.",
        "The gear must be fully engaged: a slipping clutch or band looks like converter slip.",
    ),
    folded=(CONVENTION,),
    run=run,
)  # fmt: skip
