"""`unit-ambiguous`: exact wording, and silence where nothing is wrong."""


def test_quarts(manual):
    manual.keys(
        "families/kestrel-3.md",
        """\
fluid:
  specification: DX-2
  service_fill: 4.4 quarts
  dry_fill: 8.6 L
  level: {selector: neutral, temperature: 65 to 80 degC, between_marks: 0.5 L}
""",
    )
    assert manual.found() == [
        (
            "families/kestrel-3.md:25:17 unit-ambiguous (stop)",
            "4.4 quarts",
            '"quarts" can be US or imperial.',
            "Write 4.4 qt US or 4.4 qt imperial.",
        )
    ]


def test_said(manual):
    manual.keys(
        "families/kestrel-3.md",
        """\
fluid:
  specification: DX-2
  service_fill: 4.4 quarts US
  dry_fill: 8.6 L
  level: {selector: neutral, temperature: 65 to 80 degC, between_marks: 0.5 L}
""",
    )
    assert manual.found() == []
