"""Links to the calculators, filled in with what the manual states."""

from collections.abc import Iterator

from markupsafe import Markup
from underhoist_calculators.declare import Calculator

from underhoist.pages.here import Here
from underhoist.pages.html import contents, entry
from underhoist.pages.presets import Values, address, for_adjustment, for_family


def preset_links(here: Here, values: Values) -> Markup:
    """Write a link to each calculator that takes something of the values."""
    return contents(
        entry(here.to(way), each.title, each.purpose)
        for each in here.site.calculators.values()
        if (way := address(each, values)) is not None
    )


def places(here: Here, calculator: Calculator) -> Iterator[tuple[str, str]]:
    """Yield name and link of everything in the manual that can fill the calculator in."""
    for family in here.site.manual.families.values():
        way = address(calculator, for_family(family))
        if way is not None:
            yield family.title.value, here.to(way)
        for each in family.adjustments.values():
            way = address(calculator, for_adjustment(family, each))
            if way is not None:
                yield f"{family.title.value}, {each.name.value.lower()}", here.to(way)
