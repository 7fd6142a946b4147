"""What tells the transmission how far the pedal is down: signal vacuum, or a throttle cable.

Both work on the shift valves alike, so a cable that is too tight shifts as lost vacuum does. Only
the words differ, and the measure: a share of the way from light to full throttle, 0 to 1.
"""

from attrs import evolve

from underhoist_calculators.declare import Choice
from underhoist_calculators.shift_explanations import Comparison, Explanation

VACUUM, CABLE = "vacuum", "cable"

SIGNALS = (Choice(VACUUM, "Signal vacuum"), Choice(CABLE, "Throttle cable"))

LOSS, TIGHT = "vacuum-loss", "cable-tight"
"""Codes of the explanation, for either signal."""


def by_cable(found: Comparison, light: float) -> Comparison:
    """Tell a comparison for a family with a cable; `light` is the light throttle's vacuum, inHg."""
    kept = {id(each): _told(each, light) for each in found.tried}

    def told(each: Explanation) -> Explanation:
        return kept.get(id(each), each)

    return evolve(
        found,
        best=found.best and told(found.best),
        rivals=tuple(told(each) for each in found.rivals),
        not_judged=tuple(TIGHT if code == LOSS else code for code in found.not_judged),
        tried=tuple(told(each) for each in found.tried),
    )


def _told(each: Explanation, light: float) -> Explanation:
    if each.code != LOSS:
        return each
    shares = {end: getattr(each, end) / light for end in ("value", "low", "high")}
    return evolve(each, code=TIGHT, **shares)
