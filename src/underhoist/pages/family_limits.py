"""The tables of a unit family's page that a gauge is read against; nothing where none is stated."""

from markupsafe import Markup
from underhoist_calculators.units import show

from underhoist.model import LinePressure, UnitFamily
from underhoist.pages.html import table
from underhoist.pages.quantities import show_span


def throttle_cable(family: UnitFamily) -> Markup:
    """Write where the cable of the throttle valve stands."""
    cable = family.throttle_cable
    if cable is None:
        return Markup("")
    rows = (
        ("Gap between stop and sheath at idle", show_span(cable.gap.value)),
        ("Travel from idle to full throttle", show_span(cable.travel.value)),
        ("One turn of the adjuster moves the sheath by", show(cable.turn.value)),
    )
    caption = "A smaller gap raises and firms all shifts, a larger one lowers them"
    return table("uh-table", ("What", "Value"), rows, caption)


def line_pressure(family: UnitFamily) -> Markup:
    """Write the line pressure by selector position and throttle, warm."""
    if not family.line_pressure:
        return Markup("")
    rows = (
        (
            each.selector.value.capitalize(),
            _throttle(each),
            show(each.engine.value),
            show_span(each.pressure.value),
        )
        for each in family.line_pressure
    )
    heads = ("Selector", "Throttle", "Engine", "Line pressure")
    return table("uh-table", heads, rows, "Line pressure with warm fluid at its level")


def _throttle(each: LinePressure) -> str:
    """Name the throttle, with the vacuum that stands for it where there is a modulator."""
    if each.vacuum is None:
        return each.throttle.value
    return f"{each.throttle.value}, {show(each.vacuum.value)} at the modulator"


def stall(family: UnitFamily) -> Markup:
    """Write the stall speed and the times that keep the test from wrecking the unit."""
    if family.stall is None:
        return Markup("")
    rows = (
        ("Engine speed", show_span(family.stall.engine.value)),
        ("Longest time on the pedal", show(family.stall.longest.value)),
        ("Rest before another, at idle in neutral", show(family.stall.rest.value)),
    )
    return table("uh-table", ("What", "Value"), rows, "Stall speed with warm fluid at its level")
