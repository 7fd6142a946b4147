"""Governor laws: published figures, an independent interpolation, a numeric root finder."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.interpolate import PchipInterpolator
from scipy.optimize import brentq
from underhoist_calculators.governor import PlainWeight, Sprung, rising, through_point
from underhoist_calculators.units import quantity

MPH = quantity(1, "mile_per_hour").m_as("kilometre_per_hour")


def test_published_pressure(published):
    inputs, wanted, tolerance = published("governor", "GV-02")
    governor = through_point(inputs["n0"] * MPH, inputs["p0"])
    assert governor.pressure(inputs["n"] * MPH) == pytest.approx(wanted, **tolerance)


def test_published_speed(published):
    inputs, wanted, tolerance = published("governor", "GV-04")
    governor = through_point(inputs["n0"] * MPH, inputs["p0"])
    assert governor.speed(inputs["p"]) / MPH == pytest.approx(wanted, **tolerance)


@st.composite
def points(draw):
    steps = st.floats(1, 60)
    count = draw(st.integers(2, 6))
    speeds = np.cumsum([draw(steps) for _ in range(count)])
    pressures = np.cumsum([draw(steps) for _ in range(count)])
    return tuple(zip(speeds.tolist(), pressures.tolist(), strict=True))


@given(points(), st.floats(0, 1))
def test_points_are_joined_as_scipy_joins_them(known, share):
    governor = Sprung(known)
    speed = known[0][0] + share * (known[-1][0] - known[0][0])
    expected = PchipInterpolator(*zip(*known, strict=True))(speed)
    assert governor.pressure(speed) == pytest.approx(float(expected), rel=1e-9)


@given(points(), st.floats(0.001, 0.999))
def test_inverse_agrees_with_a_root_finder(known, share):
    governor = Sprung(known)
    pressure = known[0][1] + share * (known[-1][1] - known[0][1])
    root = brentq(lambda n: governor.pressure(n) - pressure, known[0][0], known[-1][0], xtol=1e-12)
    assert governor.speed(pressure) == pytest.approx(root, abs=1e-6)


@given(points(), st.floats(0, 1), st.floats(0, 1))
def test_pressure_never_falls(known, one, other):
    governor = Sprung(known)
    low, high = sorted((one, other))
    width = known[-1][0] - known[0][0]
    slow, fast = (governor.pressure(known[0][0] + share * width) for share in (low, high))
    assert slow <= fast + 1e-9


@given(points())
def test_it_goes_through_its_points(known):
    governor = Sprung(known)
    assert [governor.pressure(n) for n, _ in known] == pytest.approx([p for _, p in known])


@given(st.floats(0, 300))
def test_plain_weight_there_and_back(speed):
    governor = PlainWeight(0.7)
    assert governor.speed(governor.pressure(speed)) == pytest.approx(speed)


@pytest.mark.parametrize(
    ("known", "answer"),
    [
        (((10, 1), (20, 2)), True),
        (((10, 1), (10, 2)), False),
        (((10, 2), (20, 2)), False),
        (((20, 1), (10, 2)), False),
    ],
)
def test_points_must_rise(known, answer):
    assert rising(known) is answer


def test_a_plain_weight_makes_the_square_of_the_speed():
    assert PlainWeight().pressure(12.0) == 144.0
    assert PlainWeight().lowest == 0.0
