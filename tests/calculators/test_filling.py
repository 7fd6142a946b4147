"""The arithmetic of a staged fill: rules of common practice (no source), worked by hand."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from underhoist_calculators.filling import (
    Sump,
    drained_share,
    first_fill,
    jug,
    level_at_rule,
    pours,
    rule_temperature,
    top_up_steps,
    volume_of,
)
from underhoist_calculators.units import Span, quantity


def litres(value):
    return quantity(value, "litre")


def celsius(value):
    return quantity(value, "degree_Celsius")


SUMP = Sump(
    service_fill=litres(4.2),
    dry_fill=litres(8.6),
    between_marks=litres(0.5),
    rule=Span(celsius(65), celsius(80)),
    density=quantity(860, "kilogram_per_cubic_metre"),
)


@pytest.mark.parametrize(
    ("out", "first"),
    [
        (4.3, 3.8),  # less half a litre, which is more than a tenth
        (6.0, 4.2),  # 5.4 by the rule, but never above the service fill
        (5.0, 4.2),
        (4.0, 3.5),
        (0.4, 0.0),  # less than what is held back: all by the dipstick
    ],
)
def test_first_fill(out, first):
    assert first_fill(litres(out), SUMP.service_fill).m_as("litre") == pytest.approx(first)


def test_first_fill_holds_back_a_tenth_of_a_large_drain():
    assert first_fill(litres(8), litres(9)).m_as("litre") == pytest.approx(7.2)


@pytest.mark.parametrize(
    ("method", "share"),
    [("pan", 4.2 / 8.6), ("plug", 0.9 * 4.2 / 8.6), ("converter", 0.85), ("empty", 1.0)],
)
def test_share_by_way_of_draining(method, share):
    assert drained_share(method, SUMP) == pytest.approx(share)


@pytest.mark.parametrize(("read", "rule"), [(20, 65), (65, 65), (72, 72), (80, 80), (110, 80)])
def test_the_nearest_temperature_of_the_rule(read, rule):
    assert rule_temperature(celsius(read), SUMP.rule) == celsius(rule)


def test_a_cold_reading_one_mark_low_may_be_nearly_full():
    # By hand: alpha 0.73 per mille, 8.6 L from 20 °C to 65 °C gain 0.297 L, six tenths of a mark.
    level = level_at_rule(quantity(1, "mark_below_full"), celsius(20), SUMP)
    assert level.m_as("mark_above_full") == pytest.approx(-0.40, abs=0.01)


def test_a_reading_inside_the_rule_stands():
    level = level_at_rule(quantity(0.25, "mark_below_full"), celsius(70), SUMP)
    assert level.m_as("mark_below_full") == 0.25


@pytest.mark.parametrize(
    ("missing", "steps"),
    [
        (0.4, (0.4,)),
        (0.5, (0.5,)),
        (0.75, (0.5, 0.25)),
        (1.0, (0.5, 0.5)),
        (2.5, (1.5, 0.5, 0.5)),
        (1.7, (0.7, 0.5, 0.5)),
        (0.0, ()),
        (-0.3, ()),
    ],
)
def test_steps_to_the_mark(missing, steps):
    assert top_up_steps(missing) == pytest.approx(steps)


@given(st.floats(0.01, 3))
def test_steps_reach_the_mark_and_are_small_near_it(missing):
    steps = top_up_steps(missing)
    assert sum(steps) == pytest.approx(missing)
    assert all(step <= 0.5 for step in steps[-2:] if missing <= 1)
    assert steps[-1] <= 0.5


@given(st.floats(0.01, 3), st.sampled_from(["litre", "millilitre", "US_quart", "imperial_quart"]))
def test_poured_steps_never_pass_the_mark_and_end_within_a_jugs_step_of_it(missing, unit):
    poured = sum(pour.m_as("litre") for pour in pours(missing, celsius(65), SUMP, unit))
    wanted = volume_of(missing, celsius(65), SUMP).m_as("litre")
    one_step = quantity({"millilitre": 50}.get(unit, 0.05), unit).m_as("litre")
    assert wanted - one_step - 1e-9 <= poured <= wanted + 1e-9


@given(st.floats(0.01, 3))
def test_no_step_near_the_top_is_more_than_half_a_mark_as_poured(missing):
    last = pours(missing, celsius(65), SUMP, "litre")[-2:] if missing > 1 else ()
    assert all(pour.m_as("litre") <= 0.25 + 1e-9 for pour in last)


@pytest.mark.parametrize(
    ("volume", "unit", "shown"),
    [(0.30, "litre", 0.30), (0.349, "litre", 0.30), (0.349, "millilitre", 300), (0.04, "litre", 0)],
)
def test_a_jug_is_read_downwards(volume, unit, shown):
    assert jug(litres(volume), unit).magnitude == pytest.approx(shown)


@pytest.mark.parametrize("unit", ["US_fluid_ounce", "imperial_fluid_ounce"])
def test_a_jug_is_read_to_whole_fluid_ounces(unit):
    assert jug(quantity(7.6, unit), unit).magnitude == 7


@given(st.floats(0, 20), st.floats(0.1, 5), st.floats(1, 20))
def test_more_out_never_means_less_in(out, more, service):
    assume(service > 0)
    less = first_fill(litres(out), litres(service))
    assert first_fill(litres(out + more), litres(service)) >= less


@given(st.floats(0.6, 15))
def test_quarts_make_no_difference(out):
    quarts = litres(out).to("US_quart")
    in_quarts = first_fill(quarts, SUMP.service_fill.to("US_quart"))
    assert in_quarts.m_as("litre") == pytest.approx(
        first_fill(litres(out), SUMP.service_fill).m_as("litre"), rel=1e-9
    )
