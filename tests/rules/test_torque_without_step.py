"""`torque-without-step`: exact wording, and silence where nothing is wrong."""

STEPS = "## Steps\n\n1. {}\n\n    Second check: The mark.\n"


def test_none(manual):
    manual.body("kestrel-3/set-band.md", STEPS.format("Turn it in by hand."))
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:11:11 torque-without-step (stop)",
            "band-seat",
            "No step tightens band-seat.",
            "Write <torque:band-seat> in the step that does, or take it out of torques.",
        )
    ]


def test_only_before_the_steps(manual):
    manual.body("kestrel-3/set-band.md", "<torque:band-seat>\n\n" + STEPS.format("Turn it in."))
    assert manual.codes() == ["torque-without-step"]


def test_by_its_whole_name(manual):
    step = "Seat it: <torque:kestrel-3/band-seat>."
    manual.body("kestrel-3/set-band.md", STEPS.format(step))
    assert manual.found() == []


def test_misspelt_in_the_step(manual):
    manual.body("kestrel-3/set-band.md", STEPS.format("Seat it: <torque:band-seet>."))
    assert manual.codes() == ["dead-reference"]
