"""Shift windows that cross.

At the same throttle the shift into third comes at a higher road speed than the shift into second.
Where the windows overlap, no road test can tell which shift was late. The same shift comes no
earlier with more throttle, and the way down lies below the way up, or the unit hunts between two
gears. A shift has one window a throttle.

Good:

```yaml title="families/kestrel-3.md"
shift_windows:
  - {shift: 1-2, throttle: light, speed: 16 to 22 km/h}
  - {shift: 2-3, throttle: light, speed: 28 to 36 km/h}
```

Bad:

```yaml title="families/kestrel-3.md"
shift_windows:
  - {shift: 1-2, throttle: light, speed: 16 to 32 km/h}
  - {shift: 2-3, throttle: light, speed: 28 to 36 km/h}
```
"""

from collections.abc import Iterator
from itertools import pairwise

from underhoist.finding import Finding, Severity
from underhoist.model import Manual, ShiftWindow, UnitFamily
from underhoist.rules._pages import Pages

CODE = "windows-cross"
SEVERITY = Severity.STOP
PAGES = Pages((UnitFamily,))

THROTTLES = ("light", "half", "full")
MEND = "Look whether one of the speeds is wrong or in another unit."


def check_page(manual: Manual, family: UnitFamily) -> Iterator[Finding]:
    """Windows of one throttle that overlap, and windows stated twice."""
    yield from _twice(family)
    yield from _throttles(family)
    yield from _hunting(family)
    for upward in (True, False):
        for throttle in THROTTLES:
            windows = [
                window
                for window in family.shift_windows
                if window.throttle.value == throttle and _goes_up(window) is upward
            ]
            yield from _crossing(sorted(windows, key=lambda window: window.shift.value))


def _goes_up(window: ShiftWindow) -> bool:
    lower, _, upper = window.shift.value.partition("-")
    return int(lower) < int(upper)


def _twice(family: UnitFamily) -> Iterator[Finding]:
    seen: dict[tuple[str, str], ShiftWindow] = {}
    for window in family.shift_windows:
        first = seen.setdefault((window.shift.value, window.throttle.value), window)
        if first is not window:
            line = first.shift.at.line
            wrong = f"{window.shift} at {window.throttle} throttle stands on line {line} already."
            yield Finding(
                CODE, SEVERITY, window.shift.at, window.shift.written, wrong, "Keep one of the two."
            )


def _throttles(family: UnitFamily) -> Iterator[Finding]:
    """Find windows of one shift that come earlier with more throttle."""
    for shift in dict.fromkeys(window.shift.value for window in family.shift_windows):
        by_throttle = sorted(
            (window for window in family.shift_windows if window.shift.value == shift),
            key=lambda window: THROTTLES.index(window.throttle.value),
        )
        for less, more in pairwise(by_throttle):
            if (
                more.speed.value.low < less.speed.value.low
                and less.throttle.value != more.throttle.value
            ):
                wrong = (
                    f"{shift} begins earlier at {more.throttle} throttle than at {less.throttle} "
                    f"({less.speed.written}, line {less.speed.at.line})."
                )
                yield Finding(CODE, SEVERITY, more.speed.at, more.speed.written, wrong, MEND)


def _hunting(family: UnitFamily) -> Iterator[Finding]:
    """Find shifts down that reach into the window of the shift up between the same gears."""
    up = {(each.shift.value, each.throttle.value): each for each in family.shift_windows}
    for down in family.shift_windows:
        above = up.get((down.shift.value[::-1], down.throttle.value))
        if not _goes_up(down) and above and down.speed.value.high > above.speed.value.low:
            wrong = (
                f"At {down.throttle} throttle {down.shift} reaches into {above.shift} "
                f"({above.speed.written}, line {above.speed.at.line}): the unit would hunt."
            )
            yield Finding(CODE, SEVERITY, down.speed.at, down.speed.written, wrong, MEND)


def _crossing(windows: list[ShiftWindow]) -> Iterator[Finding]:
    """Neighbours in the order of their gears where the upper begins below the end of the lower."""
    for lower, upper in pairwise(windows):
        if (
            lower.shift.value != upper.shift.value
            and upper.speed.value.low < lower.speed.value.high
        ):
            wrong = (
                f"At {upper.throttle} throttle {upper.shift} begins before {lower.shift} "
                f"({lower.speed.written}, line {lower.speed.at.line}) has ended."
            )
            yield Finding(CODE, SEVERITY, upper.speed.at, upper.speed.written, wrong, MEND)
