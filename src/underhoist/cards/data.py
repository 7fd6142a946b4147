"""One procedure as the plain data that a card keeps: a later text does not change the card."""

from __future__ import annotations

from typing import TYPE_CHECKING

from underhoist_calculators.units import (
    Span,
    convert,
    show,
    show_number,
    unit_name,
    unit_named,
    unit_words,
)

from underhoist.links import page_address
from underhoist.model import Part
from underhoist.references import matches

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

    from underhoist.model import Fastener, Hazard, Manual, Procedure, Reading
    from underhoist.model.values import Quantity
    from underhoist.pages.steps import Step

    type WrittenOut = Callable[[Fastener], str]

Json = dict[str, object]
"""A JSON object."""

FORMAT = 2
"""Version of this shape. Cards keep what they took, so an old shape must stay readable."""


def data(
    manual: Manual, procedure: Procedure, steps: Sequence[Step], written_out: WrittenOut
) -> Json:
    """Make plain data of the procedure and its steps; the caller adds its page's revision.

    `written_out` gives a torque with its unit in words, in the unit that the step's text shows.
    """
    return {
        "format": FORMAT,
        **listed(procedure),
        "who": procedure.who.value,
        "tools": _named(manual, procedure, "tool", [each.value for each in procedure.tools]),
        "parts": _parts(manual, procedure),
        "consumables": [each.value for each in procedure.consumables],
        "fluids": [each.value for each in procedure.fluids],
        "cautions": [
            _caution(manual.hazards[each.value])
            for each in procedure.cautions
            if each.value in manual.hazards
        ],
        "steps": [_step(step, _times(steps, step), written_out) for step in steps],
    }


def listed(procedure: Procedure) -> Json:
    """Return what a list to choose from tells of it; the caller adds its page's revision."""
    return {
        "id": procedure.id,
        "title": procedure.title.value,
        "url": page_address(procedure.file),
        "family": [each.value for each in procedure.unit_family],
        "area": procedure.area.value,
        "minutes": procedure.minutes.value,
        "before": [each.value for each in procedure.before],
        "after": [each.value for each in procedure.after],
    }


def _times(steps: Sequence[Step], step: Step) -> dict[str, str]:
    """When each reading of a step is taken: one of both times on two steps is found, then left."""
    times: dict[str, str] = {}
    for id_, reading in step.readings:
        asking = [one.number for one in steps if any(id_ == other for other, _ in one.readings)]
        both = reading.when.value == "both" and len(asking) > 1
        first = "as found" if step.number == asking[0] else "as left"
        times[id_] = first if both else reading.when.value
    return times


def _named(manual: Manual, page: Procedure, scheme: str, ids: list[str]) -> list[Json]:
    """Full id and name of each; one that the manual does not know keeps its id as its name."""
    found = [(matches(manual, page, scheme, id_), id_) for id_ in ids]
    return [
        {"id": targets[0].id, "name": targets[0].title} if targets else {"id": id_, "name": id_}
        for targets, id_ in found
    ]


def _parts(manual: Manual, procedure: Procedure) -> list[Json]:
    """Give each part with what tells its look-alikes apart; no variants where there is but one."""
    named = _named(manual, procedure, "part", [each.value for each in procedure.parts])
    found = [matches(manual, procedure, "part", each.value) for each in procedure.parts]
    return [
        {**name, "variants": _variants(targets[0].thing) if targets else []}
        for name, targets in zip(named, found, strict=True)
    ]


def _variants(part: object) -> list[Json]:
    if not isinstance(part, Part) or len(part.variants) < 2:
        return []
    return [
        {
            "name": variant.name.value,
            "tell": variant.tell.value,
            "measures": [
                f"{name}: {_limits_text(size.value, unit_name(size.value.low))}"
                for name, size in variant.measures.items()
            ],
        }
        for variant in part.variants
    ]


def _step(step: Step, times: Mapping[str, str], written_out: WrittenOut) -> Json:
    return {
        "number": step.number,
        "html": str(step.html),
        "text": step.text,
        "torques": [
            {"id": id_, "name": each.name.value, "value": written_out(each)}
            for id_, each in step.torques
        ],
        "cautions": [_caution(hazard) for hazard in step.hazards],
        "readings": [_reading(id_, reading, times[id_]) for id_, reading in step.readings],
        "wants_second_check": step.wants_second_check,
        "takes_off": list(step.takes_off),
        "puts_back": list(step.puts_back),
    }


def _caution(hazard: Hazard) -> Json:
    return {
        "id": hazard.id,
        "word": hazard.signal.value,
        "harm": hazard.harm.value,
        "avoid": hazard.avoid.value,
    }


def _reading(full_id: str, reading: Reading, when: str) -> Json:
    """Give the limits as numbers in the reading's own unit: a card compares like with like."""
    unit = reading.unit.value
    limits = reading.limits.value if reading.limits else None
    return {
        "id": full_id,
        "name": reading.name.value,
        "unit": unit,
        "unit_words": unit_words(unit),
        "when": when,
        "low": _number(limits.low, unit) if limits else None,
        "high": _number(limits.high, unit) if limits else None,
        "limits_text": _limits_text(limits, unit) if limits else "",
        "fluid": reading.fluid.value if reading.fluid else "",
    }


def _number(value: Quantity, unit: str) -> float:
    """Give the bare number for JSON; its unit stands beside it as `unit`."""
    named = unit_named(unit)
    return convert(value, unit).m_as(named.name if named else unit)


def _limits_text(limits: Span, unit: str) -> str:
    """Write both ends in the unit that is read: "1 1/4 to 2 turns"."""
    return f"{show_number(limits.low, unit)} to {show(limits.high, unit)}"
