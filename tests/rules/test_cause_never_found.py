"""`cause-never-found`: exact wording, and silence where nothing is wrong."""

CAUSES = """\
causes:
  worn-band: {name: Worn band, likelihood: 40 %}
  weak-governor: {name: Governor sticking, likelihood: 10 %}
"""
CHECKS = """\
checks:
  count: {name: Count the turns, minutes: 10, access: on the hoist, rules_out: [worn-band]}
"""


def test_no_check(manual):
    manual.keys("faults/late-shifts.md", CAUSES)
    assert manual.found() == [
        (
            "faults/late-shifts.md:11:25 cause-never-found (stop)",
            "Governor sticking",
            "No check of this page can find weak-governor.",
            "Put weak-governor under rules_out or bad_with of a check that tells it.",
        )
    ]


def test_never_bad_does_not_count(manual):
    checks = CHECKS.replace("[worn-band]}", "[worn-band], bad_with: {weak-governor: never}}")
    manual.keys("faults/late-shifts.md", CAUSES + checks)
    assert manual.codes() == ["cause-never-found"]


def test_seldom_bad_is_enough(manual):
    checks = CHECKS.replace("[worn-band]}", "[worn-band], bad_with: {weak-governor: seldom}}")
    manual.keys("faults/late-shifts.md", CAUSES + checks)
    assert manual.found() == []


def test_none_of_these_needs_no_check(manual):
    causes = CAUSES.replace("weak-governor", "none-of-these").replace("10 %", "60 %")
    manual.keys("faults/late-shifts.md", causes)
    assert manual.found() == []
