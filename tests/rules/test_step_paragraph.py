"""`step-paragraph`: exact wording, and silence where nothing is wrong."""

import pytest

PAGE = "any-unit/leak-check.md"
OUTSIDE = (
    "This paragraph is outside the steps: it is not indented by four spaces.",
    "Put four spaces before it, or move it under another heading.",
)


def at(line, column, written, wrong, mend):
    return (f"{PAGE}:{line}:{column} step-paragraph (stop)", written, wrong, mend)


@pytest.mark.parametrize("indent", ["", " ", "  ", "   ", "\u00a0\u00a0\u00a0\u00a0"])
def test_too_little_indented(manual, indent):
    manual.body(PAGE, f"## Steps\n\n1. Look.\n\n{indent}Good: Dry.\n\n2. Feel.\n")
    found = manual.found()
    assert found == [at(14, len(indent) + 1, "Good: Dry.", *OUTSIDE)]


def test_step_that_goes_on_after_it_is_still_a_step(manual):
    body = "## Steps\n\n1. Look.\n\nGood: Dry.\n\n2. Seat it: <torque:band-seat>.\n"
    manual.body("kestrel-3/set-band.md", body)
    assert [each[0].split()[1] for each in manual.found()] == ["step-paragraph"]


def test_runs_on(manual):
    manual.body(PAGE, "## Steps\n\n1. Look.\n    Good: Dry.\n")
    assert manual.found() == [
        at(
            13,
            5,
            "Good: Dry.",
            "This line runs on in the paragraph above it.",
            "Leave an empty line above it.",
        )
    ]


@pytest.mark.parametrize(
    "written", ["good: Dry.", "**Good:** Dry.", "**Good**: Dry.", "Good - Dry."]
)
def test_word_written_otherwise(manual, written):
    manual.body(PAGE, f"## Steps\n\n1. Look.\n\n    {written}\n")
    assert manual.found() == [
        at(
            14,
            5,
            written,
            "The page does not know this as the paragraph Good.",
            "Write Good: as the first word, with its colon and without stars.",
        )
    ]


@pytest.mark.parametrize(
    "steps",
    [
        "Look first, then feel.\n\n1. Look.\n\n    Good: Dry.\n\n    Second check: So it is.\n",
        "1. Look.\n\n\tGood: Dry.\n\n2. Feel\nall round.\n",
        "1. Look.\n\n    Good work shows.\n\n    Why not: it is said below.\n",
        "1. Look.\n\n### Now feel\n\n2. Feel.\n\n## Afterwards\n\nGood: Nothing is left.\n",
        "1. Look.\n2. Feel.\n",
        "1. Look.\n\n    ```\nGood: as typed\n    ```\n",
    ],
)
def test_nothing_wrong(manual, steps):
    manual.body(PAGE, f"## Steps\n\n{steps}")
    assert manual.found() == []
