"""What the rules will ask for, proposed before they do: cautions and torque wrenches."""

from collections.abc import Iterable

from underhoist_calculators.units import Quantity

from underhoist.model import Hazard, Manual, Tool


def required_hazards(
    manual: Manual, tools: Iterable[str], areas: Iterable[str], fluids: Iterable[str]
) -> tuple[str, ...]:
    """Return the hazards whose caution these tools, areas and fluids make a must."""
    met = tuple({each.casefold() for each in group} for group in (tools, areas, fluids))
    return tuple(id_ for id_, hazard in manual.hazards.items() if _asks(hazard, met))


def _asks(hazard: Hazard, met: tuple[set[str], ...]) -> bool:
    when = hazard.required_when
    return any(
        each.value.casefold() in has
        for asks, has in zip((when.tools, when.areas, when.fluids), met, strict=True)
        for each in asks
    )


def wrenches(manual: Manual, torques: Iterable[Quantity]) -> tuple[str, ...]:
    """Return for each torque the first wrench that covers it; none where none of ours does."""
    found = (_wrench(manual, torque) for torque in torques)
    return tuple(dict.fromkeys(tool.id for tool in found if tool))


def _wrench(manual: Manual, torque: Quantity) -> Tool | None:
    for tool in manual.tools.values():
        if tool.torque_range is not None and tool.torque_range.value.holds(torque):
            return tool
    return None
