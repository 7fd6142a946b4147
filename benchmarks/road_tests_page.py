"""The table of benchmarks/road_tests.py, and the manual's page around it."""

from __future__ import annotations

from typing import Any

CAUSES = {
    "as-specified": "nothing wrong",
    "scale": "all shifts off by one factor",
    "vacuum-loss": "vacuum loss",
    "one-shift": "one shift off alone",
    "full-throttle": "full-throttle shifts at every throttle",
    "kick-down": "kick-down off alone, and driven",
    "cable-tight": "throttle cable 3 to 12 mm too tight",
    "cable-slack": "throttle cable 3 to 15 mm too slack",
    "cable-hangs": "throttle cable that sticks 7 to 35 mm out",
}
OUTCOMES = ("named", "open", "wrong", "no single cause")

PAGE = """---
kind: page
title: How often a road test names the cause
summary: What the shift check makes of road tests whose cause is known because they are made up.
---

The [shift check](calc:shift-check) compares explanations and says when two fit alike. So that you
know how far to trust it, {tests:,} road tests of each cause were made up by a computer and given to
it: with the scatter of good units, and with readings that are off by 3 km/h or 5 %, whichever is
more. The figures are shares of those tests. None of them was driven. The rows of the throttle
cable are of a <family:heron-4>, those above of a <family:kestrel-3>.

{table}

"Named": it named the cause, and nothing else. "Left open": the cause stood among explanations that
it could not tell apart. "Wrong": the cause was not among those it gave. "No single cause": it found
none that fits.

Three things to take to the vehicle:

- Two readings are too few: the cause is left open more often than named, and missed more often.
  Drive all the shifts of the [road test](procedure:road-test-before).
- A kick-down that is held on and a complete loss of vacuum give the same speeds. No road test tells
  them apart: put the [gauge on the line](procedure:signal-vacuum-supply).
- A throttle cable that is a few millimetres off is often left open: too tight and sticking make
  light throttle late alike, and a little slack hides in the windows. Measure
  [its gap and its travel](procedure:heron-cable), whatever the road test says.

The counts are in `benchmarks/results/road_tests.json`. `python benchmarks/road_tests.py` makes them
anew, and this page.
"""


def table(data: dict[str, Any]) -> str:
    """The counts as shares in percent, a row for each cause and number of readings."""
    head = ["cause", "readings", "named", "left open", "wrong", "no single cause"]
    rows = [head, ["---", *["---:"] * (len(head) - 1)]]
    for counts in data["counted"]:
        shares = [f"{100 * counts.get(each, 0) / data['tests']:.0f} %" for each in OUTCOMES]
        rows.append([CAUSES[counts["cause"]], str(counts["readings"]), *shares])
    return "\n".join(f"| {' | '.join(row)} |" for row in rows) + "\n"


def page(data: dict[str, Any]) -> str:
    """The manual's page, as an author would have typed it."""
    return PAGE.format(tests=data["tests"], table=table(data).strip())
