"""`unit-missing`: exact wording, and silence where nothing is wrong."""


def test_torque(manual):
    manual.keys(
        "kestrel-3/set-band.md",
        """\
fasteners:
  cover-bolts: {name: Cover bolts, torque: 9}
""",
    )
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:17:44 unit-missing (stop)",
            "9",
            "The unit is missing.",
            "Write 9 N·m, 9 lbf·ft or 9 lbf·in.",
        )
    ]


def test_likelihood(manual):
    manual.keys(
        "faults/late-shifts.md",
        """\
causes:
  worn-band: {name: Worn band, likelihood: 40}
""",
    )
    assert manual.found() == [
        (
            "faults/late-shifts.md:10:44 unit-missing (stop)",
            "40",
            "likelihood is a percentage.",
            "Write a number and %, such as 40 %.",
        )
    ]
