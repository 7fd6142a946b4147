"""Universal joints against published figures, the geometry in space and brute force."""

from math import cos, radians, sin

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq
from underhoist_calculators.joints import (
    Bend,
    JointError,
    angle_for,
    bend,
    driven_rotation,
    equal_speed_rotation,
    extremes,
    fluctuation,
    greatest_lead,
    residual,
    small_angles,
    speed_ratio,
)


@pytest.mark.parametrize("case", ["UJ-01", "UJ-03", "UJ-05"])
def test_published_extremes(published, case):
    inputs, wanted, tolerance = published("universal_joints", case)
    found = extremes(inputs["joint_angle"])
    assert found == pytest.approx((wanted["min"], wanted["max"]), **tolerance)


def test_published_speed_at_a_rotation(published):
    inputs, wanted, tolerance = published("universal_joints", "UJ-07")
    found = speed_ratio(inputs["joint_angle"], inputs["input_rotation_g1"])
    assert inputs["input_speed"] * found == pytest.approx(wanted, **tolerance)


def test_published_largest_angle_and_a_misprint(published):
    # UJ-08, negative check: the page prints 16.2 degrees beside the right speeds.
    inputs, wanted, tolerance = published("universal_joints", "UJ-08")
    angle = angle_for(inputs["total_fluctuation"] / inputs["input_speed"])
    assert angle == pytest.approx(wanted["angle"], **tolerance)
    low, high = (inputs["input_speed"] * share for share in extremes(angle))
    assert (low, high) == pytest.approx((wanted["min_speed"], wanted["max_speed"]), **tolerance)
    assert abs(angle - 16.2) > 0.2


def test_published_rotation_of_equal_speed(published):
    inputs, wanted, tolerance = published("universal_joints", "UJ-09")
    found = equal_speed_rotation(inputs["joint_angle"])
    assert found == pytest.approx(wanted, **tolerance)
    assert speed_ratio(inputs["joint_angle"], found) == pytest.approx(1, rel=1e-12)


def test_published_output_angle_by_both_conventions(published):
    inputs, wanted, tolerance = published("universal_joints", "UJ-10")
    ours = driven_rotation(inputs["joint_angle"], inputs["input_rotation"])
    assert ours == pytest.approx(wanted["tan_g1=cos_b*tan_g2"], **tolerance)
    other = 90 - driven_rotation(inputs["joint_angle"], 90 - inputs["input_rotation"])
    assert other == pytest.approx(wanted["tan_out=cos_b*tan_in"], **tolerance)


def test_published_greatest_lead(published):
    inputs, wanted, tolerance = published("universal_joints", "UJ-11")
    assert greatest_lead(inputs["joint_angle"]) == pytest.approx(wanted, **tolerance)


@pytest.mark.parametrize(("case", "out_of_line"), [("UJ-12", 0), ("UJ-13", 90)])
def test_published_pairs(published, case, out_of_line):
    inputs, wanted, tolerance = published("universal_joints", case)
    first, second = (Bend(inputs[name], 0) for name in ("angle_1", "angle_2"))
    low, high = extremes(residual(first, second, out_of_line))
    assert (low, high) == pytest.approx((wanted["min"], wanted["max"]), **tolerance)


def test_published_angle_left_over(published):
    inputs, wanted, _ = published("universal_joints", "UJ-14")
    found = residual(Bend(inputs["angle_1"], 0), Bend(inputs["angle_2"], 0))
    assert found == pytest.approx(wanted, abs=0.02)
    assert cos(radians(found)) == pytest.approx(cos(radians(7)) / cos(radians(5)), rel=1e-12)
    assert small_angles(inputs["angle_1"], inputs["angle_2"]) == pytest.approx(wanted, rel=1e-9)


def test_published_true_angle(published):
    inputs, wanted, tolerance = published("universal_joints", "UJ-15")
    found = bend(inputs["side_view"], inputs["top_view"]).angle
    assert found == pytest.approx(wanted, **tolerance)
    # The square root of the squares, 10.0, is a shortcut that is not used.
    assert abs(found - 10) > 0.04


def test_published_fluctuation(published):
    inputs, wanted, tolerance = published("universal_joints", "UJ-16")
    assert fluctuation(inputs["joint_angle"]) == pytest.approx(wanted, **tolerance)


def test_published_right_angle_is_refused(published):
    inputs, wanted, _ = published("universal_joints", "UJ-17")
    with pytest.raises(JointError, match=wanted.removeprefix("error: ")):
        bend(inputs["joint_angle"])


ANGLES = st.floats(0.5, 40)
ROTATIONS = st.floats(-85, 85)


@given(ANGLES, ROTATIONS)
def test_forks_stay_square_in_space(angle, rotation):
    """Turn both forks in space; the cross keeps their arms at a right angle."""
    beta, driving = radians(angle), radians(rotation)
    arm = np.array([cos(driving), sin(driving), 0.0])

    def out_of_square(driven):
        turned = np.array([-sin(driven), cos(driven) * cos(beta), cos(driven) * sin(beta)])
        return float(arm @ turned)

    driven = brentq(out_of_square, driving - 0.6, driving + 0.6, xtol=1e-13)
    # This arm starts square to the plane of the shafts, 90 degrees from where ours does.
    quarter = 90 if rotation > 0 else -90
    ours = driven_rotation(angle, rotation - quarter) + quarter
    assert np.degrees(driven) == pytest.approx(ours, abs=1e-6)


@given(ANGLES, ROTATIONS)
def test_speed_is_the_slope_of_the_rotation(angle, rotation):
    step = 1e-4
    behind, ahead = (driven_rotation(angle, rotation + each) for each in (-step, step))
    assert (ahead - behind) / (2 * step) == pytest.approx(speed_ratio(angle, rotation), rel=1e-6)


@given(ANGLES, ANGLES, st.floats(-90, 90), st.floats(-90, 90))
def test_what_is_left_agrees_with_brute_force(first, second, plane, out_of_line):
    turning = np.linspace(-90, 90, 3601)
    product = [
        speed_ratio(first, g)
        * speed_ratio(second, driven_rotation(first, g) + 90 + plane + out_of_line)
        for g in turning
    ]
    left = residual(Bend(first, 0), Bend(second, plane), out_of_line)
    assert (min(product), max(product)) == pytest.approx(extremes(left), rel=2e-6)


@given(ANGLES, st.floats(-80, 80))
def test_equal_joints_in_one_plane_leave_nothing(angle, plane):
    assert residual(Bend(angle, plane), Bend(angle, plane)) == 0
    assert residual(Bend(angle, plane), Bend(angle, plane + 180)) == pytest.approx(0, abs=1e-5)


@given(ANGLES, ANGLES, st.floats(-90, 90))
def test_order_does_not_matter(first, second, turned):
    there = residual(Bend(first, 0), Bend(second, turned))
    assert residual(Bend(second, 0), Bend(first, turned)) == pytest.approx(there, abs=1e-6)


@given(ANGLES)
def test_inverse_of_the_fluctuation(angle):
    assert angle_for(fluctuation(angle)) == pytest.approx(angle, rel=1e-6)


@given(ANGLES, ANGLES)
def test_a_steeper_joint_is_more_uneven(one, other):
    low, high = sorted((one, other))
    assert fluctuation(low) <= fluctuation(high)
    assert greatest_lead(low) <= greatest_lead(high) + 1e-12


@given(st.floats(0, 60), st.floats(-60, 60))
def test_true_angle_is_never_less_than_either_view(side, top):
    assert bend(side, top).angle >= max(side, abs(top)) - 1e-9


@given(ANGLES)
def test_one_view_is_the_whole_angle_where_the_other_is_straight(angle):
    assert bend(angle).angle == pytest.approx(angle, abs=1e-9)
    assert bend(angle).plane == 0
