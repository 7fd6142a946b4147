"""`access-undeclared`: exact wording, and silence where nothing is declared."""

DECLARED = "access:\n  on the hoist: {minutes: 15}\n"


def test_nothing_declared(manual):
    assert manual.found() == []


def test_nearly_right_is_offered(manual):
    manual.keys("index.md", "access:\n  on a hoist: {minutes: 15}\n")
    assert manual.found() == [
        (
            "faults/late-shifts.md:10:55 access-undeclared (stop)",
            "on the hoist",
            "No page declares the access on the hoist.",
            "Did you mean on a hoist?",
        )
    ]


def test_far_off_lists_what_there_is(manual):
    manual.keys("index.md", "access:\n  road test: {minutes: 5}\n  pan off: {minutes: 50}\n")
    assert [each[2:] for each in manual.found()] == [
        ("No page declares the access on the hoist.", "Declared are road test and pan off.")
    ]


def test_unknown_way(manual):
    manual.keys("index.md", f"{DECLARED}  pan off: {{minutes: 50, through: on the lift}}\n")
    (found,) = manual.found()
    assert found[1:3] == ("on the lift", "No page declares the access on the lift.")


def test_way_round(manual):
    text = "access:\n  on the hoist: {minutes: 15, through: pan off}\n"
    manual.keys("index.md", f"{text}  pan off: {{minutes: 50, through: on the hoist}}\n")
    assert [each[2] for each in manual.found()] == [
        "The way to on the hoist leads through itself.",
        "The way to pan off leads through itself.",
    ]


def test_declared_twice(manual):
    manual.keys("index.md", DECLARED)
    manual.page(
        "bays.md",
        f"---\nkind: page\ntitle: The bays\nsummary: How far in.\n{DECLARED}---\nA bay.\n",
    )
    found = [each for each in manual.found() if "access-undeclared" in each[0]]
    assert [each[1:] for each in found] == [
        ("15", "bays.md declares on the hoist already.", "Keep one of the two.")
    ]
