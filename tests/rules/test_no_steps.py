"""`no-steps`: exact wording, and silence where nothing is wrong."""

import pytest


def test_none(manual):
    manual.body("kestrel-3/count-turns.md", "Turn it in.\n")
    assert manual.found() == [
        (
            "kestrel-3/count-turns.md:12:1 no-steps (stop)",
            "",
            "The procedure has no ordered list under a heading Steps.",
            "Write ## Steps and below it 1. and the first action.",
        )
    ]


def test_bullets(manual):
    manual.body(
        "any-unit/leak-check.md",
        """\
## Steps

- Look.
""",
    )
    assert manual.found() == [
        (
            "any-unit/leak-check.md:10:1 no-steps (stop)",
            "",
            "The procedure has no ordered list under a heading Steps.",
            "Write ## Steps and below it 1. and the first action.",
        )
    ]


def test_other_heading(manual):
    manual.body(
        "any-unit/leak-check.md",
        """\
### Steps

1. Look.
""",
    )
    assert manual.found() == [
        (
            "any-unit/leak-check.md:10:1 no-steps (stop)",
            "",
            "The procedure has no ordered list under a heading Steps.",
            "Write ## Steps and below it 1. and the first action.",
        )
    ]


@pytest.mark.parametrize("written", ["1) Look.", "1.\u00a0Look.", "\u00b7 1. Look.", "1.Look."])
def test_nearly_a_step(manual, written):
    manual.body("any-unit/leak-check.md", f"## Steps\n\n{written}\n")
    assert manual.found() == [
        (
            "any-unit/leak-check.md:12:1 no-steps (stop)",
            written.replace("\u00a0", " "),
            "A step begins with its number, a full stop and an ordinary space. This line does not.",
            "Type it anew at the start of the line: 1. and a space, without HTML.",
        )
    ]
