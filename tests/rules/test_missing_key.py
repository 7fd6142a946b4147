"""`missing-key`: exact wording, and silence where nothing is wrong."""


def test_all_of_them(manual):
    manual.page(
        "tools/new.md",
        """\
---
kind: tool
---
""",
    )
    assert manual.found() == [
        (
            "tools/new.md:2:1 missing-key (stop)",
            "",
            "This kind of page needs the key summary.",
            "Add summary: What it is for, in one sentence.",
        ),
        (
            "tools/new.md:2:1 missing-key (stop)",
            "",
            "This kind of page needs the key title.",
            "Add title: What the page is called, as the shop says it.",
        ),
    ]


def test_kind(manual):
    manual.page(
        "tools/new.md",
        """\
---
title: A
---
""",
    )
    assert manual.found() == [
        (
            "tools/new.md:2:1 missing-key (stop)",
            "",
            "A page needs the key kind.",
            "Add kind: unit-family, procedure, fault, tool, hazard or page.",
        )
    ]


def test_inside(manual):
    manual.keys(
        "kestrel-3/count-turns.md",
        """\
readings:
  turns-to-seat: {name: Turns, unit: turn, limits: 1 to 2 turns}
""",
    )
    assert manual.found() == [
        (
            "kestrel-3/count-turns.md:10:18 missing-key (stop)",
            "",
            "turns-to-seat needs the key when.",
            "Add when: as found, as left or both.",
        )
    ]
