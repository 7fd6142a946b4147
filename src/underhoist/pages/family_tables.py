"""The tables of a unit family's page."""

from collections.abc import Iterator

from markupsafe import Markup
from underhoist_calculators.units import Quantity, show, unit_name, unit_named

from underhoist.gears import ratios
from underhoist.model import UnitFamily
from underhoist.pages.fluids import fluid_link
from underhoist.pages.here import Here
from underhoist.pages.html import join, link, table
from underhoist.pages.quantities import decimal, show_span
from underhoist.pages.torque_units import UNITS, in_all_units, unit_heads


def torques(here: Here, family: UnitFamily) -> Markup:
    """Every torque in all units; the one that was written comes in the column of its unit."""
    rows = (
        (
            link(here.to(f"torques/{family.id}/{id_}/"), fastener.name.value),
            *_all_units(fastener.torque.value),
            fastener.thread.value if fastener.thread else "",
        )
        for id_, fastener in family.fasteners.items()
    )
    heads = ("Fastener", *unit_heads(UNITS), "Thread")
    return table("uh-table", heads, rows, f"Torques of the {family.title.value} in all units")


def _all_units(torque: Quantity) -> Iterator[Markup]:
    """Write the value in each unit, the one that the author wrote in bold."""
    for unit, text in zip(UNITS, in_all_units(torque), strict=True):
        written = unit_named(unit) == unit_named(unit_name(torque))
        yield Markup("<strong>{}</strong>").format(text) if written else Markup.escape(text)


def adjustments(here: Here, family: UnitFamily) -> Markup:
    """Write what is set by seating and backing off."""
    rows = (
        (
            each.name.value,
            _torque(here, each.seat.value),
            show(each.back_off.value),
            _torque(here, each.lock.value) if each.lock else "",
        )
        for each in family.adjustments.values()
    )
    heads = ("What is set", "Seat at", "Back off", "Lock at")
    return table("uh-table", heads, rows, "Settings made by seating and backing off")


def _torque(here: Here, id_: str) -> Markup:
    shown = here.shown("torque", id_)
    return link(shown.href, shown.value or shown.title) if shown else Markup("")


def fluid(here: Here, family: UnitFamily) -> Markup:
    """Which fluid, how much, and how the level is read."""
    rule = family.fluid
    later = join((fluid_link(here, each.value) for each in rule.accepts), ", ")
    rows = (
        ("Specification", fluid_link(here, rule.specification.value)),
        ("Superseded by", later or "nothing that is known"),
        *(("Never mixed with", fluid_link(here, each.value)) for each in rule.never_with),
        ("Service fill", show(rule.service_fill.value)),
        ("Dry fill with converter", show(rule.dry_fill.value)),
        ("Read the level with the selector in", rule.level.selector.value),
        ("Fluid temperature for reading", show_span(rule.level.temperature.value)),
        ("From the low to the full mark", show(rule.level.between_marks.value)),
    )
    return table("uh-table", ("What", "Value"), rows, f"Fluid of the {family.title.value}")


def shift_windows(family: UnitFamily) -> Markup:
    """Write the road speeds of every shift, on the tyre and axle they are stated for."""
    rows = (
        (each.shift.value, each.throttle.value, show_span(each.speed.value))
        for each in family.shift_windows
    )
    reference = family.reference
    caption = f"Road speeds on {reference.tyre.value} tyres and a {reference.axle.written} axle"
    return table("uh-table", ("Shift", "Throttle", "Road speed"), rows, caption)


def hydraulics(family: UnitFamily) -> Markup:
    """Write what the modulator's adjuster does, and a spring-calibrated governor's points."""
    rows: list[tuple[str, str]] = []
    if family.modulator is not None:
        rows.append(("One turn of the adjuster is worth", show(family.modulator.turn.value)))
        if family.modulator.cut_off is not None:
            above = show(family.modulator.cut_off.value)
            rows.append(("Vacuum above which shifts come no earlier", above))
    for point in family.governor.points if family.governor is not None else ():
        at = f"Governor pressure at {show(point.speed.value)}"
        rows.append((at, show(point.pressure.value)))
    if not rows:
        return Markup("")
    caption = "Turned in, the adjuster raises and firms all shifts; turned out, it lowers them"
    return table("uh-table", ("What", "Value"), rows, caption if family.modulator else "Governor")


def gear_ratios(family: UnitFamily) -> Markup:
    """Write the ratios computed from the teeth, or the stated ones where the train is not known."""
    teeth = ", ".join(
        f"{name.replace('_', ' ')} {count.value}" for name, count in family.gear_train.teeth.items()
    )
    caption = f"Turns of the input for one turn of the output, from the teeth: {teeth}"
    rows = tuple(_computed(family))
    if not rows:
        rows = tuple((gear.capitalize(), stated.written) for gear, stated in family.ratios.items())
        caption = "Turns of the input for one turn of the output, as stated"
    return table("uh-table", ("Gear", "Ratio"), rows, caption)


def _computed(family: UnitFamily) -> Iterator[tuple[str, str]]:
    for gear, ratio in ratios(family.gear_train).items():
        turned = ", turning backwards" if ratio < 0 else ""
        yield gear.capitalize(), f"{decimal(abs(float(ratio)), 3)}{turned}"
