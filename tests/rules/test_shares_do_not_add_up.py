"""`shares-do-not-add-up`: exact wording, and silence where nothing is wrong."""

FILE = "faults/late-shifts.md"


def causes(band, *, none=None, other=None):
    text = f"causes:\n  worn-band: {{name: Worn band, likelihood: {band} %}}\n"
    if other is not None:
        text += f"  slack-band: {{name: Slack band, likelihood: {other} %}}\n"
        text += "checks:\n  count: {name: Count the turns, minutes: 10, access: on the hoist, "
        return text + "rules_out: [worn-band, slack-band]}\n"
    if none is not None:
        text += f"  none-of-these: {{name: None of these, likelihood: {none} %}}\n"
    return text


def test_too_much_with_none_of_these(manual):
    manual.keys(FILE, causes(80, none=40))
    assert manual.found() == [
        (
            "faults/late-shifts.md:11:52 shares-do-not-add-up (stop)",
            "40 %",
            "The likelihoods of this page make 120 %.",
            "Write 20 % here, or change the others: they make 100 %.",
        )
    ]


def test_too_little_with_none_of_these(manual):
    manual.keys(FILE, causes(33.3, none=40))
    assert [each[2:] for each in manual.found()] == [
        (
            "The likelihoods of this page make 73.3 %.",
            "Write 66.7 % here, or change the others: they make 100 %.",
        )
    ]


def test_too_much_without(manual):
    manual.keys(FILE, causes(80, other=40))
    assert [each[1:] for each in manual.found()] == [
        (
            "40 %",
            "The likelihoods of this page make 120 %.",
            "Take some away until they make 100 % or less.",
        )
    ]


def test_less_leaves_none_of_these(manual):
    manual.keys(FILE, causes(50, other=30))
    assert manual.found() == []


def test_a_hundred(manual):
    manual.keys(FILE, causes(66.7, none=33.3))
    assert manual.found() == []
