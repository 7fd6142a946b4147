"""`duplicate-key`: exact wording, and silence where nothing is wrong."""


def test_top(manual):
    manual.page(
        "tools/new.md",
        """\
---
kind: tool
title: A
summary: B
title: C
---
""",
    )
    assert manual.found() == [
        (
            "tools/new.md:5:1 duplicate-key (stop)",
            "title",
            "title stands on line 3 already.",
            "Keep one of the two.",
        )
    ]


def test_inside(manual):
    manual.page(
        "tools/new.md",
        """\
---
kind: hazard
title: A
summary: B
signal: notice
harm: C
avoid: D
required_when: {tools: [], tools: []}
---
""",
    )
    assert manual.found() == [
        (
            "tools/new.md:8:28 duplicate-key (stop)",
            "tools",
            "tools stands on line 8 already.",
            "Keep one of the two.",
        )
    ]
