"""Fitting explanations to a road test. Windows and speeds invented; expected values by hand."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from underhoist_calculators.road_test import RoadTest, beyond, valve
from underhoist_calculators.shift_explanations import chi_square, compare, separating
from underhoist_calculators.shift_model import curve, with_change
from underhoist_calculators.shift_signal import LOSS, by_vacuum
from underhoist_calculators.units import quantity, read_span

WINDOWS = {
    ("1-2", "light"): read_span("16 to 22 km/h"),
    ("1-2", "half"): read_span("42 to 50 km/h"),
    ("1-2", "full"): read_span("60 to 68 km/h"),
    ("2-3", "light"): read_span("30 to 38 km/h"),
    ("2-3", "half"): read_span("71 to 81 km/h"),
    ("2-3", "full"): read_span("100 to 110 km/h"),
    ("3-2", "full"): read_span("86 to 96 km/h"),
}
MIDDLES = dict(zip(WINDOWS, (19, 46, 64, 34, 76, 105, 91), strict=True))
VACUUMS = by_vacuum({"light": 16.0, "half": 8.0, "full": 0.0})
THREE = quantity(3, "kilometre_per_hour")


def speed(value):
    return quantity(value, "kilometre_per_hour")


def road_test(speeds, windows=WINDOWS):
    return RoadTest(windows, {key: speed(value) for key, value in speeds.items()}, THREE)


def scaled(factor, only=None):
    return {
        key: middle * (factor if only in {None, valve(key[0])} else 1)
        for key, middle in MIDDLES.items()
    }


def test_one_valve_makes_a_shift_both_ways():
    assert valve("2-3") == valve("3-2") == "2-3"


@pytest.mark.parametrize(("read", "off"), [(16, 0), (19, 0), (22, 0), (25, 3), (12, -4)])
def test_how_far_beyond_a_window(read, off):
    found = beyond(speed(read), WINDOWS["1-2", "light"])
    assert found.m_as("kilometre_per_hour") == pytest.approx(off)


def test_scatter_is_of_the_reading_and_of_the_window():
    test = road_test({("1-2", "light"): 19, ("2-3", "full"): 105})
    assert test.scatters["1-2", "light"] == pytest.approx((3**2 + 1.5**2) ** 0.5)
    assert test.scatters["2-3", "full"] == pytest.approx((5.25**2 + 2.5**2) ** 0.5)  # 5 % of 105


def test_chi_square_by_hand():
    test = road_test({("1-2", "light"): 25, ("1-2", "half"): 46})
    predicted = {key: float(middle) for key, middle in MIDDLES.items()}
    assert chi_square(test, predicted) == pytest.approx(6**2 / (3**2 + 1.5**2))


def test_as_specified():
    found = compare(road_test(MIDDLES), VACUUMS)
    assert found.best is found.specified
    assert (found.rivals, found.not_judged) == ((), ())


def test_every_speed_inside_its_window_needs_no_explanation():
    high_end = {key: window.high.magnitude for key, window in WINDOWS.items()}
    found = compare(road_test(high_end), VACUUMS)
    assert found.best is found.specified


@pytest.mark.parametrize("factor", [0.75, 1.2, 1.5])
def test_one_factor_on_all(factor):
    best = compare(road_test(scaled(factor)), VACUUMS).best
    assert best is not None
    assert (best.code, best.value) == ("scale", pytest.approx(factor))
    assert best.low < factor < best.high


@pytest.mark.parametrize("bad", ["1-2", "2-3"])
def test_one_valve_alone(bad):
    found = compare(road_test(scaled(1.3, only=bad)), VACUUMS)
    assert found.best is not None
    assert (found.best.code, found.best.shift) == ("one-shift", bad)
    assert found.best.value == pytest.approx(1.3)


@pytest.mark.parametrize("loss", [3.0, 6.0, 10.0])
def test_a_vacuum_loss_is_measured(loss):
    base = road_test({})
    curves = {shift: curve(base, shift, VACUUMS) for shift, _ in WINDOWS}
    speeds = with_change(base, VACUUMS, LOSS, loss, curves)
    best = compare(road_test(speeds), VACUUMS).best
    assert best is not None
    assert (best.code, best.value) == ("vacuum-loss", pytest.approx(loss, abs=0.1))
    assert best.low <= loss <= best.high


def test_square_of_the_speed_is_linear_in_vacuum():
    # By hand: half way between 16 and 8 inHg, N² is half way between 19² and 46².
    found = curve(road_test({}), "1-2", VACUUMS)
    assert found is not None
    assert found.speed(12) == pytest.approx(((19**2 + 46**2) / 2) ** 0.5)
    assert (found.speed(20), found.speed(0)) == (19, 64)


def test_full_throttle_everywhere_cannot_be_told_from_no_vacuum():
    speeds = {("1-2", "light"): 64, ("1-2", "half"): 64, ("2-3", "light"): 105}
    found = compare(road_test(speeds), VACUUMS)
    assert found.best is not None
    assert found.best.code == "full-throttle"
    assert [rival.code for rival in found.rivals] == ["vacuum-loss"]
    assert separating(road_test(speeds), found.best, found.rivals[0]) is None


def test_light_throttle_alone_leaves_scale_and_vacuum_open_and_full_throttle_parts_them():
    speeds = {("1-2", "light"): 30, ("2-3", "light"): 52}
    test = road_test(speeds)
    found = compare(test, VACUUMS)
    assert found.best is not None
    assert {found.best.code, *(rival.code for rival in found.rivals)} == {"vacuum-loss", "scale"}
    parted = separating(test, found.best, found.rivals[0])
    assert parted is not None
    assert parted[0] == ("2-3", "full")


def test_no_single_cause():
    chaos = dict(zip(WINDOWS, (40, 30, 90, 20, 110, 70, 91), strict=True))
    assert compare(road_test(chaos), VACUUMS).best is None


def test_what_cannot_be_judged_is_named():
    windows = {key: window for key, window in WINDOWS.items() if key[1] != "full"}
    found = compare(road_test({("1-2", "light"): 30, ("2-3", "half"): 90}, windows), VACUUMS)
    assert found.not_judged == ("vacuum-loss", "full-throttle")


def test_a_kick_down_alone_does_not_stop_the_vacuum_from_being_judged():
    found = compare(road_test(MIDDLES), VACUUMS)
    assert "vacuum-loss" in {explanation.code for explanation in found.tried}


@settings(max_examples=50)
@given(st.floats(0.6, 1.6))
def test_miles_per_hour_make_no_difference(factor):
    speeds = scaled(factor)
    here = compare(road_test(speeds), VACUUMS)
    miles = {key: speed(value).to("mile_per_hour") for key, value in speeds.items()}
    there = compare(RoadTest(WINDOWS, miles, THREE.to("mile_per_hour")), VACUUMS)
    assert here.specified.chi_square == pytest.approx(there.specified.chi_square, abs=1e-9)
    assert (here.best is None) == (there.best is None)
    if here.best and there.best:
        assert here.best.code == there.best.code


@settings(max_examples=50)
@given(st.floats(0, 15), st.floats(0.2, 5))
def test_losing_more_vacuum_never_brings_an_up_shift_earlier(loss, more):
    base = road_test({})
    curves = {shift: curve(base, shift, VACUUMS) for shift, _ in WINDOWS}
    less = with_change(base, VACUUMS, LOSS, loss, curves)
    greater = with_change(base, VACUUMS, LOSS, loss + more, curves)
    assert all(greater[key] >= less[key] - 1e-9 for key in WINDOWS)
