"""The balance at the shift valve against a root finder, and its inverse."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.optimize import brentq
from underhoist_calculators.governor import PlainWeight, Sprung
from underhoist_calculators.shift_balance import BalanceError, Loss, calibrate, loss_for

DEMO = {"1-2": ((16.0, 19.0), (0.0, 64.0)), "2-3": ((16.0, 34.0), (0.0, 105.0))}
HALF = {"1-2": (42, 50), "2-3": (71, 81)}
"""The demo family's middles at light and full throttle, and its windows at half throttle."""

SPRUNG = Sprung(((10.0, 15.0), (40.0, 110.0), (80.0, 220.0), (120.0, 310.0)))
"""Invented points of a spring-calibrated governor, km/h and kPa."""

GOVERNORS = st.sampled_from([PlainWeight(), PlainWeight(3.7), SPRUNG])
VACUUMS = st.floats(0, 16)


@pytest.mark.parametrize("shift", DEMO)
def test_demo_family_fits_the_model_at_half_throttle(shift):
    low, high = HALF[shift]
    assert low <= calibrate(PlainWeight(), *DEMO[shift]).speed(8.0) <= high


def test_demo_family_loses_4_inches_as_its_page_says():
    # procedures/families/kestrel-3.md: about 36 and about 60 km/h at light throttle.
    found = [round(calibrate(PlainWeight(), *known).speed(12.0)) for known in DEMO.values()]
    assert found == [36, 60]


@given(GOVERNORS, st.sampled_from(list(DEMO.values())), VACUUMS)
def test_speed_agrees_with_a_root_finder(governor, known, vacuum):
    balance = calibrate(governor, *known)

    def unbalanced(speed):
        return governor.pressure(speed) - (balance.alpha - balance.beta * vacuum)

    root = brentq(unbalanced, known[0][1] - 1, known[1][1] + 1, xtol=1e-12)
    assert balance.speed(vacuum) == pytest.approx(root, abs=1e-6)


@given(GOVERNORS, st.sampled_from(list(DEMO.values())))
def test_it_goes_through_its_known_points(governor, known):
    balance = calibrate(governor, *known)
    for vacuum, speed in known:
        assert balance.speed(vacuum) == pytest.approx(speed, abs=1e-6)


@given(GOVERNORS, VACUUMS, VACUUMS)
def test_less_vacuum_is_a_later_shift(governor, one, other):
    balance = calibrate(governor, *DEMO["2-3"])
    less, more = sorted((one, other))
    assert balance.speed(less) >= balance.speed(more) - 1e-9


@given(GOVERNORS, st.floats(0.0, 15.9))
def test_the_loss_that_made_a_speed_is_found_again(governor, loss):
    balance = calibrate(governor, *DEMO["2-3"])
    found = loss_for(balance, 16.0, balance.speed(16.0 - loss), 0.0)
    assert isinstance(found, Loss)
    assert found.best == pytest.approx(loss, abs=1e-6)


@given(st.floats(0.0, 15.0), st.floats(0.1, 5))
def test_uncertainty_holds_the_true_loss(loss, uncertainty):
    balance = calibrate(PlainWeight(), *DEMO["2-3"])
    for error in (-uncertainty, 0.0, uncertainty):
        found = loss_for(balance, 16.0, balance.speed(16.0 - loss) + error, uncertainty)
        assert isinstance(found, Loss)
        assert found.least - 1e-9 <= loss <= found.most + 1e-9


@given(st.floats(0.1, 50), VACUUMS)
def test_only_ratios_of_pressure_matter(factor, vacuum):
    plain = calibrate(PlainWeight(), *DEMO["1-2"])
    other = calibrate(PlainWeight(factor), *DEMO["1-2"])
    assert other.speed(vacuum) == pytest.approx(plain.speed(vacuum))


@given(st.floats(0, 30))
def test_beyond_its_ends_vacuum_does_nothing_more(more):
    balance = calibrate(PlainWeight(), *DEMO["1-2"], cut_off=17.0)
    assert balance.speed(-more) == balance.ceiling == 64.0
    assert balance.speed(17.0 + more) == balance.floor


@given(st.floats(60, 110), st.floats(0.5, 3))
def test_a_plain_weight_and_its_own_points_agree_near_the_points(top, uncertainty):
    # Dense points of the square law stand for a plain weight.
    assume(uncertainty > 0)
    dense = Sprung(tuple((float(n), float(n * n)) for n in range(5, 130, 5)))
    known = ((16.0, 20.0), (0.0, top))
    plain, sprung = calibrate(PlainWeight(), *known), calibrate(dense, *known)
    for vacuum in (2, 8, 14):
        assert sprung.speed(vacuum) == pytest.approx(plain.speed(vacuum), abs=0.1)


def test_later_than_full_throttle_is_not_explained():
    balance = calibrate(PlainWeight(), *DEMO["1-2"])
    assert loss_for(balance, 16.0, 70.0, 3.0) == "late"
    assert isinstance(loss_for(balance, 16.0, 66.0, 3.0), Loss)


def test_earlier_than_the_limit_is_not_explained():
    balance = calibrate(PlainWeight(), *DEMO["1-2"])
    assert loss_for(balance, 16.0, 12.0, 3.0) == "early"
    assert isinstance(loss_for(balance, 16.0, 17.0, 3.0), Loss)


@pytest.mark.parametrize(
    ("one", "other", "cut_off", "said"),
    [
        ((8, 20), (8, 60), None, "Both known points are at the same vacuum."),
        ((16, 60), (0, 20), None, "With more throttle the shift must come at a higher speed."),
        ((16, 20), (0, 20), None, "With more throttle the shift must come at a higher speed."),
        ((16, 19), (0, 64), 18, "At its earliest the shift would come at a standstill"),
    ],
)
def test_points_that_make_no_balance_are_refused(one, other, cut_off, said):
    with pytest.raises(BalanceError, match=said):
        calibrate(PlainWeight(), one, other, cut_off)


@pytest.mark.parametrize(
    ("one", "other", "said"),
    [
        ((16, 8), (0, 64), "The governor's points do not reach over the shift speeds."),
        ((16, 19), (0, 125), "The governor's points do not reach over the shift speeds."),
        ((16, 19), (4, 115), "At its latest the shift would come above the governor's points."),
    ],
)
def test_beyond_the_governors_points_is_refused(one, other, said):
    with pytest.raises(BalanceError, match=said):
        calibrate(SPRUNG, one, other)


@pytest.mark.parametrize(
    ("loss", "none"),
    [((0.3, -0.2, 0.8), True), ((0.5, 0.2, 1.5), False), ((-0.5, -1.0, -0.2), False)],
)
def test_no_loss_is_when_zero_is_within_reach(loss, none):
    assert Loss(*loss).none is none


def test_at_the_full_throttle_speed_all_of_the_vacuum_may_be_gone():
    found = loss_for(calibrate(PlainWeight(), *DEMO["1-2"]), 16.0, 64.0, 3.0)
    assert isinstance(found, Loss)
    assert (found.best, found.most) == (16.0, 16.0)
