"""`caution-after-step`: exact wording, and silence where nothing is wrong."""


def test_below_the_action(manual):
    manual.body(
        "kestrel-3/set-band.md",
        """\
## Steps

1. Loosen it.

    <hazard:hot-fluid>
""",
    )
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:21:5 caution-after-step (stop)",
            "<hazard:hot-fluid>",
            "The caution stands below the action of step 1.",
            "Put it first in the step.",
        )
    ]


def test_first(manual):
    manual.body(
        "kestrel-3/set-band.md",
        """\
## Steps

1. <hazard:hot-fluid>

    Loosen it.
2. Turn it.
""",
    )
    assert manual.found() == []


def test_two_first(manual):
    manual.body(
        "kestrel-3/set-band.md",
        """\
## Steps

1. <hazard:hot-fluid>

    [mind](hazard:raised-vehicle)

    Loosen it.
""",
    )
    assert manual.found() == []


def test_within_a_sentence(manual):
    manual.body(
        "kestrel-3/set-band.md",
        """\
## Steps

1. Loosen it.

    Why: see <hazard:hot-fluid>.
""",
    )
    assert manual.found() == []
