"""Draws a torque wrench with its adapter from above: where L, E and the angle are measured.

Strokes take the colour of the text around them, so that the drawing follows the dark scheme and
prints black.
"""

from html import escape
from math import cos, radians, sin

from underhoist_calculators.adapter import Arm
from underhoist_calculators.units import number_text, show, unit_name

WIDTH, HEIGHT = 340, 256
LONGEST = 250
"""Room from the hand to the farther of drive and fastener."""

ALONG = 146
"""Height of the wrench's axis."""

HALO = 'stroke="var(--paper, #fff)" stroke-width="4" stroke-linejoin="round" paint-order="stroke"'
"""Paper around the letters, so that no line runs through them."""


def draw(arm: Arm) -> str:
    """Draw the arm true to scale as a whole `<svg>`."""
    length = arm.wrench.magnitude
    ratio = arm.adapter.m_as(unit_name(arm.wrench)) / length
    angle = radians(arm.angle.m_as("degree"))
    along = ratio * cos(angle)
    wrench = min(LONGEST / max(1.0, 1 + along), 100 / max(ratio * sin(angle), 0.01))
    hand, drive = 40.0, 40.0 + wrench
    fastener = drive + wrench * along, ALONG - wrench * ratio * sin(angle)
    return (
        f'<svg class="uh-plot__drawing" viewBox="0 0 {WIDTH} {HEIGHT}" role="img" '
        'xmlns="http://www.w3.org/2000/svg" font-size="16" '
        'aria-labelledby="uh-plot-title uh-plot-desc">'
        '<title id="uh-plot-title">Wrench and adapter from above</title>'
        f'<desc id="uh-plot-desc">{escape(describe(arm))}</desc>'
        f"{_wrench(hand, drive)}{_adapter(drive, fastener)}"
        f"{_measures(arm, hand, drive, fastener)}</svg>"
    )


def describe(arm: Arm) -> str:
    """Say in words what the drawing shows."""
    return (
        f"The wrench is {show(arm.wrench)} from grip to drive, the adapter {show(arm.adapter)} "
        f"from drive to fastener at {show(arm.angle)}. From hand to fastener, along the wrench: "
        f"{show(arm.effective, digits=_digits(arm.effective.magnitude))}."
    )


def _digits(number: float) -> int:
    return 0 if number >= 100 else 1 if number >= 10 else 2


def _wrench(hand: float, drive: float) -> str:
    """Draw the bar, thick at the grip, and the square drive."""
    grip = min(60.0, (drive - hand) * 0.5)
    return (
        f'<path d="M{hand:.1f} {ALONG}H{drive:.1f}" class="uh-plot__curve" stroke="currentColor" '
        'stroke-width="6"/>'
        f'<path d="M{hand - grip / 2:.1f} {ALONG}H{hand + grip / 2:.1f}" class="uh-plot__curve" '
        'stroke="currentColor" stroke-width="14" stroke-linecap="round"/>'
        f'<path d="M{drive - 7:.1f} {ALONG - 7}h14v14h-14z" fill="var(--paper, #fff)" '
        'stroke="currentColor" stroke-width="2"/>'
    )


def _adapter(drive: float, fastener: tuple[float, float]) -> str:
    """Draw the adapter and the head of the fastener."""
    x, y = fastener
    return (
        f'<path d="M{drive:.1f} {ALONG}L{x:.1f} {y:.1f}" class="uh-plot__measured" '
        'stroke="currentColor" stroke-width="4" stroke-dasharray="8 4"/>'
        f'<circle cx="{x:.1f}" cy="{y:.1f}" r="9" fill="var(--paper, #fff)" '
        'stroke="currentColor" stroke-width="3"/>'
        f'<circle cx="{x:.1f}" cy="{y:.1f}" r="2.5" fill="currentColor"/>'
    )


def _measures(arm: Arm, hand: float, drive: float, fastener: tuple[float, float]) -> str:
    """Set the lengths below the wrench, each with its arrow line, and name the adapter."""
    x, y = fastener
    low, lower = ALONG + 36, ALONG + 76
    digits = _digits(arm.effective.magnitude)
    effective = f"{show(arm.effective, digits=digits)} to the fastener"
    adapter = f"E {show(arm.adapter)}, θ {number_text(arm.angle.m_as('degree'))}°"
    return (
        _dimension(hand, drive, low, f"L {show(arm.wrench)}")
        + _dimension(hand, x, lower, effective)
        + f'<text x="{min(max(x, 70.0), WIDTH - 70.0):.1f}" y="{min(y, ALONG) - 22:.1f}" '
        f'text-anchor="middle" fill="currentColor" {HALO} class="uh-plot__label">'
        f"{escape(adapter)}</text>"
    )


def _dimension(start: float, end: float, y: float, label: str) -> str:
    """Draw a line between two ticks with its label below."""
    middle = min(max((start + end) / 2, 90.0), WIDTH - 90.0)
    return (
        f'<path d="M{start:.1f} {y - 6}v12M{end:.1f} {y - 6}v12M{start:.1f} {y}H{end:.1f}" '
        'fill="none" class="uh-plot__axis" stroke="currentColor" stroke-width="1.5"/>'
        f'<text x="{middle:.1f}" y="{y + 20:.1f}" text-anchor="middle" fill="currentColor" {HALO} '
        f'class="uh-plot__label">{escape(label)}</text>'
    )
