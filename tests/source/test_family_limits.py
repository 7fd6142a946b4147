"""Line pressure, stall speed and throttle cable: units, order and words that are refused."""

import pytest

FAMILY = """---
kind: unit-family
title: Wren 2
summary: Invented.
gear_train:
  type: simpson
  teeth: {sun: 31, ring: 73}
reference: {tyre: 215/75 R 15, axle: 3.50}
LIMIT
fluid:
  specification: Dunmere D2
  service_fill: 4.5 L
  dry_fill: 8.8 L
  level: {selector: park, temperature: 65 to 80 degC, between_marks: 0.5 L}
---
"""
STALL = "stall: {engine: 1500 to 1700 r/min, longest: 5 s, rest: 60 s}"
PRESSURE = (
    "line_pressure: [{selector: park, throttle: full, vacuum: 0 inHg, engine: 700 r/min, "
    "pressure: 118 to 132 psi}]"
)
CABLE = "throttle_cable: {gap: 0.5 to 1.0 mm, travel: 36 to 38 mm, turn: 1 mm}"


@pytest.mark.parametrize("limit", [STALL, PRESSURE, CABLE])
def test_accepts_what_the_manual_writes(loaded, limit):
    assert loaded({"wren-2.md": FAMILY.replace("LIMIT", limit)}).findings == ()


@pytest.mark.parametrize(
    ("limit", "code"),
    [
        (STALL.replace("r/min", "km/h"), "unit-wrong-kind"),
        (STALL.replace("5 s", "5 inHg"), "unit-wrong-kind"),
        (STALL.replace("60 s", "0 s"), "impossible-range"),
        (STALL.replace("1500 to 1700", "1700 to 1500"), "impossible-range"),
        (PRESSURE.replace("132 psi", "132 mm"), "unit-wrong-kind"),
        (PRESSURE.replace("full", "open"), "wrong-value"),
        (PRESSURE.replace("park", "drove"), "wrong-value"),
        (CABLE.replace("1 mm}", "1 psi}"), "unit-wrong-kind"),
        (CABLE.replace("gap: 0.5 to 1.0 mm, ", ""), "missing-key"),
        (CABLE.replace("gap", "gpa"), "unknown-key"),
    ],
)
def test_refuses_another_unit_order_or_word(loaded, limit, code):
    found = loaded({"wren-2.md": FAMILY.replace("LIMIT", limit)}).findings
    assert code in [each.code for each in found]
    assert all(each.at.line == 9 for each in found)
