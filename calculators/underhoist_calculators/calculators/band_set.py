"""A band adjuster: its clearance, the wear that the turns show, and a slip in its seat torque."""

from underhoist_calculators.answer import Answer, Exact, Plate, Working, exact, plate
from underhoist_calculators.band import CLOSE, Adjuster, is_worn, slip, wear
from underhoist_calculators.calculators.torque_units import SCALES
from underhoist_calculators.counts import needed
from underhoist_calculators.declare import Calculator, Field
from underhoist_calculators.inputs import EntryError, Inputs
from underhoist_calculators.units import (
    Quantity,
    number_text,
    quantity,
    show,
    show_number,
    unit_name,
    unit_symbol,
)

THIN = ("thou",)
"""Unit beside millimetres that a feeler gauge carries."""


def run(inputs: Inputs) -> Answer:
    """Answer with the clearance; with the wear where the as-found turns are known."""
    seat = _seat(inputs)
    screw = Adjuster(
        pitch=inputs.quantity("pitch"),
        starts=needed(inputs, "starts"),
        lever=inputs.quantity("lever").m_as("dimensionless"),
    )
    left, found = inputs.quantity("back-off"), inputs.maybe("as-found")
    left = left.to("turn")
    worn = wear(found, left) if found is not None else None
    clearance = screw.clearance(left).to("millimetre")
    wanted = inputs.maybe("wanted")
    return Answer(
        summary=_summary(left, clearance, worn),
        plates=(_turns(left), _clearance(clearance), *_wear(worn, screw), *_wanted(wanted, screw)),
        do=_do(seat, left),
        warnings=(*_wear_warning(worn), *_seat_warning(seat, inputs.maybe("seat-used"))),
        working=_working(screw, left, found, worn),
        values=_values(screw, left, worn, wanted),
    )


def _seat(inputs: Inputs) -> Quantity:
    """Give the specified seat torque; raises `EntryError` where another was probably used."""
    specified, used = inputs.quantity("seat"), inputs.maybe("seat-used")
    if used is None or (slipped := slip(specified, used)) is None:
        return specified
    meant, read_on = slipped
    number = number_text(specified.m_as(meant), figures=3)
    times = used.m_as("newton_metre") / specified.m_as("newton_metre")
    wrong = (
        f"{show(used)} is probably {number} {unit_symbol(meant)} set on the "
        f"{unit_symbol(read_on)} scale. It is {number_text(times, figures=2)} times the "
        f"{show(specified)} that is specified."
    )
    same = "" if meant == unit_name(specified) else f", which is {show(specified, meant)},"
    mend = (
        f"Set {show(specified)}{same} on the right scale and seat it again. "
        "If the screw was pulled to too much, look at strut and anchor first."
    )
    raise EntryError("seat-used", wrong, mend)


def _turns_text(turns: Quantity) -> str:
    return show(abs(turns)) if turns.magnitude else "nothing"


def _summary(left: Quantity, clearance: Quantity, worn: Quantity | None) -> str:
    told = f"Backed off {show(left)}, the band has {show(clearance, digits=2)} of clearance."
    if worn is None:
        return told
    if is_worn(worn):
        return f"{told} The band has worn by {_turns_text(worn)} since it was set."
    if worn.magnitude < 0:
        return f"{told} It was set tighter before, by {_turns_text(worn)}."
    return f"{told} Wear since it was set: {_turns_text(worn)}."


def _turns(left: Quantity) -> Plate:
    degrees = (f"{number_text(left.m_as('degree'), 0)}°",)
    return Plate(
        name="Back off from the seat",
        number=show_number(left),
        unit=show(left).rsplit(" ", 1)[1],
        others=degrees,
        note="Count from the mark made at the seat.",
        exact=exact(left),
        exact_others=(exact(left.to("degree")),),
    )


def _clearance(clearance: Quantity) -> Plate:
    note = "At the end of the band."
    return plate("Clearance", clearance, others=THIN, digits=2, note=note)


def _wear(worn: Quantity | None, screw: Adjuster) -> tuple[Plate, ...]:
    if worn is None:
        return ()
    way = screw.clearance(worn).to("millimetre")
    turned = f"{show_number(worn)} of a turn" if abs(worn.magnitude) < 1 else show(worn)
    note = f"{turned}, as found less as left."
    return (plate("Wear taken up", way, others=THIN, digits=2, note=note),)


def _wanted(wanted: Quantity | None, screw: Adjuster) -> tuple[Plate, ...]:
    """Give the turns for a wanted clearance, with the nearest eighth, which a hand can set."""
    if wanted is None:
        return ()
    turns = screw.turns(wanted)
    eighth = quantity(round(turns.m_as("turn") * 8) / 8, "turn")
    note = f"For {show(wanted)}. The nearest eighth: {show(eighth)}."
    return (plate("Back off for that clearance", turns, digits=2, note=note),)


def _do(seat: Quantity, left: Quantity) -> tuple[str, ...]:
    return (
        "Loosen the locknut while the screw is held. Count the turns inward to the seat and note "
        "them: they are the as-found turns.",
        f"Back off, then tighten to {show(seat)}. Mark the screw.",
        f"Back off {show(left)} from the mark and hold the screw while the locknut is tightened.",
    )


def _wear_warning(worn: Quantity | None) -> tuple[str, ...]:
    """Warn of a worn band, and of one that somebody set otherwise before."""
    if worn is None:
        return ()
    if is_worn(worn):
        return (
            "A quarter of a turn or more between as found and as left shows a worn band. Look at "
            "the fluid and in the pan for lining, and set the band again soon.",
        )
    if worn.magnitude < 0:
        return (
            "It was set tighter than it is left now, and a band does not grow: the seat torque, "
            "the count or the specification was another one before. Look which.",
        )
    return ()


def _seat_warning(seat: Quantity, used: Quantity | None) -> tuple[str, ...]:
    if used is None:
        return ()
    share = used.m_as("newton_metre") / seat.m_as("newton_metre")
    if abs(share - 1) <= CLOSE:
        return ()
    return (
        f"Seated at {show(used)}, {number_text(share * 100, 0)} % of {show(seat)}: the turns count "
        "from another place. Seat it again.",
    )


def _working(
    screw: Adjuster, left: Quantity, found: Quantity | None, worn: Quantity | None
) -> tuple[Working, ...]:
    turn = f"{show(screw.pitch)} × {screw.starts} × {number_text(screw.lever)}"
    lines = [
        Working(
            what="Clearance",
            formula="clearance = turns · pitch · starts · lever ratio",
            numbers=f"{show(left)} × {turn}",
            result=show(screw.clearance(left).to("millimetre"), digits=3),
        )
    ]
    if found is not None and worn is not None:
        lines.append(
            Working(
                what="Wear",
                formula="wear = (as found − as left) · pitch · starts · lever ratio",
                numbers=f"({show(found.to('turn'))} − {show(left)}) × {turn}",
                result=show(screw.clearance(worn).to("millimetre"), digits=3),
            )
        )
    return tuple(lines)


def _values(
    screw: Adjuster, left: Quantity, worn: Quantity | None, wanted: Quantity | None
) -> dict[str, Exact | str]:
    values: dict[str, Exact | str] = {"clearance": exact(screw.clearance(left).to("millimetre"))}
    if worn is not None:
        values["wear"] = exact(screw.clearance(worn).to("millimetre"))
        values["wear-turns"] = exact(worn)
        values["verdict"] = "worn" if is_worn(worn) else "tighter" if worn.magnitude < 0 else "good"
    return {**values, "turns-for-wanted": exact(screw.turns(wanted))} if wanted else values


FAMILY, FOUND, SCREW = "From the family page", "What was found", "The screw"

CALCULATOR = Calculator(
    name="band-set",
    title="Band set",
    purpose="Gives the clearance that the turns leave, the wear they show, and spots a seat torque "
    "set on the wrong scale.",
    group="Torque",
    folded=(FAMILY, SCREW),
    fields=(
        Field(
            name="seat", label="Seat torque, specified", group=FAMILY, kind="torque", units=SCALES,
            help="A seating value only: the screw never stays at it.", low="0.1 N·m",
            high="200 N·m", example="120 lbf·in", fills_from="adjustment.seat",
        ),
        Field(
            name="back-off", label="Back off", group=FAMILY, kind="turns", units=("turn", "degree"),
            help="Turns back from the seat, as specified and as left.", low="0 turns",
            high="12 turns", example="1 1/2 turns", fills_from="adjustment.back_off",
        ),
        Field(
            name="pitch", label="Thread pitch", group=FAMILY, kind="length",
            units=("millimetre", "inch"), low="0.25 mm", high="6 mm", example="1/20 in",
            help="20 threads per inch are 1/20 in.", fills_from="adjustment.pitch",
        ),
        Field(
            name="seat-used", label="Seat torque, as set on the wrench", group=FOUND,
            kind="torque", required=False, units=SCALES,
            help="A probable slip between two scales is refused.", low="0.01 N·m",
            high="5000 N·m",
        ),
        Field(
            name="as-found", label="Turns to the seat, as found", group=FOUND, kind="turns",
            required=False, units=("turn", "degree"), low="0 turns", high="12 turns",
            help="Turns inward to the seat before anything was set.", example="1 3/4 turns",
        ),
        Field(
            name="wanted", label="Clearance wanted", group=FOUND, kind="length", required=False,
            units=("millimetre", "thou", "inch"), low="0.01 mm", high="20 mm",
            help="Where the specification gives a clearance: shows the turns for it.",
        ),
        Field(
            name="lever", label="Lever ratio", group=SCREW, kind="ratio", units=("dimensionless",),
            help="Way of the band's end over way of the screw. 1 where the screw bears on the band "
            "itself.", low="0.1", high="10", default="1",
        ),
        Field(
            name="starts", label="Starts of the thread", group=SCREW, kind="count", low="1",
            high="4", default="1",
            help="One but for quick-acting screws.",
        ),
    ),
    sources=(
        "Way of a screw: turns × pitch × starts, by definition.",
        "A quarter of a turn between as found and as left shows a worn band; an external band "
        "seated at 120 lbf·in and backed off 1 1/2 turns: common practice, no source.",
        "Slip: the specification's number on another scale, within 5 %: rule of this calculator.",
    ),
    limits=(
        "It takes the play as all in the screw's direction: a bent lever or a worn anchor shows as "
        "wear of the band.",
        "The clearance is shown to 0.01 mm for comparing. No tool in the shop sets it so finely.",
        "The specification's turns decide. A clearance worked out here never replaces them.",
    ),
    run=run,
)  # fmt: skip
