"""`fill-over-dry`: exact wording, and silence where nothing is wrong."""


def test_swapped(manual):
    manual.keys(
        "families/kestrel-3.md",
        """\
fluid:
  specification: DX-2
  service_fill: 8.6 L
  dry_fill: 4.2 L
  level: {selector: neutral, temperature: 65 to 80 degC, between_marks: 0.5 L}
""",
    )
    assert manual.found() == [
        (
            "families/kestrel-3.md:25:17 fill-over-dry (stop)",
            "8.6 L",
            "The service fill is more than the dry fill, 4.2 L on line 26.",
            "Look whether the two are swapped or one is in another unit.",
        )
    ]


def test_other_units(manual):
    manual.keys(
        "families/kestrel-3.md",
        """\
fluid:
  specification: DX-2
  service_fill: 9.5 qt US
  dry_fill: 8.6 L
  level: {selector: neutral, temperature: 65 to 80 degC, between_marks: 0.5 L}
""",
    )
    assert manual.found() == [
        (
            "families/kestrel-3.md:25:17 fill-over-dry (stop)",
            "9.5 qt US",
            "The service fill is more than the dry fill, 8.6 L on line 26.",
            "Look whether the two are swapped or one is in another unit.",
        )
    ]


def test_equal(manual):
    manual.keys(
        "families/kestrel-3.md",
        """\
fluid:
  specification: DX-2
  service_fill: 4.2 L
  dry_fill: 4.2 L
  level: {selector: neutral, temperature: 65 to 80 degC, between_marks: 0.5 L}
""",
    )
    assert manual.found() == []


def test_marks_in_another_unit(manual):
    manual.keys(
        "families/kestrel-3.md",
        """\
fluid:
  specification: DX-2
  service_fill: 4.2 L
  dry_fill: 8.6 L
  level: {selector: neutral, temperature: 65 to 80 degC, between_marks: 5 L}
""",
    )
    assert manual.found() == [
        (
            "families/kestrel-3.md:27:73 fill-over-dry (stop)",
            "5 L",
            "The marks are further apart than a whole service, 4.2 L on line 25.",
            "Look whether the unit is right: between the marks is often half a litre.",
        )
    ]
