"""`underhoist calc`: words and exit codes."""

import json

import pytest
from click.testing import CliRunner

from underhoist.cli.calc import calc


def run(*words):
    return CliRunner().invoke(calc, list(words))


@pytest.mark.parametrize("words", [(), ("--list",)])
def test_the_list_names_every_calculator_and_its_purpose(words):
    result = run(*words)
    assert result.exit_code == 0
    assert "torque-units      Gives one torque in every unit" in result.output
    assert "staged-fill       Gives the first fill" in result.output
    assert "shift-check       Judges a road test" in result.output


def test_the_list_of_one_tells_what_it_asks():
    result = run("staged-fill", "--list")
    assert result.exit_code == 0
    assert "service-fill         Service fill. Needed, e.g. 4.2 L." in result.output
    assert (
        "drained-by           How it was drained. One of pan, plug, converter, empty."
        in result.output
    )
    assert "860 kg/m³ where nothing is written." in result.output


def test_an_answer():
    result = run("torque-units", "torque=120 in-lb")
    assert result.exit_code == 0
    assert "120 lbf·in is 13.6 N·m, 10 lbf·ft" in result.stdout
    assert result.stderr == ""


def test_json():
    result = run("torque-units", "torque=120 in-lb", "--json")
    data = json.loads(result.stdout)
    assert (result.exit_code, data["ok"], data["errors"]) == (0, True, {})
    assert data["answer"]["values"]["newton_metre"]["value"] == pytest.approx(13.55817948331404)


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["torque=9"], "torque: The unit is missing. Write 9 N·m, 9 lbf·ft or 9 lbf·in.\n"),
        (["torque"], "torque: Nothing is written. Write 120 lbf·in.\n"),
        ([], "torque: Nothing is written. Write 120 lbf·in.\n"),
        (["tork=9 N·m", "torque=9 N·m"], "tork: torque-units has no entry tork. Use torque.\n"),
    ],
)
def test_bad_entries_name_their_field(words, said):
    result = run("torque-units", *words)
    assert (result.exit_code, result.stdout, result.stderr) == (1, "", said)


def test_bad_entries_as_json():
    result = run("torque-units", "torque=12 lb", "--json")
    data = json.loads(result.stdout)
    assert (result.exit_code, data["ok"], data["answer"]) == (1, False, None)
    assert data["errors"]["torque"]["written"] == "12 lb"


def test_no_such_calculator():
    result = run("torque-unit", "torque=9 N·m")
    assert (result.exit_code, result.stdout) == (2, "")
    assert result.stderr == "There is no calculator torque-unit. Did you mean torque-units?\n"
