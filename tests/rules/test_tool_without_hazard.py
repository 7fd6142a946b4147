"""`tool-without-hazard`: exact wording, and silence where nothing is wrong."""


def test_tool(manual):
    manual.keys("kestrel-3/set-band.md", "tools: [inch-pound-wrench, slide-hammer]\n")
    assert manual.found() == [
        (
            "kestrel-3/set-band.md:15:28 tool-without-hazard (stop)",
            "slide-hammer",
            "This tool asks for the caution flying-parts, and the page does not declare it.",
            "Add flying-parts to cautions.",
        )
    ]


def test_area(manual):
    manual.keys("kestrel-3/count-turns.md", "area: body\n")
    assert manual.found() == [
        (
            "kestrel-3/count-turns.md:10:7 tool-without-hazard (stop)",
            "body",
            "This area asks for the caution flying-parts, and the page does not declare it.",
            "Add flying-parts to cautions.",
        )
    ]


def test_fluid(manual):
    manual.keys("any-unit/leak-check.md", "fluids: [BF-4]\n")
    assert manual.found() == [
        (
            "any-unit/leak-check.md:9:10 tool-without-hazard (stop)",
            "BF-4",
            "This fluid asks for the caution flying-parts, and the page does not declare it.",
            "Add flying-parts to cautions.",
        )
    ]


def test_word(manual):
    manual.body(
        "kestrel-3/count-turns.md",
        """\
## Steps

1. Take <reading:turns-to-seat>.
2. Drain the pan.
""",
    )
    assert manual.found() == [
        (
            "kestrel-3/count-turns.md:15:4 tool-without-hazard (stop)",
            "Drain",
            "This word asks for the caution hot-fluid, and the page does not declare it.",
            "Add hot-fluid to cautions.",
        )
    ]


def test_word_with_caution_first(manual):
    manual.body(
        "kestrel-3/count-turns.md",
        """\
## Steps

1. Take <reading:turns-to-seat>.
2. <hazard:hot-fluid>

    Drain the pan.
""",
    )
    assert manual.found() == []


def test_part_of_a_word(manual):
    manual.body(
        "kestrel-3/count-turns.md",
        """\
## Steps

1. Take <reading:turns-to-seat> at the drained pan.
""",
    )
    assert manual.found() == []


def test_declared(manual):
    manual.keys(
        "kestrel-3/set-band.md",
        """\
tools: [inch-pound-wrench, slide-hammer]
cautions: [flying-parts]
""",
    )
    assert manual.found() == []
