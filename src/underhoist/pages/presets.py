"""Calculators filled in with what a unit family states."""

from collections.abc import Iterator, Mapping
from urllib.parse import quote_plus

from markupsafe import Markup
from underhoist_calculators.declare import Calculator
from underhoist_calculators.units import show

from underhoist.model import UnitFamily
from underhoist.pages.here import Here
from underhoist.pages.html import contents, entry
from underhoist.pages.quantities import show_span


def for_family(family: UnitFamily) -> Mapping[str, str]:
    """Every value of the family that a field may ask for, by its dotted name, as typed text."""
    return dict(_values(family))


def _values(family: UnitFamily) -> Iterator[tuple[str, str]]:
    rule = family.fluid
    yield "family", family.title.value
    yield "fluid.specification", rule.specification.value
    yield "fluid.service_fill", show(rule.service_fill.value)
    yield "fluid.dry_fill", show(rule.dry_fill.value)
    yield "fluid.level.selector", rule.level.selector.value
    yield "fluid.level.between_marks", show(rule.level.between_marks.value)
    yield "fluid.level.temperature", show_span(rule.level.temperature.value)
    yield "reference.tyre", family.reference.tyre.value
    yield "reference.axle", family.reference.axle.written
    train = family.gear_train
    yield "gear_train.type", train.type.value
    yield from (
        (f"gear_train.teeth.{name}", str(count.value)) for name, count in train.teeth.items()
    )
    yield from ((f"ratios.{gear}", ratio.written) for gear, ratio in family.ratios.items())
    for window in family.shift_windows:
        yield (
            f"window.{window.shift.value}.{window.throttle.value}",
            show_span(window.speed.value),
        )


def address(calculator: Calculator, family: UnitFamily) -> str | None:
    """Address of the calculator filled in for the family; None where it asks nothing of one.

    A field that the family has no value for is emptied: the example's value is not the family's.
    """
    values = for_family(family)
    wanted = {field.name: field.fills_from for field in calculator.fields if field.fills_from}
    entries = {name: values.get(key, "") for name, key in wanted.items()}
    if not any(entries.values()):
        return None
    query = "&".join(f"{name}={quote_plus(text, safe='/')}" for name, text in entries.items())
    return f"calculators/{calculator.name}/?{query}"


def preset_links(here: Here, family: UnitFamily) -> Markup:
    """Write a link to each calculator that takes something from this family."""
    return contents(
        entry(here.to(way), each.title, each.purpose)
        for each in here.site.calculators.values()
        if (way := address(each, family)) is not None
    )
