"""`reading-without-step`: exact wording, and silence where nothing is wrong."""


def test_none(manual):
    manual.body(
        "kestrel-3/count-turns.md",
        """\
## Steps

1. Turn it in.
""",
    )
    assert manual.found() == [
        (
            "kestrel-3/count-turns.md:10:25 reading-without-step (stop)",
            "Turns to seat",
            "No step takes the reading turns-to-seat.",
            "Write <reading:turns-to-seat> in the step that takes it.",
        )
    ]


def test_only_above_the_steps(manual):
    manual.body(
        "kestrel-3/count-turns.md",
        """\
<reading:turns-to-seat>

## Steps

1. Turn it in.
""",
    )
    assert manual.found() == [
        (
            "kestrel-3/count-turns.md:10:25 reading-without-step (stop)",
            "Turns to seat",
            "No step takes the reading turns-to-seat.",
            "Write <reading:turns-to-seat> in the step that takes it.",
        )
    ]


def test_whole_name(manual):
    manual.body(
        "kestrel-3/count-turns.md",
        """\
## Steps

1. Turn: <reading:count-turns/turns-to-seat>.
""",
    )
    assert manual.found() == []
