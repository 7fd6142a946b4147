"""What the rules will ask for, proposed before they do: cautions and torque wrenches."""

from collections.abc import Iterable
from itertools import chain

from underhoist_calculators.units import Quantity, unit_name, unit_named

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
    """Return for each torque a wrench that covers it; none where none of ours does.

    One whose scale reads the torque's own unit goes first: nobody has to convert.
    """
    found = (_wrench(manual, torque) for torque in torques)
    return tuple(dict.fromkeys(tool.id for tool in found if tool))


def _wrench(manual: Manual, torque: Quantity) -> Tool | None:
    covering = [
        tool
        for tool in manual.tools.values()
        if tool.torque_range is not None and tool.torque_range.value.holds(torque)
    ]
    same_unit = (tool for tool in covering if _reads(tool) == unit_name(torque))
    return next(chain(same_unit, covering), None)


def _reads(tool: Tool) -> str | None:
    """Return the registry name of the unit on the wrench's scale."""
    unit = unit_named(tool.scale.value) if tool.scale else None
    return unit.name if unit else None
