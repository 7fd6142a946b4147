"""`no-steps`: exact wording, and silence where nothing is wrong."""


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
