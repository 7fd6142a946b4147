"""Whether a torque is plausible for a fastener, and which scale was meant where it is not."""

from underhoist_calculators.answer import Answer, Exact, Plate, Working, exact
from underhoist_calculators.calculators.torque_units import SCALES
from underhoist_calculators.declare import Calculator, Choice, Field
from underhoist_calculators.fastener import (
    DRY,
    LUBRICATED,
    PRELOAD_SHARE,
    Screw,
    judge,
    meant,
)
from underhoist_calculators.inputs import EntryError, Inputs
from underhoist_calculators.thread import GRADES, INCH_DEPTH, METRIC_DEPTH, THREADS
from underhoist_calculators.units import (
    Quantity,
    number_text,
    show,
    unit_name,
    unit_symbol,
    unit_words,
)

SAID = {
    "beyond-proof": "{torque} is beyond what this fastener bears: above its proof load even dry.",
    "high": "{torque} is high for this fastener: above 75 % of its proof load even dry.",
    "usual": "{torque} is plausible for this fastener.",
    "low": "{torque} is plausible, and less than the steel alone would bear.",
    "very-low": "{torque} hardly loads this fastener.",
}

ADVICE = {
    "beyond-proof": "Do not pull it. Look the figure up again, with its unit.",
    "high": "Look the figure up again, with its unit, before pulling it.",
    "low": "Usual for screws in aluminium, on gaskets and seals, which set the torque and not the "
    "steel.",
    "very-low": "Right only where something else sets the torque, such as a gasket or a seat.",
}


def run(inputs: Inputs) -> Answer:
    """Answer with a verdict, never with a torque to use instead."""
    torque, screw = inputs.quantity("torque"), _screw(inputs)
    verdict = judge(torque, screw)
    guess = meant(torque, screw) if verdict in {"beyond-proof", "high", "very-low"} else None
    return Answer(
        summary=SAID[verdict].format(torque=show(torque)),
        plates=(_share_plate(torque, screw), _usual_plate(torque, screw)),
        warnings=(*_advice(verdict), *_slip(torque, guess), *_oil(torque, screw, verdict)),
        working=_working(torque, screw),
        values=_values(torque, screw, verdict, guess),
    )


def _screw(inputs: Inputs) -> Screw:
    """Gather the fastener; raises `EntryError` where thread and grade do not go together."""
    thread = next(each for each in THREADS if each.name == inputs.word("thread"))
    grade = next(each for each in GRADES if each.name == inputs.word("grade"))
    if thread.metric != grade.metric:
        other = "metric, and has a class" if thread.metric else "an inch thread, and has a grade"
        wrong = f"{grade.label} does not go with {thread.name}, which is {other}."
        fitting = ", ".join(each.name for each in GRADES if each.metric == thread.metric)
        raise EntryError("grade", wrong, f"Choose one of {fitting}.")
    nut_factor = inputs.span("nut-factor")
    if nut_factor is None:
        raise EntryError("nut-factor", "Nothing is written.", "Write 0.12 to 0.20.")
    return Screw(
        thread=thread,
        grade=grade,
        k_low=nut_factor.low.m_as("dimensionless"),
        k_high=nut_factor.high.m_as("dimensionless"),
    )


def _percent(share: float) -> str:
    return f"{number_text(share * 100, 0)} %"


def _three(value: float) -> str:
    return number_text(value, figures=3)


def _share_plate(torque: Quantity, screw: Screw) -> Plate:
    least, most = screw.shares(torque)
    return Plate(
        name="Loads it to",
        number=f"{number_text(least * 100, 0)} to {number_text(most * 100, 0)}",
        unit="per cent of its proof load",
        note="Dry to lubricated. The same torque pulls harder on an oiled thread.",
        exact=Exact(most * 100, "percent"),
        exact_low=Exact(least * 100, "percent"),
    )


def _usual_plate(torque: Quantity, screw: Screw) -> Plate:
    """Show the range that the steel alone would take, as a range so that nobody sets it."""
    unit = unit_name(torque)
    low, high = (each.to(unit) for each in screw.torques())
    return Plate(
        name="For comparison, 75 % of its proof load",
        number=f"{_three(low.magnitude)} to {_three(high.magnitude)}",
        unit=unit_words(unit),
        note="Lubricated to dry. For comparing only: the procedure's torque stands.",
        exact=exact(high),
        exact_low=exact(low),
    )


def _advice(verdict: str) -> tuple[str, ...]:
    return (ADVICE[verdict],) if verdict in ADVICE else ()


def _slip(torque: Quantity, guess: Quantity | None) -> tuple[str, ...]:
    """Name the scale that was likely meant."""
    if guess is None:
        return ()
    number = number_text(torque.magnitude)
    written, other = unit_symbol(unit_name(torque)), unit_symbol(unit_name(guess))
    times = torque.m_as("newton_metre") / guess.m_as("newton_metre")
    how = f"{_three(times)} times" if times > 1 else f"1/{_three(1 / times)} of"
    return (
        f"Likely a slip of the unit: {number} {other} would be plausible, and {number} {written} "
        f"is {how} that.",
    )


def _oil(torque: Quantity, screw: Screw, verdict: str) -> tuple[str, ...]:
    """Warn where the torque is good for a dry thread only."""
    _, most = screw.shares(torque)
    if verdict != "usual" or most <= 0.9:
        return ()
    return (
        f"For a clean, dry thread only: lubricated, it reaches {_percent(most)} of the proof load.",
    )


def _working(torque: Quantity, screw: Screw) -> tuple[Working, ...]:
    """Show stress area, proof load, the torques for three quarters of it, and the share."""
    low, high = (_three(each.m_as(unit_name(torque))) for each in screw.torques())
    least, most = screw.shares(torque)
    symbol = unit_symbol(unit_name(torque))
    factors = f"{number_text(screw.k_low)} to {number_text(screw.k_high)}"
    return (
        _area_working(screw),
        _proof_working(screw),
        Working(
            what="Torque for 75 % of it",
            formula="T = K·F·d",
            numbers=f"{factors} × {number_text(PRELOAD_SHARE)} × {show(screw.proof_load, digits=0)}"
            f" × {show(screw.thread.diameter)}",
            result=f"{low} to {high} {symbol}",
        ),
        Working(
            what="Share of the proof load",
            formula="share = T / (K·d) / proof load",
            numbers=f"{show(torque)} / (K × {show(screw.thread.diameter)}) / "
            f"{show(screw.proof_load, digits=0)}, K = {factors}",
            result=f"{_percent(least)} to {_percent(most)}",
        ),
    )


def _area_working(screw: Screw) -> Working:
    thread = screw.thread
    metric = thread.metric
    depth = METRIC_DEPTH if metric else INCH_DEPTH
    across, pitch = thread.diameter.magnitude, number_text(thread.pitch.magnitude, figures=5)
    area = number_text(thread.stress_area.magnitude, 1 if metric else 4)
    return Working(
        what="Tensile stress area",
        formula="As = π/4 (d − 0.9382 P)²" if metric else "At = π/4 (D − 0.9743/n)²",
        numbers=f"π/4 ({number_text(across)} − {number_text(depth)} × {pitch})²",
        result=f"{area} {'mm²' if metric else 'in²'}",
    )


def _proof_working(screw: Screw) -> Working:
    metric = screw.thread.metric
    stress = screw.grade.proof_stress(screw.thread.diameter).magnitude
    area = number_text(screw.thread.stress_area.magnitude, 1 if metric else 4)
    return Working(
        what=f"Proof load of {screw.thread.name}, {screw.grade.label.lower()}",
        formula="proof load = stress area × proof stress",
        numbers=f"{area} {'mm²' if metric else 'in²'} × {number_text(stress)} "
        f"{'N/mm²' if metric else 'psi'}",
        result=show(screw.proof_load, digits=0),
    )


def _values(
    torque: Quantity, screw: Screw, verdict: str, guess: Quantity | None
) -> dict[str, Exact | str]:
    least, most = screw.shares(torque)
    low, high = screw.torques()
    values: dict[str, Exact | str] = {
        "verdict": verdict,
        "proof-load": exact(screw.proof_load),
        "share-dry": Exact(least * 100, "percent"),
        "share-lubricated": Exact(most * 100, "percent"),
        "torque-lubricated": exact(low),
        "torque-dry": exact(high),
    }
    return {**values, "likely-meant": exact(guess)} if guess else values


CALCULATOR = Calculator(
    name="fastener-check",
    title="Fastener check",
    purpose="Judges whether a torque is plausible for a thread and its grade. It never replaces "
    "the procedure's torque.",
    group="Torque",
    folded=("Convention",),
    fields=(
        Field(
            name="torque", label="Torque as stated", group="Torque", kind="torque", units=SCALES,
            help="The figure to judge, with its unit.", low="0.1 N·m", high="5000 N·m",
            example="110 lbf·in", fills_from="torque",
        ),
        Field(
            name="thread", label="Thread", group="Fastener", kind="choice",
            help="From the drawing or a thread gauge.", example="5/16-18 UNC", fills_from="thread",
            choices=tuple(Choice(each.name, each.name.replace("x", " × ")) for each in THREADS),
        ),
        Field(
            name="grade", label="Grade or class", group="Fastener", kind="choice",
            help="Three lines on the head are grade 5, six are grade 8, none grade 2. Metric heads "
            "carry the number.", example="grade 5",
            choices=tuple(Choice(each.name, each.label) for each in GRADES),
        ),
        Field(
            name="nut-factor", label="Nut factor K", group="Convention", kind="ratio", span=True,
            units=("dimensionless",), help="From lubricated or plated to dry. No single value fits "
            "the published tables.", low="0.05", high="0.5",
            default=f"{LUBRICATED:.2f} to {DRY:.2f}",
        ),
    ),
    sources=(
        "Stress area, inch: ASME B1.1, the formula for steels up to 100 000 psi (its second "
        "formula, for stronger steels, gives 3 % less). Metric: ISO 898-1.",
        "Proof stress: SAE J429, table 1 for grade 2; grades 5 and 8 from memory. ISO 898-1 from "
        "memory, 8.8 confirmed by its printed proof loads.",
        "T = K·F·d by definition of K. K of 0.12 to 0.20: about the range that published torque "
        "tables imply. FAA AC 43.13-1B, table 7-1, implies 0.12 to 0.14 for 3/8-24.",
        "75 % of the proof load for joints that are taken apart again: common practice, no source.",
    ),
    limits=(
        "It judges the screw's steel. Aluminium threads, gaskets and studs give way much earlier.",
        "Published torques can lie far below it: one table has 6 lbf·ft for 1/4 in grade 5, where "
        "this gives up to 8.5 lbf·ft. The published figure is the one to use.",
        "Threads and grades in the lists only; none is guessed.",
    ),
    run=run,
)  # fmt: skip
