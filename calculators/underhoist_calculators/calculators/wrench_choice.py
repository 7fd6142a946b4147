"""Which of the shop's torque wrenches covers a torque, and how far it may be off, by ISO 6789."""

from attrs import frozen

from underhoist_calculators.answer import Answer, Exact, Plate, Table, Working, exact, plate
from underhoist_calculators.calculators.torque_units import SCALES
from underhoist_calculators.declare import Calculator, Choice, Field
from underhoist_calculators.inputs import EntryError, Inputs
from underhoist_calculators.units import Quantity, Span, number_text, show, unit_name
from underhoist_calculators.wrench import (
    LOWEST_SHARE,
    acceptance,
    at_most,
    check_points,
    covers,
    deviation,
    limit,
    passes,
    usable,
)

FIELDS = ("wrench-1", "wrench-2", "wrench-3", "wrench-4")


@frozen(kw_only=True)
class Wrench:
    """One of the shop's wrenches: its place in the list and its scale."""

    name: str
    scale: Span


@frozen(kw_only=True)
class Tested:
    """One line of a calibration record: what the wrench said and what the test device read."""

    indicated: Quantity
    reference: Quantity


def run(inputs: Inputs) -> Answer:
    """Answer with the wrench to take, or say that none covers the torque."""
    torque, edition = inputs.quantity("torque"), inputs.word("edition") or "2017"
    wrenches = _wrenches(inputs)
    tested = _tested(inputs, wrenches[0])
    sound = wrenches[1:] if _failed(wrenches[0], tested) else wrenches
    best = _best(sound, torque, edition)
    checked = _check_plates(wrenches[0], tested)
    return Answer(
        summary=_summary(best, torque, edition),
        plates=(*_plates(best, torque), *checked),
        tables=(_compared(wrenches, torque, edition), _points(wrenches, edition)),
        warnings=(*_none_warning(best, torque), *_tested_warning(wrenches[0], tested)),
        working=(
            _lowest_working(best or wrenches[0], edition),
            *_gets_working(best, torque),
            *_test_working(tested),
        ),
        values=_values(best, wrenches[0], torque, tested),
    )


def _wrenches(inputs: Inputs) -> tuple[Wrench, ...]:
    spans = ((name, inputs.span(name)) for name in FIELDS)
    return tuple(
        Wrench(name=name.replace("-", " "), scale=span) for name, span in spans if span is not None
    )


def _tested(inputs: Inputs, wrench: Wrench) -> Tested | None:
    """Gather the calibration line; raises `EntryError` for half of one, or one off the scale."""
    indicated, reference = inputs.maybe("indicated"), inputs.maybe("measured")
    if indicated is None and reference is None:
        return None
    if indicated is None or reference is None:
        missing = "indicated" if indicated is None else "measured"
        wrong = "Only one half of the calibration reading is written."
        raise EntryError(missing, wrong, "Write both, or neither.")
    scale = wrench.scale
    if not (at_most(scale.low, indicated) and at_most(indicated, scale.high)):
        wrong = f"{show(indicated)} is not on the scale of {wrench.name}, {_range(scale)}."
        raise EntryError("indicated", wrong, "Put the tested wrench first.")
    return Tested(indicated=indicated, reference=reference)


def _failed(wrench: Wrench, tested: Tested | None) -> bool:
    if tested is None:
        return False
    return not passes(tested.indicated, tested.reference, wrench.scale.high)


def _best(wrenches: tuple[Wrench, ...], torque: Quantity, edition: str) -> Wrench | None:
    """Choose the covering wrench with the smallest maximum: its scale is the finest."""
    fit = (wrench for wrench in wrenches if covers(wrench.scale, torque, edition))
    return min(fit, key=lambda wrench: wrench.scale.high.m_as("newton_metre"), default=None)


def _range(scale: Span) -> str:
    return f"{show(scale.low)} to {show(scale.high)}"


def _percent(share: float, digits: int = 0) -> str:
    return f"{number_text(share * 100, digits)} %"


def _summary(best: Wrench | None, torque: Quantity, edition: str) -> str:
    if best is None:
        return f"None of these wrenches covers {show(torque)} by the {edition} edition."
    unit = unit_name(best.scale.high)
    return (
        f"Take {best.name}, {_range(best.scale)}, and set {show(torque, unit)}. "
        f"It may be off by {_percent(limit(best.scale.high))}."
    )


def _plates(best: Wrench | None, torque: Quantity) -> tuple[Plate, ...]:
    if best is None:
        return ()
    unit = unit_name(best.scale.high)
    gets = acceptance(torque, best.scale.high)
    digits = _digits(gets.low.m_as(unit))
    low, high = (show(end, unit, digits) for end in (gets.low, gets.high))
    set_to = plate(
        "Set",
        torque.to(unit),
        others=SCALES[:3],
        note=f"Within its limit the fastener gets {low} to {high}.",
        digits=None if unit == unit_name(torque) else _digits(torque.m_as(unit)),
    )
    return (set_to,)


def _digits(number: float) -> int:
    """Give decimals enough for three figures."""
    return 0 if number >= 100 else 1 if number >= 10 else 2


def _compared(wrenches: tuple[Wrench, ...], torque: Quantity, edition: str) -> Table:
    rows = tuple(
        (
            wrench.name.capitalize(),
            _range(wrench.scale),
            show(usable(wrench.scale, edition).low),
            _percent(limit(wrench.scale.high)),
            _fit(wrench, torque, edition),
        )
        for wrench in wrenches
    )
    heads = ("Wrench", "Scale", "Usable from", "May be off by", f"For {show(torque)}")
    return Table(title=f"By ISO 6789, edition {edition}", heads=heads, rows=rows)


def _fit(wrench: Wrench, torque: Quantity, edition: str) -> str:
    if covers(wrench.scale, torque, edition):
        return "covers it"
    return "too large" if torque < usable(wrench.scale, edition).low else "too small"


def _points(wrenches: tuple[Wrench, ...], edition: str) -> Table:
    """List where the wrenches are checked; three readings that a shop can ask for."""
    rows = tuple(
        (wrench.name.capitalize(), *(show(point) for point in check_points(wrench.scale, edition)))
        for wrench in wrenches
    )
    heads = ("Wrench", "Lowest", "60 %", "Highest")
    return Table(title="Have it checked at", heads=heads, rows=rows)


def _check_plates(wrench: Wrench, tested: Tested | None) -> tuple[Plate, ...]:
    """Show what the calibration line comes to."""
    if tested is None:
        return ()
    off, allowed = deviation(tested.indicated, tested.reference), limit(wrench.scale.high)
    band = acceptance(tested.indicated, wrench.scale.high)
    unit = unit_name(tested.indicated)
    may = f"{show(band.low, unit, 2)} to {show(band.high, unit, 2)}"
    verdict = "Fail" if _failed(wrench, tested) else "Pass"
    shown = Plate(
        name=f"{wrench.name.capitalize()} is off by",
        number=number_text(off * 100, 2),
        unit="per cent",
        note=f"{verdict}: the limit is {_percent(allowed)}, so the device may read {may}.",
        exact=Exact(off * 100, "percent"),
    )
    return (shown,)


def _none_warning(best: Wrench | None, torque: Quantity) -> tuple[str, ...]:
    if best is not None:
        return ()
    return (
        f"Do not guess: fetch a wrench that is usable at {show(torque)}. Below its usable range a "
        "wrench may be off by any amount.",
    )


def _tested_warning(wrench: Wrench, tested: Tested | None) -> tuple[str, ...]:
    if not _failed(wrench, tested):
        return ()
    return (
        f"{wrench.name.capitalize()} has failed its check: put it aside until it is adjusted and "
        "checked again.",
    )


def _lowest_working(wrench: Wrench, edition: str) -> Working:
    scale, old = wrench.scale, edition == "2003"
    share = f"the larger of {_percent(LOWEST_SHARE)} of {show(scale.high)} and {show(scale.low)}"
    rule = "20 % of the maximum, if that is on the scale" if old else "the lowest marked value"
    return Working(
        what=f"Lowest usable torque of {wrench.name}",
        formula=f"edition {edition}: {rule}",
        numbers=share if old else show(scale.low),
        result=show(usable(scale, edition).low),
    )


def _gets_working(best: Wrench | None, torque: Quantity) -> tuple[Working, ...]:
    if best is None:
        return ()
    gets, unit = acceptance(torque, best.scale.high), unit_name(torque)
    line = Working(
        what="Torque at the fastener",
        formula="T / (1 + limit) to T / (1 − limit)",
        numbers=f"{show(torque)}, limit {_percent(limit(best.scale.high))}",
        result=f"{show(gets.low, unit, 2)} to {show(gets.high, unit, 2)}",
    )
    return (line,)


def _test_working(tested: Tested | None) -> tuple[Working, ...]:
    if tested is None:
        return ()
    said, read = tested.indicated, tested.reference
    off = deviation(said, read)
    line = Working(
        what="Deviation",
        formula="deviation = (indicated − reference) / reference",
        numbers=f"({show(said)} − {show(read)}) / {show(read)}",
        result=_percent(off, 2),
    )
    return (line,)


def _values(
    best: Wrench | None, first: Wrench, torque: Quantity, tested: Tested | None
) -> dict[str, Exact | str]:
    values: dict[str, Exact | str] = {"wrench": best.name if best else "none"}
    if best is not None:
        gets = acceptance(torque, best.scale.high)
        values["setting"] = exact(torque.to(unit_name(best.scale.high)))
        values["limit"] = Exact(limit(best.scale.high) * 100, "percent")
        values["low"], values["high"] = exact(gets.low), exact(gets.high)
    if tested is not None:
        off = deviation(tested.indicated, tested.reference)
        values["deviation"] = Exact(off * 100, "percent")
        values["check"] = "fail" if _failed(first, tested) else "pass"
    return values


SHOP, RECORD, CONVENTION = "The shop's wrenches", "Calibration record", "Convention"


def _wrench_field(name: str, example: str | None, *, required: bool = False) -> Field:
    return Field(
        name=name, label=f"{name.replace('-', ' ').capitalize()}, scale", group=SHOP,
        kind="torque", span=True, required=required, units=SCALES, example=example,
        help="From the lowest marked value, which is not zero, to the highest.",
        low="0.01 N·m", high="5000 N·m",
    )  # fmt: skip


def _record_field(name: str, label: str, told: str) -> Field:
    return Field(
        name=name, label=label, group=RECORD, kind="torque", required=False, units=SCALES,
        help=told, low="0.01 N·m", high="5000 N·m",
    )  # fmt: skip


CALCULATOR = Calculator(
    name="wrench-choice",
    title="Wrench choice",
    purpose="Names the wrench that covers a torque, and how far it may be off by ISO 6789.",
    group="Torque",
    folded=(RECORD, CONVENTION),
    fields=(
        Field(
            name="torque", label="Torque", group="Torque", kind="torque", units=SCALES,
            help="What the procedure states.", low="0.01 N·m", high="5000 N·m",
            example="120 lbf·in", fills_from="torque",
        ),
        _wrench_field("wrench-1", "30 to 250 lbf·in", required=True),
        _wrench_field("wrench-2", "20 to 100 N·m"),
        _wrench_field("wrench-3", "30 to 250 lbf·ft"),
        _wrench_field("wrench-4", None),
        _record_field("indicated", "Wrench 1 was set to", "What the wrench itself said."),
        _record_field("measured", "Test device read", "The reference value: what it really was."),
        Field(
            name="edition", label="Edition of ISO 6789", group=CONVENTION, kind="choice",
            help="Which edition the wrench's certificate names decides from where it may be used.",
            choices=(
                Choice("2017", "2017: from the lowest marked value"),
                Choice("2003", "2003: from 20 % of the maximum"),
            ),
            default="2017",
        ),
    ),
    sources=(
        "ISO 6789:2003, as quoted in a torque wrench's instructions: 6 % up to and including "
        "10 N·m, 4 % above, of what the test device indicates; from 20 % of the maximum; checked "
        "at 20 %, 60 % and 100 %.",
        "ISO 6789-1:2017: range from the lowest marked value, as quoted in a torque handbook. "
        "Its limits and check points are taken to be those of 2003, from memory.",
        "Smallest wrench that covers the torque, for its finer scale: common practice, no source.",
    ),
    limits=(
        "For setting wrenches, those that click (type II). Some other kinds have 6 % throughout: "
        "the wrench's own sheet decides.",
        "A wrench just calibrated. Dropped, lent or stored under load it keeps to no limit.",
        "It does not judge whether the torque suits the fastener.",
    ),
    run=run,
)  # fmt: skip
