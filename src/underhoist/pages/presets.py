"""Calculators filled in with what the manual states of a family, a band setting or a fastener."""

import re
from collections.abc import Iterator, Mapping
from fractions import Fraction
from urllib.parse import quote_plus

from underhoist_calculators.declare import Calculator
from underhoist_calculators.units import number_text, show

from underhoist.gears import as_calculated
from underhoist.model import Adjustment, Fastener, Manual, Page, Procedure, UnitFamily
from underhoist.pages.quantities import show_span
from underhoist.references import families_of

Values = Mapping[str, str]
"""Typed text by the dotted name that a field asks for with `fills_from`."""

_INCH_THREAD = re.compile(r"\d+(?:/\d+)?-(\d+) UN")
_METRIC_THREAD = re.compile(r"M\d+(?:\.\d+)? ?[x×] ?(\d+(?:\.\d+)?)")
_MM_PER_INCH = Fraction(254, 10)


def for_family(family: UnitFamily) -> Values:
    """Give every value of the family that a field may ask for."""
    return dict(_of_family(family))


def for_adjustment(family: UnitFamily, adjustment: Adjustment) -> Values:
    """Give the values of one band setting: seat torque, turns back off, pitch of the screw."""
    seat = family.fasteners.get(adjustment.seat.value)
    values = {"adjustment.back_off": show(adjustment.back_off.value)}
    if seat is not None:
        values["adjustment.seat"] = show(seat.torque.value)
        values["adjustment.pitch"] = _pitch(seat.thread.value if seat.thread else "")
    return values


def for_fastener(fastener: Fastener) -> Values:
    """Give the torque and the thread of a fastener."""
    thread = fastener.thread.value if fastener.thread else ""
    return {"torque": show(fastener.torque.value), "thread": thread}


def address(calculator: Calculator, values: Values) -> str | None:
    """Address of the calculator filled in with the values; None where it asks for none of them.

    A field that there is no value for is emptied: the example's value must not stand for it.
    """
    wanted = {field.name: field.fills_from for field in calculator.fields if field.fills_from}
    entries = {name: values.get(key, "") for name, key in wanted.items()}
    if not any(entries.values()):
        return None
    return f"calculators/{calculator.name}/?{query(entries)}"


def query(entries: Values) -> str:
    """Write the entries of a form as the end of an address; the dot of lbf·in as a star."""
    typed = ((name, text.replace("·", "*")) for name, text in entries.items())
    return "&".join(f"{name}={quote_plus(text, safe='/*')}" for name, text in typed)


def for_page(manual: Manual, page: Page) -> Values:
    """Give what the manual states for a page of one unit family, its band setting included."""
    families = families_of(manual, page)
    if len(families) != 1:
        return {}
    (family,) = families
    values = dict(for_family(family))
    if isinstance(page, Procedure):
        used = {each.value.rpartition("/")[2] for each in page.torques}
        set_here = [each for each in family.adjustments.values() if each.seat.value in used]
        if len(set_here) == 1:
            values |= for_adjustment(family, set_here[0])
    return values


def _of_family(family: UnitFamily) -> Iterator[tuple[str, str]]:
    rule = family.fluid
    yield "fluid.specification", rule.specification.value
    yield "fluid.accepts", ", ".join(each.value for each in rule.accepts)
    yield "fluid.service_fill", show(rule.service_fill.value)
    yield "fluid.dry_fill", show(rule.dry_fill.value)
    yield "fluid.level.selector", rule.level.selector.value
    yield "fluid.level.between_marks", show(rule.level.between_marks.value)
    yield "fluid.level.temperature", show_span(rule.level.temperature.value)
    yield "reference.tyre", family.reference.tyre.value
    yield "reference.axle", family.reference.axle.written
    kind, teeth = as_calculated(family.gear_train)
    yield "gear_train.type", kind
    for name, count in teeth.items():
        yield f"gear_train.teeth.{name}", str(count)
    for gear, ratio in family.ratios.items():
        yield f"ratios.{gear}", ratio.written
    for window in family.shift_windows:
        speed = show_span(window.speed.value)
        yield f"window.{window.shift.value}.{window.throttle.value}", speed
    yield from _hydraulics(family)


def _hydraulics(family: UnitFamily) -> Iterator[tuple[str, str]]:
    yield "signal", "cable" if family.throttle_cable and not family.modulator else "vacuum"
    if family.modulator is not None:
        yield "modulator.turn", show(family.modulator.turn.value)
        if family.modulator.cut_off is not None:
            yield "modulator.cut_off", show(family.modulator.cut_off.value)
    if family.throttle_cable is not None:
        yield "throttle_cable.travel", show_span(family.throttle_cable.travel.value)
        yield "throttle_cable.turn", show(family.throttle_cable.turn.value)
    points = family.governor.points if family.governor is not None else ()
    yield "governor.law", "points" if _reach_over_windows(family) else "plain"
    for number, point in enumerate(points, start=1):
        yield f"governor.{number}.speed", show(point.speed.value)
        yield f"governor.{number}.pressure", show(point.pressure.value)


def _reach_over_windows(family: UnitFamily) -> bool:
    """Say whether the governor's own points hold the middle of every shift window."""
    known = [each.speed.value for each in family.governor.points] if family.governor else []
    spans = [window.speed.value for window in family.shift_windows]
    middles = [(span.low + span.high) / 2 for span in spans]
    return bool(known) and all(known[0] <= middle <= known[-1] for middle in middles)


def _pitch(thread: str) -> str:
    """Give the pitch that a thread's name tells, 1.27 mm for 1/2-20 UNF, or nothing."""
    inch = _INCH_THREAD.match(thread)
    if inch is not None:
        return f"{number_text(float(_MM_PER_INCH / int(inch[1])))} mm"
    metric = _METRIC_THREAD.match(thread)
    return f"{metric[1]} mm" if metric else ""
