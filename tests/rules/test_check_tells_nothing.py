"""`check-tells-nothing`: exact wording, and silence where nothing is wrong."""

FILE = "faults/late-shifts.md"
CHECKS = """\
checks:
  count: {name: Count the turns, minutes: 10, access: on the hoist, rules_out: [worn-band]}
"""


def test_rules_nothing_out(manual):
    manual.keys(FILE, f"{CHECKS}  drive: {{name: Drive it, minutes: 20, access: road test}}\n")
    assert manual.found() == [
        (
            "faults/late-shifts.md:11:17 check-tells-nothing (stop)",
            "Drive it",
            "Its result says the same about every cause.",
            "Write under rules_out or bad_with what it tells, or take the check out.",
        )
    ]


def test_bad_as_often_with_every_cause(manual):
    told = "bad_with: {worn-band: often, none-of-these: often}"
    manual.keys(FILE, f"{CHECKS}  drive: {{name: Drive it, minutes: 20, access: road, {told}}}\n")
    assert manual.codes() == ["check-tells-nothing"]


def test_told_two_things(manual):
    manual.keys(FILE, CHECKS.replace("[worn-band]}", "[worn-band], bad_with: {worn-band: often}}"))
    assert [each[1:] for each in manual.found()] == [
        (
            "often",
            "A good result rules worn-band out already, so it is always bad with it.",
            "Keep worn-band in one of the two places.",
        )
    ]


def test_tells_of_a_cause_that_is_not_there(manual):
    manual.keys(FILE, CHECKS.replace("[worn-band]}", "[worn-band], bad_with: {worn-bnd: often}}"))
    assert [each[1:] for each in manual.found()] == [
        ("worn-bnd", "There is no cause worn-bnd on this page.", "Did you mean worn-band?")
    ]


def test_a_percentage_will_do(manual):
    manual.keys(FILE, CHECKS.replace("rules_out: [worn-band]", "bad_with: {worn-band: 85 %}"))
    assert manual.found() == []


def test_a_word_that_is_none(manual):
    manual.keys(FILE, CHECKS.replace("rules_out: [worn-band]", "bad_with: {worn-band: usually}"))
    assert [each[1:] for each in manual.found()] == [
        (
            "usually",
            "worn-band is always, mostly, often, half the time, sometimes, seldom or never, or a "
            "percentage.",
            "Write one of these words, or a share such as 70 %.",
        )
    ]
