"""Where explanations begin and cease to count: each bound by its stated reason, or by hand."""

import pytest
from underhoist_calculators.road_test import RoadTest, in_words
from underhoist_calculators.shift_explanations import (
    Comparison,
    Explanation,
    compare,
    lone_reading,
    ruled_out,
    separating,
)
from underhoist_calculators.shift_model import curve, with_change
from underhoist_calculators.shift_signal import LOSS, by_vacuum
from underhoist_calculators.units import quantity, read_span

ONE_TWO, TWO_THREE = ("1-2", "light"), ("2-3", "light")
WINDOWS = {
    ONE_TWO: read_span("16 to 22 km/h"),
    ("1-2", "full"): read_span("60 to 68 km/h"),
    TWO_THREE: read_span("30 to 38 km/h"),
    ("2-3", "full"): read_span("100 to 110 km/h"),
    ("3-2", "full"): read_span("86 to 96 km/h"),
}
VACUUMS = by_vacuum({"light": 16.0, "half": 8.0, "full": 0.0})
SCATTER = (3**2 + 1.5**2) ** 0.5
"""Of the 1-2 at light throttle: 3 km/h to read, and half of a window of 3 km/h either way."""


def road_test(speeds, windows=WINDOWS):
    measured = {key: quantity(speed, "kilometre_per_hour") for key, speed in speeds.items()}
    return RoadTest(windows, measured, quantity(3, "kilometre_per_hour"))


def codes(found):
    assert found.best is not None
    return [found.best.code, *(rival.code for rival in found.rivals)]


def explanation(**given):
    return Explanation(**{"code": "scale", "parameters": 1, "predicted": {}, "chi_square": 0.0,
                          "readings": 7, **given})  # fmt: skip


@pytest.mark.parametrize(("deviations", "earned"), [(1.995, False), (2.005, True)])
def test_two_deviations_earn_an_explanation(deviations, earned):
    found = compare(road_test({ONE_TWO: 19 + deviations * SCATTER}), VACUUMS)
    assert (found.best is not found.specified) is earned


@pytest.mark.parametrize(("chi_square", "rival"), [(5.97, True), (6.03, False)])
def test_as_specified_stays_beside_the_best_until_the_odds_are_seven_to_one(chi_square, rival):
    # Odds of exp(gap / 2); a gap of 4 is 7.4 to 1. One parameter costs 2, so chi-square may be 6.
    found = compare(road_test({ONE_TWO: 19 + chi_square**0.5 * SCATTER}), VACUUMS)
    assert ("as-specified" in codes(found)) is rival


@pytest.mark.parametrize(("gap", "rival"), [(3.97, True), (4.03, False)])
def test_a_rival_is_dropped_at_odds_of_seven_to_one(gap, rival):
    # The 2-3 as specified, the 1-2 late by one factor: its valve alone costs one parameter more
    # than all speeds alike, whose misfit must then be greater by the gap and 2. By bisection.
    def tried(factor):
        speeds = {ONE_TWO: 19 * factor, ("1-2", "full"): 64 * factor, ("2-3", "full"): 105}
        found = compare(road_test(speeds), VACUUMS)
        by_code = {(each.code, each.shift): each for each in found.tried}
        one, scale = by_code["one-shift", "1-2"], by_code["scale", ""]
        return found, scale.score - one.score

    low, high = 1.0, 1.5
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if tried(middle)[1] < gap else (low, middle)
    found, reached = tried(low)
    assert reached == pytest.approx(gap)
    assert codes(found)[0] == "one-shift"
    assert ("scale" in codes(found)) is rival


def test_a_parameter_costs_two():
    # Akaike's information criterion.
    assert explanation(parameters=2, chi_square=1.5).score == pytest.approx(5.5)


def test_what_an_explanation_gains_is_the_misfit_that_it_takes_away():
    specified = explanation(code="as-specified", parameters=0, chi_square=9.0)
    assert explanation(chi_square=1.5).gain(specified) == pytest.approx(7.5)


@pytest.mark.parametrize(
    ("speeds", "alone"),
    [
        ({ONE_TWO: 23, TWO_THREE: 34}, ONE_TWO),
        ({ONE_TWO: 23, TWO_THREE: 29}, None),
        ({ONE_TWO: 19, TWO_THREE: 34}, None),
        ({ONE_TWO: 30, TWO_THREE: 34}, None),  # explained
    ],
)
def test_a_lone_reading_is_the_only_one_outside_and_unexplained(speeds, alone):
    test = road_test(speeds)
    assert lone_reading(test, compare(test, VACUUMS)) == alone


def test_which_part_is_out_is_a_parameter_of_its_own():
    found = compare(road_test({ONE_TWO: 19, TWO_THREE: 34, ("3-2", "full"): 91}), VACUUMS)
    assert {each.code: each.parameters for each in found.tried} == {
        "as-specified": 0,
        "scale": 1,
        "one-shift": 2,
        "kick-down": 2,
        "vacuum-loss": 1,
        "full-throttle": 0,
    }


@pytest.mark.parametrize(
    ("readings", "parameters", "chi_square", "fits"),
    [
        # Mean and deviation of chi-square: free and sqrt(2 free). 5 + 3 sqrt(10) = 14.487.
        (7, 2, 14.48, True),
        (7, 2, 14.49, False),
        # With no reading to spare it is taken as one: 1 + 3 sqrt(2) = 5.243.
        (1, 2, 5.24, True),
        (1, 2, 5.25, False),
    ],
)
def test_fit_is_within_three_deviations_of_chi_square(readings, parameters, chi_square, fits):
    each = explanation(readings=readings, parameters=parameters, chi_square=chi_square)
    assert each.fits is fits


def test_what_has_no_parameter_has_no_value_and_no_range():
    found = compare(road_test({ONE_TWO: 30}), VACUUMS).specified
    assert (found.value, found.low, found.high) == (0, 0, 0)


def test_the_factor_weighs_each_reading_by_its_scatter():
    # By hand: at 70 and 140 km/h the readings are good for 3.5 and 7 km/h (5 %).
    test = road_test({("1-2", "full"): 70, ("2-3", "full"): 140})
    one, other = 1 / (3.5**2 + 2**2), 1 / (7**2 + 2.5**2)
    bottom = one * 64**2 + other * 105**2
    factor = (one * 64 * 70 + other * 105 * 140) / bottom
    scale = next(each for each in compare(test, VACUUMS).tried if each.code == "scale")
    assert scale.value == pytest.approx(factor, rel=1e-12)
    assert scale.high - factor == pytest.approx(bottom**-0.5)
    assert factor - scale.low == pytest.approx(bottom**-0.5)


@pytest.mark.parametrize(
    ("code", "moved"),
    [
        ("one-shift", [TWO_THREE, ("2-3", "full"), ("3-2", "full")]),
        ("kick-down", [("3-2", "full")]),
    ],
)
def test_what_is_not_part_of_it_comes_as_specified(code, moved):
    test = road_test({TWO_THREE: 60, ("3-2", "full"): 120})
    found = next(each for each in compare(test, VACUUMS).tried if each.code == code)
    for key, point in test.points.items():
        factor = found.value if key in moved else 1
        assert found.predicted[key] == pytest.approx(factor * point.middle, rel=1e-12)


def loss_of(speeds):
    return next(
        each for each in compare(road_test(speeds), VACUUMS).tried if each.code == "vacuum-loss"
    )


def test_no_more_vacuum_can_be_lost_than_there_is():
    lost = loss_of({ONE_TWO: 64, TWO_THREE: 105})
    assert lost.value == pytest.approx(16)
    assert lost.high == pytest.approx(16)


def test_losses_are_tried_to_a_fifth_of_an_inch():
    shift = curve(road_test({}), "1-2", VACUUMS)
    assert shift is not None
    for loss in (0.2, 3.0, 7.4):
        assert loss_of({ONE_TWO: shift.speed(16 - loss)}).value == pytest.approx(loss, abs=1e-9)


def test_the_range_of_a_loss_is_one_deviation_of_the_reading():
    shift = curve(road_test({}), "1-2", VACUUMS)
    assert shift is not None
    speed = shift.speed(16 - 4.0)
    lost = loss_of({ONE_TWO: speed})
    for end, further in ((lost.low, lost.low - 0.2), (lost.high, lost.high + 0.2)):
        assert abs(shift.speed(16 - end) - speed) <= SCATTER
        assert abs(shift.speed(16 - further) - speed) > SCATTER


def test_without_vacuum_the_shift_comes_at_full_throttle_exactly():
    test = road_test({})
    curves = {shift: curve(test, shift, VACUUMS) for shift in ("1-2", "2-3", "3-2")}
    gone = with_change(test, VACUUMS, LOSS, 16.0, curves)
    assert gone[ONE_TWO] == pytest.approx(64, rel=1e-12)
    assert with_change(test, VACUUMS, LOSS, 20.0, curves) == gone


def test_two_windows_make_a_curve_and_one_does_not():
    assert curve(road_test({}), "1-2", VACUUMS) is not None
    assert curve(road_test({}), "3-2", VACUUMS) is None


def test_the_separating_reading_is_the_one_that_differs_most_for_its_scatter():
    # By hand: 8 km/h at light throttle is 2.4 deviations, 10 km/h at 105 is 1.7 (5.25 and 2.5).
    specified = {key: point.middle for key, point in road_test({}).points.items()}
    other = {**specified, ONE_TWO: 27.0, ("2-3", "full"): 115.0}
    found = separating(
        road_test({TWO_THREE: 34}), explanation(predicted=specified), explanation(predicted=other)
    )
    assert found is not None
    assert found == (ONE_TWO, pytest.approx(8 / SCATTER))


@pytest.mark.parametrize(("deviations", "told"), [(1.99, False), (2.01, True)])
def test_less_than_two_deviations_separate_nothing(deviations, told):
    one = explanation(predicted={ONE_TWO: 19.0})
    other = explanation(predicted={ONE_TWO: 19 + deviations * SCATTER})
    assert (separating(road_test({TWO_THREE: 34}), one, other) is not None) is told


@pytest.mark.parametrize(("deviations", "told"), [(1.99, False), (2.01, True)])
def test_less_than_two_deviations_rule_nothing_out(deviations, told):
    test = road_test({ONE_TWO: 19 + deviations * SCATTER, TWO_THREE: 34})
    specified = explanation(code="as-specified", predicted={})
    best = explanation(code="vacuum-loss", predicted={})
    tried = explanation(predicted={ONE_TWO: 19.0, TWO_THREE: 34.0})
    found = ruled_out(test, Comparison(specified=specified, best=best, tried=(tried,)))
    assert found == (((tried, ONE_TWO),) if told else ())


def test_where_all_is_in_order_only_what_has_no_size_is_ruled_out():
    found = compare(road_test({ONE_TWO: 19, TWO_THREE: 34}), VACUUMS)
    assert [(each.code, key) for each, key in ruled_out(road_test({ONE_TWO: 19}), found)] == [
        ("full-throttle", ONE_TWO)
    ]


@pytest.mark.parametrize(
    ("key", "words"),
    [
        (ONE_TWO, "1-2 at light throttle"),
        (("3-2", "full"), "3-2 kick-down"),
        (("3-2", "light"), "3-2 coast-down"),
    ],
)
def test_a_shift_is_named_as_it_is_driven(key, words):
    assert in_words(key) == words
