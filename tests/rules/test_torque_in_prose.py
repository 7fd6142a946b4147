"""`torque-in-prose`: exact wording, and silence where nothing is wrong."""

import pytest

STEPS = "## Steps\n\n1. {}\n\n    Second check: The scale.\n"


def test_step(manual):
    manual.body(
        "kestrel-3/clean-adjuster.md",
        """\
## Steps

1. Tighten to 12 lbf·ft.

    Second check: The scale.
""",
    )
    assert manual.found() == [
        (
            "kestrel-3/clean-adjuster.md:19:15 torque-in-prose (stop)",
            "12 lbf·ft",
            "A torque in the text is a second copy of a value that stands at its fastener.",
            "Refer to it by its id, such as <torque:band-seat>; the page shows the value.",
        )
    ]


def test_label(manual):
    manual.body(
        "kestrel-3/clean-adjuster.md",
        """\
## Steps

1. [Tighten to 120 in-lb](tool:square-socket).

    Second check: The scale.
""",
    )
    assert manual.found() == [
        (
            "kestrel-3/clean-adjuster.md:19:16 torque-in-prose (stop)",
            "120 in-lb",
            "A torque in the text is a second copy of a value that stands at its fastener.",
            "Refer to it by its id, such as <torque:band-seat>; the page shows the value.",
        )
    ]


def test_range_and_metric(manual):
    manual.body("families/kestrel-3.md", "Between 9 to 12 Nm or 1.2 kgf·m or 10 foot pounds.\n")
    assert manual.found() == [
        (
            "families/kestrel-3.md:30:9 torque-in-prose (stop)",
            "9 to 12 Nm",
            "A torque in the text is a second copy of a value that stands at its fastener.",
            "Refer to it by its id, such as <torque:band-seat>; the page shows the value.",
        ),
        (
            "families/kestrel-3.md:30:23 torque-in-prose (stop)",
            "1.2 kgf·m",
            "A torque in the text is a second copy of a value that stands at its fastener.",
            "Refer to it by its id, such as <torque:band-seat>; the page shows the value.",
        ),
        (
            "families/kestrel-3.md:30:36 torque-in-prose (stop)",
            "10 foot pounds",
            "A torque in the text is a second copy of a value that stands at its fastener.",
            "Refer to it by its id, such as <torque:band-seat>; the page shows the value.",
        ),
    ]


def test_address_of_a_link(manual):
    manual.body(
        "kestrel-3/clean-adjuster.md",
        """\
## Steps

1. See [it](../calculators/torque-units/?torque=12+lbf*ft "x") and `12 lbf·ft`.
""",
    )
    assert manual.found() == []


def test_other_numbers(manual):
    manual.body(
        "kestrel-3/clean-adjuster.md",
        """\
## Steps

1. Pour 5 lb in the bucket, 12 mm deep, 30 N on the lever, 2 in long, 3 ft away.
""",
    )
    assert manual.found() == []


def test_tool_may_say_its_own(manual):
    manual.body("tools/inch-pound-wrench.md", "Reads 30 to 200 lbf·in.\n")
    assert manual.found() == []


@pytest.mark.parametrize(
    ("step", "column", "written"),
    [
        ("Tighten to 12 lb.", 15, "12 lb"),
        ("Tighten the nut evenly to 12 pounds.", 30, "12 pounds"),
        ("Torque it to 9 lbs now.", 17, "9 lbs"),
    ],
)
def test_pounds_of_no_arm(manual, step, column, written):
    manual.body("kestrel-3/clean-adjuster.md", STEPS.format(step))
    assert manual.found() == [
        (
            f"kestrel-3/clean-adjuster.md:19:{column} torque-in-prose (stop)",
            written,
            "A torque in the text is a second copy of a value that stands at its fastener.",
            "Refer to it by its id, such as <torque:band-seat>; the page shows the value.",
        )
    ]


@pytest.mark.parametrize(
    "step", ["Lift the pan, about 5 lb.", "Tighten it, then load the tray to the left with 8 lb."]
)
def test_pounds_of_weight(manual, step):
    manual.body("kestrel-3/clean-adjuster.md", STEPS.format(step))
    assert manual.found() == []
