"""The shared table of (calculator, entries, expected), run here in CPython.

tests/published/door_cases.json is run again in the browser. Its expected values come from
published figures or plain arithmetic, never from the program.
"""

import json
from pathlib import Path

import pytest
from underhoist_calculators import NoSuchCalculatorError, all_calculators, door

CASES = json.loads((Path(__file__).parents[1] / "published/door_cases.json").read_text())


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_case(case):
    result = door.run(case["calculator"], case["entries"])
    assert result["errors"] == case["errors"]
    assert result["ok"] is case["ok"]
    if not case["ok"]:
        assert result["answer"] is None
        return
    if case["summary"]:
        assert result["answer"]["summary"] == case["summary"]
    for name, expected in case["values"].items():
        found = result["answer"]["values"][name]
        if isinstance(expected, str):
            assert found == expected
        else:
            assert found["unit"] == expected["unit"]
            assert found["value"] == pytest.approx(expected["value"], rel=case["rel"], abs=1e-9)


def test_every_calculator_has_good_and_bad_cases():
    for calculator in all_calculators():
        outcomes = {case["ok"] for case in CASES if case["calculator"] == calculator.name}
        assert outcomes == {True, False}, calculator.name


@pytest.mark.parametrize("calculator", all_calculators(), ids=lambda c: c.name)
def test_the_example_answers(calculator):
    result = door.run(calculator.name, door.example(calculator.name))
    assert result["errors"] == {}
    assert result["answer"]["summary"]
    assert result["answer"]["working"]


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_everything_is_plain_data(case):
    result = door.run(case["calculator"], case["entries"])
    assert json.loads(json.dumps(result)) == result


def test_nothing_is_filled_from_an_example_unseen():
    errors = door.run("torque-units", {})["errors"]
    assert errors == {
        "torque": {"written": "", "wrong": "Nothing is written.", "mend": "Write 120 lbf·in."}
    }


def test_description_is_plain_data():
    described = door.describe("staged-fill")
    assert json.loads(json.dumps(described)) == described
    assert "run" not in described
    fields = {field["name"]: field for field in described["fields"]}
    assert fields["service-fill"]["fills_from"] == "fluid.service_fill"


def test_an_unknown_name_offers_the_nearest():
    with pytest.raises(NoSuchCalculatorError) as refused:
        door.run("torque-unit", {})
    assert str(refused.value) == ("There is no calculator torque-unit. Did you mean torque-units?")


def test_an_unknown_name_far_from_all_lists_them():
    with pytest.raises(
        NoSuchCalculatorError, match=r"^There is no calculator xyz\. There are: .*staged-fill, "
    ):
        door.run("xyz", {})
