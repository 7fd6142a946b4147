"""The arithmetic of a staged fill: how much before starting, how much by the stick, the ledger."""

from attrs import frozen

from underhoist_calculators.fluid_expansion import correction_factor, rise
from underhoist_calculators.units import Quantity, Span, quantity

HELD_BACK = quantity(0.5, "litre")
"""Least volume left out of the first fill; 10 % where that is more. Common practice, no source."""

GAP = quantity(0.3, "litre")
"""Difference between in and out that is worth a name. Common practice, no source."""

READABLE = 0.1
"""Marks: what a film of fluid on a stick hides. Common practice, no source."""

HALF_MARK = 0.5
"""Marks: the largest step near the top."""

PLUG_SHARE = 0.9
"""Share of a pan-down drain that runs from the plug alone. Common practice, no source."""

CONVERTER_SHARE = 0.85
"""Share of the dry fill that leaves pan and drained converter. Common practice, no source."""

JUG = {"millilitre": 50.0, "US_fluid_ounce": 1.0, "imperial_fluid_ounce": 1.0}
"""Finest step of a measuring jug by unit; 0.05 in every other unit."""


@frozen(kw_only=True)
class Sump:
    """What the family says of its fluid and its dipstick."""

    service_fill: Quantity
    dry_fill: Quantity
    between_marks: Quantity
    rule: Span
    density: Quantity


def drained_share(method: str, sump: Sump) -> float:
    """Give the share of the dry fill that comes out by `method`: plug, pan, converter or empty."""
    pan = (sump.service_fill / sump.dry_fill).m_as("dimensionless")
    return {
        "plug": PLUG_SHARE * pan,
        "pan": pan,
        "converter": max(pan, CONVERTER_SHARE),
        "empty": 1.0,
    }[method]


def first_fill(out: Quantity, service_fill: Quantity) -> Quantity:
    """Give what goes in before starting: out less 0.5 L or 10 %, never above the service fill."""
    held_back = max(HELD_BACK, out * 0.1)
    return max(quantity(0, "litre"), min(out - held_back, service_fill))


def rule_temperature(temperature: Quantity, rule: Span) -> Quantity:
    """Give the temperature of the level rule that is nearest to the fluid's."""
    return min(max(temperature, rule.low), rule.high)


def level_at_rule(reading: Quantity, temperature: Quantity, sump: Sump) -> Quantity:
    """Give the reading as it will stand at the rule: all expansion shows in the pan."""
    at_rule = rule_temperature(temperature, sump.rule)
    risen = rise(sump.dry_fill, temperature, at_rule, sump.density)
    marks = (risen / sump.between_marks).m_as("dimensionless")
    return quantity(reading.m_as("mark_above_full") + marks, "mark_above_full")


def volume_of(marks: float, temperature: Quantity, sump: Sump) -> Quantity:
    """Give the volume at 15 °C, as poured, that fills so many marks at `temperature`."""
    return sump.between_marks * (marks * correction_factor(temperature, sump.density))


def top_up_steps(missing: float) -> tuple[float, ...]:
    """Split the missing marks: down to one mark at once, then half marks at most."""
    steps: list[float] = []
    if missing > 1:
        steps.append(missing - 1)
        missing = 1.0
    while missing > HALF_MARK:
        steps.append(HALF_MARK)
        missing -= HALF_MARK
    return (*steps, missing) if missing > 0 else tuple(steps)


def pours(missing: float, temperature: Quantity, sump: Sump, unit: str) -> tuple[Quantity, ...]:
    """Give what to pour, step by step, as a jug shows it; together never past the mark."""
    poured: list[Quantity] = []
    marks, done = 0.0, quantity(0, unit)
    for step in top_up_steps(missing):
        marks += step
        # Rounding what is in by then, not each step, keeps the last step near the mark.
        reached = jug(volume_of(marks, temperature, sump), unit)
        if reached > done:
            poured.append(reached - done)
            done = reached
    return tuple(poured)


def jug(volume: Quantity, unit: str) -> Quantity:
    """Round down to what a measuring jug shows, so that steps never add up past the mark."""
    step = JUG.get(unit, 0.05)
    # The small addition keeps 0.30 from becoming 0.25 for want of a last binary digit.
    return quantity(int(volume.m_as(unit) / step + 1e-9) * step, unit)
