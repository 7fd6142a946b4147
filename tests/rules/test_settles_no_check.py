"""`settles-no-check`: exact wording, and silence where nothing is wrong."""

import pytest

FILE = "faults/late-shifts.md"
CODE = "settles-no-check (stop)"


def keys(told, name="count"):
    text = "checks:\n"
    text += "  count:\n    name: Count the turns\n    minutes: 10\n    access: on the hoist\n"
    text += f"    procedure: count-turns\n    rules_out: [worn-band]\n{told}"
    return text


def calculators(told):
    return keys(f"    calculators:\n      {told}\n")


def test_a_reading_of_its_procedure(manual):
    manual.keys(FILE, keys("    readings: turns-to-seat\n"))
    assert manual.found() == []


def test_a_reading_that_no_procedure_takes(manual):
    manual.keys(FILE, keys("    readings: [turns-to-seet]\n"))
    assert manual.found() == [
        (
            f"{FILE}:16:16 {CODE}",
            "turns-to-seet",
            "No procedure of this check takes the reading turns-to-seet.",
            "Did you mean turns-to-seat?",
        )
    ]


def test_far_off_lists_what_is_taken(manual):
    manual.keys(FILE, keys("    readings: [vacuum]\n"))
    assert [each[3] for each in manual.found()] == ["They take turns-to-seat."]


def test_a_procedure_that_takes_none(manual):
    text = keys("    readings: [vacuum]\n").replace("count-turns", "clean-adjuster")
    manual.keys(FILE, text)
    assert [each[3] for each in manual.found()] == ["None of its procedures takes any."]


def test_a_reading_without_limits(manual):
    manual.keys(FILE, keys("    readings: [turns-to-seat]\n"))
    manual.keys(
        "kestrel-3/count-turns.md",
        "readings:\n  turns-to-seat: {name: Turns, unit: turn, when: as found}\n",
    )
    assert [each[1:] for each in manual.found() if CODE in each[0]] == [
        (
            "turns-to-seat",
            "The reading turns-to-seat has no limits, so it settles nothing.",
            "Give it limits, or take it out here.",
        )
    ]


def test_a_dead_procedure_is_said_once(manual):
    text = keys("    readings: [vacuum]\n").replace("count-turns", "count-them")
    manual.keys(FILE, text)
    assert manual.codes() == ["dead-reference"]


def test_answers_of_a_calculator(manual):
    manual.keys(FILE, calculators("shift-check: {bad: [one-shift], good: [as-specified]}"))
    assert manual.found() == []


def test_one_side_alone_will_do(manual):
    manual.keys(FILE, calculators("signal-vacuum: {bad: line-losing}"))
    assert manual.found() == []


@pytest.mark.parametrize(
    ("written", "told"),
    [
        (
            "shift-chek: {bad: [one-shift]}",
            (
                "shift-chek",
                "No calculator shift-chek names a pattern.",
                "Did you mean shift-check?",
            ),
        ),
        (
            "band-set: {bad: [loose]}",
            (
                "band-set",
                "No calculator band-set names a pattern.",
                "Those that do are shift-check and signal-vacuum.",
            ),
        ),
        (
            "shift-check: {bad: [one-shfit]}",
            ("one-shfit", "shift-check never answers one-shfit.", "Did you mean one-shift?"),
        ),
        (
            "signal-vacuum: {good: [as-specified]}",
            (
                "as-specified",
                "signal-vacuum never answers as-specified.",
                "It answers sound, line-losing, low-and-losing, source-low, source-good, "
                "source-high, impossible, not-read or no-line.",
            ),
        ),
        (
            "shift-check: {bad: [scale], good: [scale]}",
            (
                "scale",
                "The answer scale makes this check both bad and good.",
                "Keep it in one of the two places.",
            ),
        ),
        (
            "shift-check: {bad: []}",
            (
                "Count the turns",
                "No answer of shift-check is written, so it settles nothing.",
                "Write under bad or good which answers settle the check.",
            ),
        ),
    ],
)
def test_what_a_calculator_cannot_answer(manual, written, told):
    manual.keys(FILE, calculators(written))
    assert [each[1:] for each in manual.found()] == [told]
