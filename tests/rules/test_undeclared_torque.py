"""`undeclared-torque`: exact wording, and silence where nothing is wrong."""


def test_step(manual):
    manual.body(
        "kestrel-3/set-band.md",
        """\
## Steps

1. Tighten <torque:band-locknut>, then <torque:band-locknut>.
""",
    )
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:19:12 undeclared-torque (stop)",
            "band-locknut",
            "A step names the torque band-locknut, and the page does not declare it.",
            "Add band-locknut to torques.",
        )
    ]


def test_whole_name(manual):
    manual.keys("kestrel-3/set-band.md", "torques: [kestrel-3/band-seat]\n")
    assert manual.found() == []


def test_before_the_steps(manual):
    manual.body(
        "kestrel-3/set-band.md",
        """\
The locknut takes <torque:band-locknut>.

## Steps

1. [Seat it](torque:band-seat).
""",
    )
    assert manual.found() == []
