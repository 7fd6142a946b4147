"""The gear ratio calculator: what it says of trains that work, cannot be built, or lack a count."""

import pytest
from underhoist_calculators import door


def run(**entries):
    return door.run("gear-ratios", {name.replace("_", "-"): text for name, text in entries.items()})


def test_demo_three_speed():
    answer = run(train="simpson", sun="31", ring="73", planet="21", planets="4")["answer"]
    assert answer["summary"] == (
        "The ratios are first 2.425, second 1.425, third 1.000, reverse 2.355 backwards."
    )
    assert answer["warnings"] == []
    assert answer["plates"][3]["unit"] == (
        "turns of the input for one of the output, turning backwards"
    )
    assert answer["plates"][0]["note"] == "Exactly 177/73."


def test_two_speed_set_that_cannot_be_built():
    answer = run(
        train="ravigneaux-two-speed", double_sun="30", single_sun="25", ring="82", planets="3"
    )["answer"]
    assert answer["summary"].endswith("A set with these counts cannot be built as it stands.")
    assert answer["values"]["can_be_built"] == "no"
    assert len(answer["warnings"]) == 3


def test_two_speed_set_that_can():
    answer = run(
        train="ravigneaux-two-speed", double_sun="30", single_sun="24", ring="84", planets="3"
    )["answer"]
    assert answer["values"]["can_be_built"] == "yes"
    assert answer["warnings"] == [
        "The ring's planets have 30 teeth. Inner planets of 12 to 20 teeth would fit."
    ]


def test_a_fault_names_its_set():
    answer = run(
        train="simpson-overdrive", sun="30", ring="74", overdrive_sun="33", overdrive_ring="80"
    )["answer"]
    assert answer["warnings"][0] == (
        "Overdrive: The space between sun 33 and ring 80 takes a planet of 23.5 teeth, which is "
        "not a whole number."
    )


def test_a_single_set_shows_its_six_ratios_and_no_plates():
    answer = run(train="single", sun="30", ring="72", planets="3")["answer"]
    assert answer["plates"] == []
    assert ["ring held, sun in, carrier out", "3.4000"] in answer["tables"][1]["rows"]


def test_counts_of_another_train_are_named_not_used():
    answer = run(train="simpson", sun="31", ring="73", planets="4", overdrive_sun="33")["answer"]
    assert answer["warnings"] == ["Not used by this train: overdrive sun."]


def test_without_the_number_of_planets_it_says_what_is_not_checked():
    answer = run(train="simpson", sun="31", ring="73")["answer"]
    assert answer["warnings"] == [
        "Whether the planets can be put in is not checked: their number is not written."
    ]


@pytest.mark.parametrize(
    ("entries", "field", "wrong"),
    [
        (
            {"train": "simpson", "ring": "73"}, "sun",
            "This train cannot be worked out without the teeth of its sun.",
        ),
        (
            {"train": "simpson", "sun": "73", "ring": "31"}, "sun",
            "A sun of 73 teeth does not go into a ring of 31.",
        ),
        (
            {"train": "simpson", "sun": "31", "ring": "73", "rear_sun": "30"}, "rear-ring",
            "A rear set of its own needs both its sun and its ring.",
        ),
        ({"train": "single", "sun": "30.5", "ring": "72"}, "sun", "30.5 is not a whole number."),
    ],
)  # fmt: skip
def test_refused(entries, field, wrong):
    errors = run(**entries)["errors"]
    assert errors[field]["wrong"] == wrong
