"""`unit-unknown`: exact wording, and silence where nothing is wrong."""


def test_near(manual):
    manual.keys(
        "kestrel-3/set-band.md",
        """\
fasteners:
  cover-bolts: {name: Cover bolts, torque: 9 lbf.fts}
""",
    )
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:17:44 unit-unknown (stop)",
            "9 lbf.fts",
            '"lbf.fts" is not a unit known here.',
            "Write 9 lbf·ft, if that is meant.",
        )
    ]


def test_reading(manual):
    manual.keys(
        "kestrel-3/count-turns.md",
        """\
readings:
  turns-to-seat: {name: Turns, unit: furlong, when: as found}
""",
    )
    assert manual.found() == [
        (
            "kestrel-3/count-turns.md:10:38 unit-unknown (stop)",
            "furlong",
            '"furlong" is not a unit known here.',
            "Write a unit such as turn, inHg or km/h.",
        )
    ]


def test_scale(manual):
    manual.keys("tools/inch-pound-wrench.md", "scale: clicks\n")
    assert manual.found() == [
        (
            "tools/inch-pound-wrench.md:6:8 unit-unknown (stop)",
            "clicks",
            '"clicks" is not a unit known here.',
            "Write N·m, lbf·ft, lbf·in, ozf·in, kgf·m or kgf·cm.",
        )
    ]
