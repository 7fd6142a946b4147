"""`unit-wrong-kind`: exact wording, and silence where nothing is wrong."""


def test_pounds_as_torque(manual):
    manual.keys(
        "kestrel-3/set-band.md",
        """\
fasteners:
  cover-bolts: {name: Cover bolts, torque: 12 lb}
""",
    )
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:17:44 unit-wrong-kind (stop)",
            "12 lb",
            "lb is a unit of a mass, not of a torque.",
            "Write 12 N·m, 12 lbf·ft or 12 lbf·in.",
        )
    ]


def test_scale(manual):
    manual.keys("tools/inch-pound-wrench.md", "scale: mm\n")
    assert manual.found() == [
        (
            "tools/inch-pound-wrench.md:6:8 unit-wrong-kind (stop)",
            "mm",
            "scale is a unit of torque; mm is not.",
            "Write N·m, lbf·ft, lbf·in, ozf·in, kgf·m or kgf·cm.",
        )
    ]


def test_limits(manual):
    manual.keys(
        "kestrel-3/count-turns.md",
        """\
readings:
  turns-to-seat: {name: Turns, unit: turn, when: as found, limits: 1 to 2 mm}
""",
    )
    assert manual.found() == [
        (
            "kestrel-3/count-turns.md:10:68 unit-wrong-kind (stop)",
            "1 to 2 mm",
            "The limits are a length; the unit turn is that of a number of turns.",
            "Write the limits and the unit alike.",
        )
    ]


def test_degrees_are_turns(manual):
    manual.keys(
        "kestrel-3/count-turns.md",
        """\
readings:
  turns-to-seat: {name: Turns, unit: turn, when: as found, limits: 180 to 360 deg}
""",
    )
    assert manual.found() == []
