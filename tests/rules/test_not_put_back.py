"""`not-put-back`: exact wording, and silence where nothing is wrong."""

OFF = """\
## Steps

1. Take both off.

    Off: heat shield, dipstick tube.
"""


def test_off_and_never_on(manual):
    manual.body("kestrel-3/clean-adjuster.md", OFF)
    manual.body("any-unit/raise-vehicle.md", "## Steps\n\n1. Fit it.\n\n    Back on: Heat shield\n")
    assert manual.found() == [
        (
            "kestrel-3/clean-adjuster.md:21:5 not-put-back (stop)",
            "dipstick tube",
            "This comes off, and no step puts it back on: dipstick tube.",
            "Write Back on: dipstick tube in the step that puts it back.",
        )
    ]


def test_other_words_for_it(manual):
    manual.body("kestrel-3/clean-adjuster.md", OFF)
    manual.body(
        "any-unit/raise-vehicle.md",
        "## Steps\n\n1. Fit them.\n\n    Back on: heat shields, dipstick tube\n",
    )
    (found,) = manual.found()
    assert found[3] == "Did you mean heat shields?"


def test_put_back_by_a_procedure_for_any_unit(manual):
    manual.body("kestrel-3/clean-adjuster.md", OFF)
    manual.body(
        "any-unit/leak-check.md",
        "## Steps\n\n1. Fit them.\n\n    Back on: dipstick tube, heat\n    shield\n",
    )
    assert manual.found() == []
