"""The adapter formula against published settings (tests/published/torque_wrenches.json)."""

import json
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from underhoist_calculators import door
from underhoist_calculators.adapter import Arm
from underhoist_calculators.units import quantity

PUBLISHED = Path(__file__).parents[1] / "published/torque_wrenches.json"
CASES = {case["id"]: case for case in json.loads(PUBLISHED.read_text())}
UNITS = {
    "lbf.in": "pound_force_inch", "lbf.ft": "pound_force_foot", "N.m": "newton_metre",
    "in": "inch", "mm": "millimetre", "deg": "degree",
}  # fmt: skip

LENGTHS = st.floats(100, 1000)
SHARES = st.floats(0, 0.95)
ANGLES = st.floats(0, 180)
TORQUES = st.floats(1, 500)


def arm(length, adapter, angle, unit="millimetre"):
    return Arm(
        wrench=quantity(length, unit), adapter=quantity(adapter, unit),
        angle=quantity(angle, "degree"),
    )  # fmt: skip


def newton_metres(value):
    return quantity(value, "newton_metre")


def typed(value):
    return quantity(value["value"], UNITS[value["unit"]])


def arm_of(inputs):
    return Arm(
        wrench=typed(inputs["wrench_length_L"]),
        adapter=typed(inputs["adapter_length_E"]),
        angle=typed(inputs["offset_angle"]),
    )


@pytest.mark.parametrize(
    "case", ["TE-03", "TE-04", "TE-05", "TE-08", "TE-09", "TE-10", "TE-12", "TE-16"]
)
def test_published_setting(case):
    entries, expected, allowed = (CASES[case][k] for k in ("inputs", "expected", "tolerance"))
    found = arm_of(entries).setting(typed(entries["target_torque"]))
    unit = UNITS[expected["unit"]]
    assert found.m_as(unit) == pytest.approx(
        expected["value"], rel=allowed.get("rel", 1e-12), abs=allowed.get("abs", 0)
    )


@pytest.mark.parametrize("case", ["TE-01", "TE-15"])
def test_published_torque_applied(case):
    entries, expected = CASES[case]["inputs"], CASES[case]["expected"]
    found = arm_of(entries).applied(typed(entries["wrench_setting"]))
    assert found.m_as(UNITS[expected["unit"]]) == pytest.approx(expected["value"], rel=1e-9)


def test_te_05_converted_before_rounding():
    # TE-05: 17 lb-ft is printed as 23.0 N·m, a rounded number converted. The true one is 22.67.
    exact = arm(22, 3, 0, "inch").setting(quantity(19, "pound_force_foot"))
    assert exact.m_as("newton_metre") == pytest.approx(22.67, abs=0.005)


def test_a_multiplied_lever_arm_is_not_reproduced():
    # TE-09: the copy prints "IT x IA cos a", a scan error for +; it would give 1.96 lbf·in.
    found = arm(12, 6, 45, "inch").setting(quantity(100, "pound_force_inch"))
    assert found.m_as("pound_force_inch") > 70


def test_adapter_longer_than_the_wrench_is_refused():
    with pytest.raises(ValueError, match=r"An adapter of 15 in is longer than the wrench, 12 in"):
        arm_of(CASES["TE-14"]["inputs"])


@pytest.mark.parametrize("short_of", [0, 0.001])
def test_an_arm_of_no_length_is_refused(short_of):
    with pytest.raises(ValueError, match=r"^The effective length must be greater than zero\.$"):
        arm(12, 12 - short_of, 180, "inch")


def test_the_shortest_arm_that_is_none():
    assert arm(1000, 998.995, 180).effective.magnitude == pytest.approx(1.005)
    with pytest.raises(ValueError, match="greater than zero"):
        arm(1000, 999.005, 180)


@given(LENGTHS, SHARES, TORQUES)
def test_straight_on_the_wrench_is_set_lower(length, share, torque):
    setting = arm(length, length * share, 0).setting(newton_metres(torque))
    assert setting.m_as("newton_metre") == pytest.approx(torque / (1 + share), rel=1e-12)


@given(LENGTHS, SHARES, TORQUES)
def test_square_to_the_wrench_changes_nothing(length, share, torque):
    setting = arm(length, length * share, 90).setting(newton_metres(torque))
    assert setting.m_as("newton_metre") == pytest.approx(torque, rel=1e-12)


@given(LENGTHS, SHARES, TORQUES)
def test_back_along_the_handle_the_wrench_is_set_higher(length, share, torque):
    setting = arm(length, length * share, 180).setting(newton_metres(torque))
    assert setting.m_as("newton_metre") == pytest.approx(torque / (1 - share), rel=1e-9)


@given(LENGTHS, SHARES, ANGLES, TORQUES)
def test_the_setting_applies_the_torque(length, share, angle, torque):
    lever = arm(length, length * share, angle)
    assert lever.applied(lever.setting(newton_metres(torque))).magnitude == pytest.approx(torque)


@given(LENGTHS, st.floats(0.05, 0.95), st.floats(0, 170), st.floats(1, 10))
def test_turning_the_adapter_back_raises_the_setting(length, share, angle, step):
    adapter = length * share
    assert arm(length, adapter, angle).ratio < arm(length, adapter, angle + step).ratio


@given(LENGTHS, st.floats(0, 0.9), st.floats(0.01, 0.05), st.floats(0, 85))
def test_a_longer_adapter_ahead_lowers_the_setting(length, share, more, angle):
    longer = arm(length, length * (share + more), angle)
    assert longer.ratio < arm(length, length * share, angle).ratio


@given(LENGTHS, SHARES, ANGLES)
def test_inches_and_millimetres_agree(length, share, angle):
    inches = arm(length / 25.4, length * share / 25.4, angle, "inch")
    assert inches.ratio == pytest.approx(arm(length, length * share, angle).ratio, rel=1e-9)


def run(**entries):
    common = {"torque": "20 N·m", "wrench": "300 mm", "adapter": "300 mm"}
    return door.run("adapter-setting", common | entries)


def test_a_setting_below_the_range_is_warned_of():
    # TE-24
    answer = run(range="20 to 100 N·m")["answer"]
    assert answer["values"]["range"] == "below wrench range"
    assert answer["warnings"] == [
        "10 N·m is below this wrench's range of 20 N·m to 100 N·m. Take another wrench, or set the "
        "adapter square to it (90°), where nothing has to be corrected."
    ]


def test_a_setting_above_the_range_is_warned_of():
    answer = run(adapter="100 mm", angle="180°", range="5 to 25 N·m")["answer"]
    assert answer["values"]["range"] == "above wrench range"
    assert answer["warnings"][0].startswith("30 N·m is above this wrench's range of 5 N·m to 25")


@pytest.mark.parametrize("scale", ["10 to 100 N·m", "5 to 10 N·m"])
def test_a_setting_within_the_range_is_not_warned_of(scale):
    answer = run(range=scale)["answer"]
    assert answer["values"]["range"] == "within wrench range"
    assert answer["warnings"] == []


def test_the_setting_is_given_on_the_scale_of_the_wrench():
    answer = run(torque="19 lbf·ft", range="5 to 100 N·m", step="0.5 N·m")["answer"]
    # 19 lbf·ft halved is 12.880 N·m; the nearest half is 13.
    assert answer["summary"] == "Set 13 N·m for 19 lbf·ft at the fastener."
    (shown,) = answer["plates"]
    assert shown["exact"]["value"] == pytest.approx(9.5 * 1.3558179483314, rel=1e-9)
    assert shown["note"] == "The fastener gets 19.2 lbf·ft."


def test_half_a_step_is_rounded_up():
    assert run(torque="21 N·m", step="1 N·m")["answer"]["values"]["set"]["value"] == 11


def test_a_scale_too_coarse_is_refused():
    errors = run(torque="1 N·m", step="5 N·m")["errors"]
    assert errors == {
        "step": {
            "written": "5 N·m",
            "wrong": "Steps of 5 N·m are too coarse for 0.50 N·m.",
            "mend": "Take a wrench with a finer scale.",
        }
    }


def test_a_wrench_pulled_without_the_correction():
    # TE-15 turned: set to the target, a 6 in adapter on 12 in puts half as much again on it.
    answer = run(torque="100 lbf·in", wrench="12 in", adapter="6 in", **{"set-to": "100 lbf·in"})
    (warning,) = answer["answer"]["warnings"]
    assert warning == (
        "At 100 lbf·in the fastener got 150 % of 100 lbf·in, more than is wanted. Loosen it and "
        "tighten it again; look at the thread where it was too much."
    )


@pytest.mark.parametrize("set_to", ["10 N·m", "10.5 N·m", "9.5 N·m"])
def test_within_a_twentieth_nothing_is_said(set_to):
    assert run(**{"set-to": set_to})["answer"]["warnings"] == []


def test_just_over_a_twentieth_is_warned_of():
    assert len(run(**{"set-to": "10.503 N·m"})["answer"]["warnings"]) == 1


@pytest.mark.parametrize(("torque", "shown"), [("20.992 N·m", 10), ("2 N·m", 1), ("1 N·m", 1)])
def test_steps_near_a_half_and_the_lowest(torque, shown):
    assert run(torque=torque, step="1 N·m")["answer"]["values"]["set"]["value"] == shown


@pytest.mark.parametrize(
    ("set_to", "number"),
    [("2.839", "5.68"), ("5", "10.0"), ("5.25", "10.5"), ("50", "100"), ("50.2", "100")],
)
def test_what_was_applied_is_shown_to_three_figures(set_to, number):
    # A 300 mm adapter on a 300 mm wrench doubles it.
    assert run(**{"set-to": f"{set_to} N·m"})["answer"]["plates"][1]["number"] == number
