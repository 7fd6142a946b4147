"""`reading-without-limits`: exact wording, and silence where nothing is wrong."""


def test_none(manual):
    manual.keys(
        "kestrel-3/count-turns.md",
        """\
readings:
  turns-to-seat: {name: Turns to seat, unit: turn, when: as found}
""",
    )
    assert manual.found() == [
        (
            "kestrel-3/count-turns.md:10:25 reading-without-limits (look)",
            "Turns to seat",
            "The reading turns-to-seat has no limits.",
            "Add limits: the lowest and the highest good value in turns.",
        )
    ]
