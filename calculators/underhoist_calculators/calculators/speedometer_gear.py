"""The driven gear of a speedometer: which teeth make it read right, and never low."""

from attrs import frozen

from underhoist_calculators.answer import Answer, Exact, Plate, Table, Working
from underhoist_calculators.counts import counts, needed
from underhoist_calculators.declare import Calculator, Choice, Field
from underhoist_calculators.inputs import EntryError, Inputs
from underhoist_calculators.rolling import CHOICES, SOURCES, roll_fitted
from underhoist_calculators.speedometer import (
    adapter_ratio,
    best,
    highest_reading,
    needed_from_reading,
    needed_teeth,
    reading_error,
)
from underhoist_calculators.units import Quantity, number_text, quantity, show

PROOF = quantity(100, "kilometre_per_hour")
"""The true speed at which the gears are compared."""


@frozen(kw_only=True)
class Fitting:
    """What is wanted and what there is."""

    teeth: float
    available: tuple[int, ...]
    cable: Quantity
    working: Working
    tyre_share: float

    @property
    def best(self) -> int | None:
        """The available gear that reads least high, and not low."""
        return best(self.teeth, self.available)


def run(inputs: Inputs) -> Answer:
    """Answer for one speedometer."""
    given = _gather(inputs)
    return Answer(
        summary=_summary(given),
        plates=_plates(given),
        do=_advice(given),
        tables=(_table(given),),
        warnings=_warnings(given),
        working=_working(given),
        values={
            "needed": Exact(given.teeth, "counted"),
            **({"best": Exact(given.best, "counted")} if given.best is not None else {}),
            **(
                {"error": Exact(100 * reading_error(given.teeth, given.best), "percent")}
                if given.best is not None
                else {}
            ),
        },
    )


def _gather(inputs: Inputs) -> Fitting:
    """Work out the needed teeth; raises `EntryError` for what the chosen way lacks."""
    span = inputs.span("available")
    available = tuple(counts(span, "available")) if span is not None else ()
    if not available:
        wrong = "No gears to choose from are written."
        raise EntryError("available", wrong, "Write the smallest and the largest, e.g. 16 to 21.")
    cable = inputs.quantity("cable")
    way = _measured if inputs.word("way") == "measured" else _counted
    teeth, working, share = way(inputs, cable)
    return Fitting(teeth=teeth, available=available, cable=cable, working=working, tyre_share=share)


def _counted(inputs: Inputs, cable: Quantity) -> tuple[float, Working, float]:
    """Find the teeth from the drive gear, the axle, the tyre and the cable constant."""
    _ask(inputs, "Counting", drive="drive gear", axle="axle ratio", tyre="tyre")
    drive = needed(inputs, "drive")
    axle = inputs.quantity("axle").m_as("dimensionless")
    rolling = roll_fitted(inputs)
    turns = rolling.turns.to(_per(cable))
    teeth = needed_teeth(drive, axle, turns, cable)
    working = Working(
        what="Driven teeth for a true reading",
        formula="driven = drive · axle · tyre turns / cable turns",
        numbers=f"{drive} × {number_text(axle, figures=4)} × {show(turns, digits=1)} / "
        f"{show(cable)}",
        result=number_text(teeth, 3),
    )
    return teeth, working, rolling.uncertainty


def _ask(inputs: Inputs, way: str, **names: str) -> None:
    """Raise `EntryError` for the first entry that the chosen way needs and has not."""
    for name, words in names.items():
        if name not in inputs.values:
            raise EntryError(
                name, f"{way} needs the {words}.", "Write it, or choose the other way."
            )


def _per(cable: Quantity) -> str:
    """Name the unit of the cable constant, in which the tyre's turns are shown too."""
    return "turn_per_mile" if show(cable).endswith("mi") else "turn_per_kilometre"


def _measured(inputs: Inputs, _cable: Quantity) -> tuple[float, Working, float]:
    """Find the teeth from the fitted gear and a proven error of the reading."""
    asked = {"fitted": "teeth fitted now", "indicated": "indicated speed", "true": "true speed"}
    _ask(inputs, "A proven error", **asked)
    fitted = needed(inputs, "fitted")
    indicated, true = inputs.quantity("indicated"), inputs.quantity("true")
    teeth = needed_from_reading(fitted, indicated, true)
    working = Working(
        what="Driven teeth for a true reading",
        formula="driven = fitted · indicated / true",
        numbers=f"{fitted} × {show(indicated)} / {show(true)}",
        result=number_text(teeth, 3),
    )
    return teeth, working, 0.0


def _error(given: Fitting, teeth: int) -> str:
    share = 100 * reading_error(given.teeth, teeth)
    if abs(share) < 0.005:
        return "right"
    return f"{number_text(abs(share), 2)} % {'high' if share > 0 else 'low'}"


def _summary(given: Fitting) -> str:
    if given.best is None:
        return (
            f"{number_text(given.teeth, 2)} teeth would read right. Every gear there is has more "
            "and reads low, which a speedometer must not."
        )
    error = _error(given, given.best)
    reads = "reads right" if error == "right" else f"reads {error}"
    return f"Fit {given.best} teeth: the speedometer {reads}."


def _plates(given: Fitting) -> tuple[Plate, ...]:
    right = Plate(
        name="Reads right with", number=number_text(given.teeth, 2), unit="teeth",
        exact=Exact(given.teeth, "counted"),
    )  # fmt: skip
    if given.best is None:
        return (right,)
    fit = Plate(
        name="Fit", number=str(given.best), unit="teeth",
        note=f"Reads {_error(given, given.best)}.", exact=Exact(given.best, "counted"),
    )  # fmt: skip
    return fit, right


def _advice(given: Fitting) -> tuple[str, ...]:
    """Say how to go on where no gear will do."""
    if given.best is not None:
        return ("Prove it over a measured distance after fitting.",)
    least = min(given.available)
    supplied = given.cable * (given.teeth / least)
    ratio = number_text(adapter_ratio(given.cable, supplied), 3)
    return (
        f"Fit {least} teeth and a ratio adapter that turns the cable {ratio} times as often, or "
        "another drive gear.",
    )


def _table(given: Fitting) -> Table:
    """Write for each gear what it reads at a true 100 km/h and how often it turns the cable."""
    rows = tuple(
        (
            str(teeth),
            _error(given, teeth),
            show(PROOF * (1 + reading_error(given.teeth, teeth)), digits=1),
            show(given.cable * (given.teeth / teeth), digits=0),
            _verdict(given, teeth),
        )
        for teeth in given.available
    )
    heads = ("Teeth", "Reads", f"At a true {show(PROOF)}", "Cable turns", "Verdict")
    return Table(title="Each gear there is", heads=heads, rows=rows)


def _verdict(given: Fitting, teeth: int) -> str:
    if teeth == given.best:
        return "fit this"
    reading = PROOF * (1 + reading_error(given.teeth, teeth))
    if given.best is None or teeth > given.best:
        return "reads low"
    return "reads too high" if reading > highest_reading(PROOF) else "reads higher"


def _warnings(given: Fitting) -> tuple[str, ...]:
    told: list[str] = []
    if given.best is not None:
        reading = PROOF * (1 + reading_error(given.teeth, given.best))
        if reading > highest_reading(PROOF):
            told.append(
                f"Even so it reads {show(reading, digits=0)} at a true {show(PROOF)}; "
                f"{show(highest_reading(PROOF), digits=0)} is the most that UN Regulation 39 "
                "allows."
            )
        if reading_error(given.teeth, given.best) < given.tyre_share:
            told.append(
                f"The tyre is known to about {number_text(100 * given.tyre_share, figures=2)} %, "
                "more than this gear reads high: it may still read low. Roll one turn, or prove it."
            )
    return tuple(told)


def _working(given: Fitting) -> tuple[Working, ...]:
    if given.best is None:
        return (given.working,)
    error = Working(
        what=f"Reading with {given.best} teeth",
        formula="error = needed / fitted − 1",
        numbers=f"{number_text(given.teeth, 3)} / {given.best} − 1",
        result=_error(given, given.best),
    )
    return given.working, error


WANTED, COUNTED, MEASURED = "What there is", "By counting", "By a proven error"
CONVENTION = "Convention"
SPEEDS = ("kilometre_per_hour", "mile_per_hour")


def _teeth(name: str, label: str, group: str, example: str | None, help_: str) -> Field:
    return Field(
        name=name, label=label, group=group, kind="count", low="3", high="60", required=False,
        example=example, help=help_,
    )  # fmt: skip


def _speed(name: str, label: str, help_: str) -> Field:
    return Field(
        name=name, label=label, group=MEASURED, kind="speed", units=SPEEDS, low="10 km/h",
        high="200 km/h", required=False, help=help_,
    )  # fmt: skip


CALCULATOR = Calculator(
    name="speedometer-gear",
    title="Speedometer gear",
    purpose="Gives the driven gear with which the speedometer reads right, and never low.",
    group="Shift",
    fields=(
        Field(
            name="way", label="Work it out", group=WANTED, kind="choice", default="counted",
            choices=(
                Choice("counted", "By counting drive gear, axle and tyre"),
                Choice("measured", "By a reading proven on the road"),
            ),
            help="A proven reading is surer, where a gear is fitted already.",
        ),
        Field(
            name="available", label="Driven gears there are", group=WANTED, kind="count", span=True,
            low="3", high="60", example="16 to 21", help="Fewest to most teeth.",
        ),
        _teeth("drive", "Drive gear teeth", COUNTED, "7", "On the output shaft."),
        Field(
            name="axle", label="Axle ratio", group=COUNTED, kind="ratio", low="1.5", high="8",
            required=False, example="3.50", fills_from="reference.axle",
            help="Turns of the shaft for one turn of the wheel.",
        ),
        Field(
            name="tyre", label="Tyre", group=COUNTED, kind="tyre", required=False,
            example="215/75 R 15", fills_from="reference.tyre",
            help="Size on the tyre wall, or the circumference rolled in one turn, e.g. 2.05 m.",
        ),
        _teeth("fitted", "Teeth fitted now", MEASURED, None, "Of the driven gear."),
        _speed("indicated", "It shows", "Steady, as the needle stands."),
        _speed("true", "True speed", "Over a measured distance, or from a satellite receiver."),
        Field(
            name="cable", label="Cable constant", group=CONVENTION, kind="turns_per_distance",
            units=("turn_per_mile", "turn_per_kilometre"), low="300 turns/km", high="1500 turns/km",
            default="1000 turns/mi",
            help="Often on the dial. 1000 turns/mi and 637 turns/km are 2.5 % apart.",
        ),
        Field(
            name="convention", label="Rolling circumference", group=CONVENTION, kind="choice",
            choices=CHOICES, default="radial",
            help="What one turn covers where only the size is known. Rolling one turn is best.",
        ),
    ),
    sources=(
        "Driven = drive · axle · tyre turns / cable turns; exact by definition.",
        "Cable constant 1000 per mile: SAE J678, from memory.",
        "Never under-read, at most V/10 + 4 km/h over: UN Regulation 39, 5.3.",
        *SOURCES,
    ),
    limits=(
        "The drive gear is taken to sit on the output shaft, before the axle.",
        "The rule is fewer teeth where the right number is not whole: rounding to the nearest may "
        "read low.",
    ),
    folded=(MEASURED, CONVENTION),
    run=run,
)  # fmt: skip
