"""Draws a dipstick with its marks and the levels to expect: the picture says what the words say.

Strokes take the colour of the text around them, so that the drawing follows the dark scheme and
prints black.
"""

from collections.abc import Sequence
from html import escape
from itertools import pairwise

from attrs import frozen

WIDTH, HEIGHT = 340, 304
END = 262
"""Lower end of the blade; below it is room for a label."""

STICK = 110, 150
"""Left and right edge of the blade."""

FULL, MARK = 90, 70
"""Height of the full mark, and from one mark to the next."""

GAP = 24
"""Least distance between two labels, so that none covers another."""

HALO = 'stroke="var(--paper, #fff)" stroke-width="4" stroke-linejoin="round" paint-order="stroke"'
"""Paper around the letters, so that no line runs through them."""


@frozen
class Shown:
    """A level in marks above full, and what stands beside it."""

    marks: float
    label: str
    now: bool = False


def draw(levels: Sequence[Shown], told: str) -> str:
    """Draw the stick with its levels as a whole `<svg>`; `told` says the same in words."""
    heights = _apart([_height(level.marks) for level in levels])
    parts = "".join(_level(level, y) for level, y in zip(levels, heights, strict=True))
    return (
        f'<svg class="uh-plot__drawing" viewBox="0 0 {WIDTH} {HEIGHT}" role="img" '
        'xmlns="http://www.w3.org/2000/svg" font-size="16" '
        'aria-labelledby="uh-plot-title uh-plot-desc">'
        '<title id="uh-plot-title">Level on the dipstick</title>'
        f'<desc id="uh-plot-desc">{escape(told)}</desc>{_stick()}{parts}</svg>'
    )


def _height(marks: float) -> float:
    """Give the height of a level, held on the drawing: 1.1 marks above to 2.2 below full."""
    return FULL - MARK * max(-2.2, min(1.1, marks))


def _apart(heights: list[float]) -> list[float]:
    """Move labels down until none covers another, the highest first."""
    order = sorted(range(len(heights)), key=heights.__getitem__)
    placed = list(heights)
    for above, below in pairwise(order):
        placed[below] = max(placed[below], placed[above] + GAP)
    return placed


def _stick() -> str:
    """Draw the blade, its hatched safe field and the two marks."""
    left, right = STICK
    low = FULL + MARK
    hatch = "".join(
        f'<path d="M{left} {y + 10}L{right} {y}" class="uh-plot__hatch" stroke="currentColor" '
        'stroke-width="1"/>'
        for y in range(FULL, low, 10)
    )
    marks = "".join(
        f'<path d="M{left - 8} {y}H{right}" stroke="currentColor" stroke-width="3"/>'
        f'<text x="{left - 14}" y="{y + 5}" text-anchor="end" fill="currentColor" '
        f'class="uh-plot__label">{word}</text>'
        for y, word in ((FULL, "Full"), (low, "Low"))
    )
    blade = (
        f'<path d="M{left} 8V{END - 14}Q{left} {END} {(left + right) // 2} {END}'
        f'T{right} {END - 14}V8" fill="none" stroke="currentColor" stroke-width="2" '
        'class="uh-plot__axis"/>'
    )
    return hatch + blade + marks


def _level(level: Shown, label_at: float) -> str:
    """Draw one level: a line across the blade and on to its label; broken for the reading now."""
    left, right = STICK
    y = _height(level.marks)
    broken = ' stroke-dasharray="6 4"' if level.now else ""
    css = "uh-plot__measured" if level.now else "uh-plot__curve"
    return (
        f'<path d="M{left} {y:.1f}H{right + 8}L{right + 22} {label_at:.1f}" fill="none" '
        f'class="{css}" stroke="currentColor" stroke-width="3"{broken}/>'
        f'<text x="{right + 28}" y="{label_at + 5:.1f}" fill="currentColor" {HALO} '
        f'class="uh-plot__label">{escape(level.label)}</text>'
    )
