"""`impossible-range`: exact wording, and silence where nothing is wrong."""


def test_low_above_high(manual):
    manual.keys(
        "kestrel-3/count-turns.md",
        """\
readings:
  turns-to-seat: {name: Turns, unit: turn, when: as found, limits: 2 to 1 turns}
""",
    )
    assert manual.found() == [
        (
            "kestrel-3/count-turns.md:10:68 impossible-range (stop)",
            "2 to 1 turns",
            "The low end 2 is above the high end 1.",
            "Write 1 to 2 turns.",
        )
    ]


def test_negative_minutes(manual):
    manual.keys("kestrel-3/set-band.md", "minutes: -5\n")
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:15:10 impossible-range (stop)",
            "-5",
            "minutes is at least 1 and at most 10000.",
            "Write a number in that range, such as 25.",
        )
    ]


def test_no_minutes(manual):
    manual.keys("kestrel-3/set-band.md", "minutes: 0\n")
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:15:10 impossible-range (stop)",
            "0",
            "minutes is at least 1 and at most 10000.",
            "Write a number in that range, such as 25.",
        )
    ]


def test_likelihood(manual):
    manual.keys(
        "faults/late-shifts.md",
        """\
causes:
  worn-band: {name: Worn band, likelihood: 140 %}
""",
    )
    assert manual.found() == [
        (
            "faults/late-shifts.md:10:44 impossible-range (stop)",
            "140 %",
            "likelihood lies between 0 % and 100 %.",
            "Write a share of all cases, such as 40 %.",
        )
    ]


def test_no_torque(manual):
    manual.keys(
        "kestrel-3/set-band.md",
        """\
fasteners:
  cover-bolts: {name: Cover bolts, torque: 0 N*m}
""",
    )
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:17:44 impossible-range (stop)",
            "0 N*m",
            "torque is above zero.",
            "Write the value that is meant.",
        )
    ]


def test_negative_torque(manual):
    manual.keys(
        "kestrel-3/set-band.md",
        """\
fasteners:
  cover-bolts: {name: Cover bolts, torque: -9 N*m}
""",
    )
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:17:44 impossible-range (stop)",
            "-9 N*m",
            "torque is above zero.",
            "Write the value that is meant.",
        )
    ]


def test_negative_length(manual):
    manual.keys(
        "families/kestrel-3.md",
        """\
parts:
  rear-seal: {name: Seal, variants: [{name: A, tell: b, measures: {width: -1 to 2 mm}}]}
""",
    )
    assert manual.found() == [
        (
            "families/kestrel-3.md:25:75 impossible-range (stop)",
            "-1 to 2 mm",
            "width is not below zero.",
            "Write the value that is meant.",
        )
    ]


def test_below_zero_degrees_is_possible(manual):
    manual.keys(
        "kestrel-3/count-turns.md",
        """\
readings:
  turns-to-seat: {name: Cold, unit: degC, when: as found, limits: -10 to 5 degC}
""",
    )
    assert manual.found() == []


def test_below_absolute_zero(manual):
    manual.keys(
        "families/kestrel-3.md",
        """\
fluid:
  specification: DX-2
  service_fill: 4.2 L
  dry_fill: 8.6 L
  level: {selector: neutral, temperature: -300 to 80 degC, between_marks: 0.5 L}
""",
    )
    assert manual.found() == [
        (
            "families/kestrel-3.md:27:43 impossible-range (stop)",
            "-300 to 80 degC",
            "temperature is not below absolute zero.",
            "Write the value that is meant.",
        )
    ]
