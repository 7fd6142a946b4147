"""`before-after-cycle`: exact wording, and silence where nothing is wrong."""


def test_two(manual):
    manual.keys("any-unit/leak-check.md", "after: [set-band]\n")
    assert manual.found() == [
        (
            "any-unit/leak-check.md:9:9 before-after-cycle (stop)",
            "set-band",
            "The procedures wait for each other: leak-check → set-band → leak-check.",
            "Take one of them out of before, after or ends.",
        )
    ]


def test_three(manual):
    manual.keys("any-unit/raise-vehicle.md", "before: [leak-check]\n")
    assert manual.found() == [
        (
            "any-unit/raise-vehicle.md:10:10 before-after-cycle (stop)",
            "leak-check",
            (
                "The procedures wait for each other: leak-check → raise-vehicle → "
                "set-band → leak-check."
            ),
            "Take one of them out of before, after or ends.",
        )
    ]


def test_itself(manual):
    manual.keys("kestrel-3/count-turns.md", "before: [count-turns]\n")
    assert manual.found() == [
        (
            "kestrel-3/count-turns.md:11:10 before-after-cycle (stop)",
            "count-turns",
            "The procedures wait for each other: count-turns → count-turns.",
            "Take one of them out of before, after or ends.",
        )
    ]


def test_said_from_both_sides(manual):
    manual.keys("any-unit/leak-check.md", "before: [set-band]\n")
    assert manual.found() == []
