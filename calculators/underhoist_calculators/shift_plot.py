"""Draws shift speed against the signal: plain lines, labelled directly, readable at 340 px.

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

LETTER = 8
"""Width of a letter, about."""

STEPS = 48
"""Straight pieces of a curve: finer than a line is wide."""

HATCH = (
    '<defs><pattern id="uh-plot-hatch" width="6" height="6" patternUnits="userSpaceOnUse" '
    'patternTransform="rotate(45)"><path d="M0 0V6" stroke="currentColor" stroke-width="1" '
    'class="uh-plot__hatch"/></pattern></defs>'
)

HALO = 'stroke="var(--paper, #fff)" stroke-width="4" stroke-linejoin="round" paint-order="stroke"'
"""Paper around the letters, so that no line runs through them."""


@frozen(kw_only=True)
class Axis:
    """The axis of the signal: what stands on it and what the drawing says in words.

    Levels fall as the throttle opens; where `turned`, the axis shows `widest` less the level, so
    that the throttle opens to the right.
    """

    title: str
    caption: str
    told: str
    changed: str
    widest: float
    step: int
    turned: bool = False


def vacuum_axis(given: ShiftMap) -> Axis:
    """Give the axis of the signal vacuum, in inHg."""
    return Axis(
        title="Shift speed against signal vacuum",
        caption="Throttle and vacuum at the source, inHg",
        told=describe(given),
        changed=f"{number_text(given.loss, figures=3)} inHg lost",
        widest=2 * ceil(given.widest / 2),
        step=4,
    )


@frozen
class Scale:
    """From a level of the signal and the windows' own unit of speed to the drawing."""

    axis: Axis
    fastest: float

    def at(self, level: float, speed: float) -> tuple[float, float]:
        """Give the place of a point in the drawing."""
        shown = self.axis.widest - level if self.axis.turned else level
        return self.across(shown), BOTTOM - (BOTTOM - TOP) * speed / self.fastest

    def across(self, shown: float) -> float:
        """Give the place of a number on the axis of the signal."""
        return LEFT + (RIGHT - LEFT) * shown / self.axis.widest


def draw(given: ShiftMap, axis: Axis) -> str:
    """Draw the map as a whole `<svg>` with title and description."""
    in_unit = quantity(1, "kilometre_per_hour").m_as(given.unit)
    tops = [band[1] for line in given.lines for band in line.windows.values()]
    tops += [line.measured or 0 for line in given.lines]
    step = _step(max(tops) * in_unit)
    fastest = step * ceil(max(tops) * 1.08 * in_unit / step)
    scale = Scale(axis, fastest)
    parts = (
        HATCH,
        *_axes(scale, given, step),
        *(part for line in given.lines for part in _line(scale, given, line, in_unit)),
    )
    return (
        f'<svg class="uh-plot__drawing" viewBox="0 0 {WIDTH} {HEIGHT}" role="img" '
        'xmlns="http://www.w3.org/2000/svg" font-size="16" '
        'aria-labelledby="uh-plot-title uh-plot-desc">'
        f'<title id="uh-plot-title">{escape(axis.title)}</title>'
        f'<desc id="uh-plot-desc">{escape(axis.told)}</desc>{"".join(parts)}</svg>'
    )


def describe(given: ShiftMap) -> str:
    """Say in words what the drawing of the vacuum shows."""
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
    """Draw both axes, their numbers, and the throttle under its level."""
    yield _path([(LEFT, TOP - 8), (LEFT, BOTTOM), (RIGHT, BOTTOM)], "uh-plot__axis", 1.2)
    for speed in range(0, int(scale.fastest) + 1, step):
        _, y = scale.at(0, speed)
        yield _path([(LEFT - 4, y), (LEFT, y)], "uh-plot__axis", 1.2)
        yield _text(LEFT - 8, y + 5, str(speed), "end")
    for number in range(0, int(scale.axis.widest) + 1, scale.axis.step):
        x = scale.across(number)
        yield _path([(x, BOTTOM), (x, BOTTOM + 4)], "uh-plot__axis", 1.2)
        yield _text(x, BOTTOM + 20, str(number), "middle")
    for throttle, level in given.levels.items():
        x, _ = scale.at(level, 0)
        yield _text(x, BOTTOM + 39, throttle, _anchor(x))
    yield _text(4, 16, f"Road speed, {unit_symbol(given.unit)}", "start")
    yield _text(RIGHT, BOTTOM + 60, scale.axis.caption, "end")


def _anchor(x: float) -> str:
    """Keep a short word under its place on the paper."""
    if x < LEFT + 20:
        return "start"
    return "end" if x > RIGHT - 8 else "middle"


def _line(scale: Scale, given: ShiftMap, line: Line, in_unit: float) -> Iterator[str]:
    """Draw one shift: band, curve, curve with the loss, reading."""

    def curve(balance: Balance, loss: float = 0.0) -> list[tuple[float, float]]:
        points = _points(balance, loss, scale.axis.widest)
        return [scale.at(v, n * in_unit) for v, n in points]

    turned = scale.axis.turned
    if line.low is not None and line.high is not None:
        band = [*curve(line.low), *reversed(curve(line.high))]
        yield _path(band, "uh-plot__band", 0.8, fill="url(#uh-plot-hatch)", closed=True)
    solid = curve(line.balance)
    yield _path(solid, "uh-plot__curve", 2.4)
    top = curve(line.high)[0] if line.high is not None else solid[0]
    yield _beside(top, line.shift, 6, right=not turned, bold=True)
    if given.loss and (lost := curve(line.balance, given.loss)):
        yield _path(lost, "uh-plot__lost", 1.6, dashed=True)
        if line is given.lines[-1]:
            inwards = lost if turned else lost[::-1]
            place = next((each for each in inwards if each[0] <= MIDDLE), inwards[-1])
            yield _changed(place, scale.axis, below=given.loss < 0)
    if line.measured is not None:
        x, y = scale.at(given.source, line.measured * in_unit)
        yield _ring(x, y)
        words = f"{line.shift}: {given.number(line.measured)}"
        yield _beside((x, y + 11), words, 11, right=x < MIDDLE, bold=True)


def _changed(place: tuple[float, float], axis: Axis, *, below: bool) -> str:
    """Name the broken line, on the side that is away from the plain one."""
    x, y = place
    if below:
        return _beside((x, y + 26), axis.changed, 6, right=True)
    return _beside(place, axis.changed, 12, right=not axis.turned)


def _beside(
    place: tuple[float, float], words: str, away: int, *, right: bool, bold: bool = False
) -> str:
    """Write words a little above a place, to its right or left, as far as the paper goes."""
    x, y = place
    wide = LETTER * len(words)
    if right:
        return _text(min(x + away, WIDTH - wide), y - 5, words, "start", bold=bold)
    return _text(max(x - away, wide), y - 5, words, "end", bold=bold)


def _points(balance: Balance, loss: float, widest: float) -> list[tuple[float, float]]:
    """Follow a curve from no signal left to its limit, or to the edge; nothing beyond the limit.

    It steps in speed, whose vacuum is a closed form; the other way about takes a search.
    """
    edge = min(balance.limit + loss, widest)
    if edge <= 0:
        return []
    if loss >= edge:
        return [(0.0, balance.ceiling), (edge, balance.ceiling)]
    begin = max(loss, 0.0)
    fast, slow = balance.speed(begin - loss), balance.speed(edge - loss)
    speeds = [fast + (slow - fast) * i / STEPS for i in range(1, STEPS)]
    between = [(balance.vacuum(speed) + loss, speed) for speed in speeds]
    return [(0.0, fast), (begin, fast), *between, (edge, slow)]


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
