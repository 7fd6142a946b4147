"""Draws shift speed against signal vacuum: plain lines, labelled directly, readable at 340 px.

Strokes take the colour of the text around them, so that the drawing follows the dark scheme and
prints black.
"""

from collections.abc import Iterator
from html import escape
from math import ceil

from attrs import frozen

from underhoist_calculators.shift_balance import Balance
from underhoist_calculators.shift_lines import Line, ShiftMap
from underhoist_calculators.units import number_text, quantity, unit_symbol

WIDTH, HEIGHT = 340, 356
LEFT, RIGHT, TOP, BOTTOM = 44, 330, 34, 288
"""The field of the plot, in units of the drawing."""

MIDDLE = (LEFT + RIGHT) / 2
"""Where a curve is named: far enough from both sides for the words."""

STEPS = 48
"""Straight pieces of a curve: finer than a line is wide."""

HATCH = (
    '<defs><pattern id="uh-plot-hatch" width="6" height="6" patternUnits="userSpaceOnUse" '
    'patternTransform="rotate(45)"><path d="M0 0V6" stroke="currentColor" stroke-width="1" '
    'class="uh-plot__hatch"/></pattern></defs>'
)

HALO = 'stroke="var(--paper, #fff)" stroke-width="4" stroke-linejoin="round" paint-order="stroke"'
"""Paper around the letters, so that no line runs through them."""


@frozen
class Scale:
    """From inHg and the windows' own unit of speed to the drawing."""

    widest: float
    fastest: float

    def at(self, vacuum: float, speed: float) -> tuple[float, float]:
        """Give the place of a point in the drawing."""
        x = LEFT + (RIGHT - LEFT) * vacuum / self.widest
        return x, BOTTOM - (BOTTOM - TOP) * speed / self.fastest


def draw(given: ShiftMap) -> str:
    """Draw the map as a whole `<svg>` with title and description."""
    in_unit = quantity(1, "kilometre_per_hour").m_as(given.unit)
    tops = [band[1] for line in given.lines for band in line.windows.values()]
    tops += [line.measured or 0 for line in given.lines]
    step = _step(max(tops) * in_unit)
    fastest = step * ceil(max(tops) * 1.08 * in_unit / step)
    scale = Scale(2 * ceil(given.widest / 2), fastest)
    parts = (
        HATCH,
        *_axes(scale, given, step),
        *(part for line in given.lines for part in _line(scale, given, line, in_unit)),
    )
    return (
        f'<svg class="uh-plot__drawing" viewBox="0 0 {WIDTH} {HEIGHT}" role="img" '
        'xmlns="http://www.w3.org/2000/svg" font-size="16" '
        'aria-labelledby="uh-plot-title uh-plot-desc">'
        '<title id="uh-plot-title">Shift speed against signal vacuum</title>'
        f'<desc id="uh-plot-desc">{escape(describe(given))}</desc>{"".join(parts)}</svg>'
    )


def describe(given: ShiftMap) -> str:
    """Say in words what the drawing shows."""
    told = [
        f"{line.shift}: {given.speed(line.balance.ceiling)} without vacuum, falling to "
        f"{given.speed(line.balance.floor)} at {number_text(line.balance.limit, figures=3)} inHg."
        for line in given.lines
    ]
    if given.loss:
        lost = number_text(given.loss, figures=3)
        told.append(f"Broken lines: with {lost} inHg lost, each shift comes later.")
    told += [
        f"Measured: {line.shift} at {given.speed(line.measured)} with "
        f"{number_text(given.source, figures=3)} inHg."
        for line in given.lines
        if line.measured is not None
    ]
    return " ".join(told)


def _step(fastest: float) -> int:
    """Choose the spacing of the speed axis, so that four to seven numbers stand on it."""
    return next(step for step in (5, 10, 20, 25, 50, 100) if fastest / step < 7)


def _axes(scale: Scale, given: ShiftMap, step: int) -> Iterator[str]:
    """Draw both axes, their numbers, and the throttle under its vacuum."""
    yield _path([(LEFT, TOP - 8), (LEFT, BOTTOM), (RIGHT, BOTTOM)], "uh-plot__axis", 1.2)
    for speed in range(0, int(scale.fastest) + 1, step):
        _, y = scale.at(0, speed)
        yield _path([(LEFT - 4, y), (LEFT, y)], "uh-plot__axis", 1.2)
        yield _text(LEFT - 8, y + 5, str(speed), "end")
    for vacuum in range(0, int(scale.widest) + 1, 4):
        x, _ = scale.at(vacuum, 0)
        yield _path([(x, BOTTOM), (x, BOTTOM + 4)], "uh-plot__axis", 1.2)
        yield _text(x, BOTTOM + 20, str(vacuum), "middle")
    for throttle, vacuum in given.vacuums.items():
        x, _ = scale.at(vacuum, 0)
        yield _text(x, BOTTOM + 39, throttle, "start" if x < LEFT + 20 else "middle")
    yield _text(4, 16, f"Road speed, {unit_symbol(given.unit)}", "start")
    yield _text(RIGHT, BOTTOM + 60, "Throttle and vacuum at the source, inHg", "end")


def _line(scale: Scale, given: ShiftMap, line: Line, in_unit: float) -> Iterator[str]:
    """Draw one shift: band, curve, curve with the loss, reading."""

    def curve(balance: Balance, loss: float = 0.0) -> list[tuple[float, float]]:
        return [scale.at(v, n * in_unit) for v, n in _points(balance, loss, scale.widest)]

    if line.low is not None and line.high is not None:
        band = [*curve(line.low), *reversed(curve(line.high))]
        yield _path(band, "uh-plot__band", 0.8, fill="url(#uh-plot-hatch)", closed=True)
    solid = curve(line.balance)
    yield _path(solid, "uh-plot__curve", 2.4)
    top = curve(line.high)[0] if line.high is not None else solid[0]
    yield _text(top[0] + 6, top[1] - 6, line.shift, "start", bold=True)
    if given.loss:
        lost = curve(line.balance, given.loss)
        yield _path(lost, "uh-plot__lost", 1.6, dashed=True)
        if line is given.lines[-1]:
            words = f"{number_text(given.loss, figures=3)} inHg lost"
            x, y = next(place for place in reversed(lost) if place[0] <= MIDDLE)
            yield _text(x + 12, y - 4, words, "start")
    if line.measured is not None:
        x, y = scale.at(given.source, line.measured * in_unit)
        yield _ring(x, y)
        yield _text(x - 11, y + 6, f"{line.shift}: {given.number(line.measured)}", "end", bold=True)


def _points(balance: Balance, loss: float, widest: float) -> list[tuple[float, float]]:
    """Follow a curve from no vacuum to its limit, or to the edge of the drawing.

    It steps in speed, whose vacuum is a closed form; the other way about takes a search.
    """
    edge = min(balance.limit + loss, widest)
    if loss >= edge:
        return [(0.0, balance.ceiling), (edge, balance.ceiling)]
    fast, slow = balance.ceiling, balance.speed(edge - loss)
    speeds = [fast + (slow - fast) * i / STEPS for i in range(1, STEPS)]
    between = [(balance.vacuum(speed) + loss, speed) for speed in speeds]
    return [(0.0, fast), (loss, fast), *between, (edge, slow)]


def _path(  # noqa: PLR0913 - one mark of the drawing
    points: list[tuple[float, float]],
    css: str,
    width: float,
    *,
    fill: str = "none",
    closed: bool = False,
    dashed: bool = False,
) -> str:
    places = "L".join(f"{x:.1f} {y:.1f}" for x, y in points)
    dash = ' stroke-dasharray="6 4"' if dashed else ""
    return (
        f'<path class="{css}" d="M{places}{"Z" if closed else ""}" fill="{fill}" '
        f'stroke="currentColor" stroke-width="{width}"{dash}/>'
    )


def _ring(x: float, y: float) -> str:
    return (
        f'<circle class="uh-plot__measured" cx="{x:.1f}" cy="{y:.1f}" r="6" fill="none" '
        'stroke="currentColor" stroke-width="2.4"/>'
    )


def _text(x: float, y: float, words: str, anchor: str, *, bold: bool = False) -> str:
    weight = ' font-weight="700"' if bold else ""
    return (
        f'<text class="uh-plot__label" x="{x:.1f}" y="{y:.1f}" text-anchor="{anchor}" '
        f'fill="currentColor" {HALO}{weight}>{escape(words)}</text>'
    )
