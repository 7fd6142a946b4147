"""`without-second-check`: exact wording, and silence where nothing is wrong."""

import pytest

FILE = "kestrel-3/clean-adjuster.md"
PART = "parts: [rear-seal]\n"
LEFT = "readings:\n  play: {name: Play, unit: mm, when: as left, limits: 1 to 2 mm}\n"
SECOND = "\n    Second check: Somebody else looks.\n"


@pytest.mark.parametrize(
    ("step", "written"),
    [
        ("Tighten the clip.", "Tighten the clip."),
        ("Adjust the rod.", "Adjust the rod."),
        ("Lock the screw.", "Lock the screw."),
        ("Back the screw off 1 1/2 turns.", "Back the screw off 1 1/2 turns."),
        ("Back off the screw.", "Back off the screw."),
    ],
)
def test_a_step_that_sets(manual, step, written):
    manual.body(FILE, f"## Steps\n\n1. {step}\n")
    assert manual.found() == [
        (
            f"{FILE}:19:4 without-second-check (stop)",
            written,
            "Step 1 sets something, and nobody looks a second time.",
            "Write Second check: below it and what another pair of eyes looks at.",
        )
    ]


def fitted(manual, keys, step):
    """What is found of a procedure with these keys and this one step."""
    manual.body(FILE, f"## Steps\n\n1. {step}\n")
    manual.keys(FILE, keys)
    return manual.found()


MEND = "Add Second check: to the step that does it."


def test_a_part(manual):
    assert fitted(manual, PART, "Put it in.") == [
        (
            f"{FILE}:16:9 without-second-check (stop)",
            "rear-seal",
            "The procedure fits a part, and no step has a second check.",
            MEND,
        )
    ]


def test_a_reading_left_behind(manual):
    assert fitted(manual, LEFT, "Take <reading:play>.") == [
        (
            f"{FILE}:17:16 without-second-check (stop)",
            "Play",
            "The procedure leaves a reading behind, and no step has a second check.",
            MEND,
        )
    ]


def test_a_seal(manual):
    assert fitted(manual, "", "Drive the new seal in.") == [
        (
            f"{FILE}:19:4 without-second-check (stop)",
            "Drive the new seal in.",
            "Step 1 fits a seal, and no step has a second check.",
            MEND,
        )
    ]


@pytest.mark.parametrize("keys", [PART, LEFT])
def test_one_step_with_a_second_check(manual, keys):
    manual.keys(FILE, keys)
    manual.body(FILE, f"## Steps\n\n1. Put it in and take <reading:play>.\n{SECOND}")
    assert "without-second-check" not in manual.codes()


def test_a_torque_asks_by_itself(manual):
    manual.body("kestrel-3/set-band.md", "## Steps\n\n1. Tighten it: <torque:band-seat>.\n")
    assert manual.found() == []


@pytest.mark.parametrize(
    "step",
    ["Look at the seal.", "Go back to the lift and switch it off.", "Loosen the locknut.",
     "Take the old seal off."],
)  # fmt: skip
def test_a_step_that_sets_nothing(manual, step):
    manual.body(FILE, f"## Steps\n\n1. {step}\n")
    assert manual.found() == []
