"""`windows-cross`: exact wording, and silence where nothing is wrong."""


def test_overlap(manual):
    manual.keys(
        "families/kestrel-3.md",
        """\
shift_windows:
  - {shift: 1-2, throttle: light, speed: 16 to 32 km/h}
  - {shift: 2-3, throttle: light, speed: 28 to 36 km/h}
""",
    )
    assert manual.found() == [
        (
            "families/kestrel-3.md:28:42 windows-cross (stop)",
            "28 to 36 km/h",
            "At light throttle 2-3 begins before 1-2 (16 to 32 km/h, line 27) has ended.",
            "Look whether one of the speeds is wrong or in another unit.",
        )
    ]


def test_other_unit(manual):
    manual.keys(
        "families/kestrel-3.md",
        """\
shift_windows:
  - {shift: 1-2, throttle: light, speed: 16 to 22 km/h}
  - {shift: 2-3, throttle: light, speed: 12 to 20 mph}
""",
    )
    assert manual.found() == [
        (
            "families/kestrel-3.md:28:42 windows-cross (stop)",
            "12 to 20 mph",
            "At light throttle 2-3 begins before 1-2 (16 to 22 km/h, line 27) has ended.",
            "Look whether one of the speeds is wrong or in another unit.",
        )
    ]


def test_downshifts(manual):
    manual.keys(
        "families/kestrel-3.md",
        """\
shift_windows:
  - {shift: 3-2, throttle: full, speed: 60 to 70 km/h}
  - {shift: 2-1, throttle: full, speed: 50 to 65 km/h}
""",
    )
    assert manual.found() == [
        (
            "families/kestrel-3.md:27:41 windows-cross (stop)",
            "60 to 70 km/h",
            "At full throttle 3-2 begins before 2-1 (50 to 65 km/h, line 28) has ended.",
            "Look whether one of the speeds is wrong or in another unit.",
        )
    ]


def test_twice(manual):
    manual.keys(
        "families/kestrel-3.md",
        """\
shift_windows:
  - {shift: 1-2, throttle: light, speed: 16 to 22 km/h}
  - {shift: 1-2, throttle: light, speed: 16 to 22 km/h}
""",
    )
    assert manual.found() == [
        (
            "families/kestrel-3.md:28:13 windows-cross (stop)",
            "1-2",
            "1-2 at light throttle stands on line 27 already.",
            "Keep one of the two.",
        )
    ]


def test_other_throttle(manual):
    manual.keys(
        "families/kestrel-3.md",
        """\
shift_windows:
  - {shift: 1-2, throttle: full, speed: 46 to 62 km/h}
  - {shift: 2-3, throttle: light, speed: 28 to 36 km/h}
""",
    )
    assert manual.found() == []


def test_earlier_with_more_throttle(manual):
    manual.keys(
        "families/kestrel-3.md",
        """\
shift_windows:
  - {shift: 1-2, throttle: full, speed: 16 to 22 km/h}
  - {shift: 1-2, throttle: light, speed: 60 to 68 km/h}
""",
    )
    assert manual.found() == [
        (
            "families/kestrel-3.md:27:41 windows-cross (stop)",
            "16 to 22 km/h",
            "1-2 begins earlier at full throttle than at light (60 to 68 km/h, line 28).",
            "Look whether one of the speeds is wrong or in another unit.",
        )
    ]


def test_hunting(manual):
    manual.keys(
        "families/kestrel-3.md",
        """\
shift_windows:
  - {shift: 2-3, throttle: full, speed: 90 to 100 km/h}
  - {shift: 3-2, throttle: full, speed: 86 to 96 km/h}
""",
    )
    assert manual.found() == [
        (
            "families/kestrel-3.md:28:41 windows-cross (stop)",
            "86 to 96 km/h",
            "At full throttle 3-2 reaches into 2-3 (90 to 100 km/h, line 27): the unit would hunt.",
            "Look whether one of the speeds is wrong or in another unit.",
        )
    ]


def test_later_with_more_throttle_and_down_below_up(manual):
    manual.keys(
        "families/kestrel-3.md",
        """\
shift_windows:
  - {shift: 1-2, throttle: light, speed: 16 to 22 km/h}
  - {shift: 1-2, throttle: half, speed: 16 to 30 km/h}
  - {shift: 2-3, throttle: full, speed: 90 to 100 km/h}
  - {shift: 3-2, throttle: full, speed: 76 to 86 km/h}
""",
    )
    assert manual.found() == []
