"""Whether gear sets can be built: the assembly condition and the room between the planets."""

from math import cos, hypot, pi, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st
from underhoist_calculators.planet_fit import (
    TIP,
    Ravigneaux,
    can_assemble,
    inner_planets,
    planet_teeth,
    single_faults,
)


def test_published_assembly_condition(published):
    # PG-24: (30 + 72) / 4 = 25.5 cannot be put in; / 3 = 34 can.
    inputs, wanted, _ = published("planetary_gears", "PG-24")
    assert can_assemble(**inputs) is wanted["equal_spacing_possible"]
    assert can_assemble(inputs["sun"], inputs["ring"], 3)


@pytest.mark.parametrize(("sun", "ring", "planet"), [(31, 73, 21), (30, 74, 22), (33, 79, 23)])
def test_demo_families_can_be_built(sun, ring, planet):
    assert single_faults(sun, ring, planet, 4) == ()


@pytest.mark.parametrize(
    ("counts", "said"),
    [
        (
            (31, 74, None, None),
            "The space between sun 31 and ring 74 takes a planet of 21.5 teeth, which is not a "
            "whole number.",
        ),
        (
            (31, 73, 20, None),
            "Sun 31, two planets of 20 and nothing between make 71 teeth across, not the ring's "
            "73.",
        ),
        (
            (30, 72, 21, 4),
            "72 + 30 = 102 does not divide by 4: equally spaced planets cannot all be put in.",
        ),
        ((20, 100, 40, 5), "5 planets of 40 teeth would touch one another."),
    ],
)
def test_what_cannot_be_built_is_said(counts, said):
    assert single_faults(*counts) == (said,)


def test_two_speed_set_with_suns_of_30_and_25_in_a_ring_of_82_cannot_be_built():
    for pairs in range(2, 7):
        assert inner_planets(30, 25, 82, pairs) == ()
    faults = Ravigneaux(double_sun=30, single_sun=25, ring=82, inner=18, pairs=3).faults
    assert faults == (
        "The space between sun 25 and ring 82 takes a planet of 28.5 teeth, which is not a whole "
        "number.",
        "82 + 25 = 107 does not divide by 3: equally spaced planets cannot all be put in.",
        "82 \u2212 30 = 52 does not divide by 3: equally spaced planets cannot all be put in.",
    )


def test_nearest_two_speed_set_that_can_be_built():
    # 30, 24, 84 gives 1.800 and 1.800 backwards, with ring planets of 30 teeth.
    assert inner_planets(30, 24, 84, 3) == tuple(range(12, 21))
    assert planet_teeth(24, 84) == 30


@pytest.mark.parametrize(
    ("counts", "said"),
    [
        ((30, 27, 84, 18), "Suns of 30 and 27 teeth are too alike"),
        ((30, 24, 84, 40), "3 pairs of planets would touch one another."),
    ],
)
def test_ravigneaux_faults(counts, said):
    double, single, ring, inner = counts
    faults = Ravigneaux(
        double_sun=double, single_sun=single, ring=ring, inner=inner, pairs=3
    ).faults
    assert any(fault.startswith(said) for fault in faults)


@given(st.integers(18, 50), st.integers(50, 110), st.integers(2, 6))
def test_planets_that_pass_really_mesh_and_clear(sun, ring, planets):
    """Place the planets as points and measure, instead of by the formula."""
    faults = single_faults(sun, ring, None, planets)
    planet = (ring - sun) / 2
    radius = (sun + planet) / 2
    middles = [
        (radius * cos(2 * pi * i / planets), radius * sin(2 * pi * i / planets)) for i in (0, 1)
    ]
    apart = hypot(middles[1][0] - middles[0][0], middles[1][1] - middles[0][1])
    touch = any("touch" in fault for fault in faults)
    assert touch == (apart <= planet + 2 + 1e-12)
    # Turning the carrier by one planet's place must turn the sun by whole teeth.
    teeth_passed = sun / planets * (1 + ring / sun)
    uneven = any("divide" in fault for fault in faults)
    assert uneven == (abs(teeth_passed - round(teeth_passed)) > 1e-9)


def test_inner_planets_stay_within_the_ring():
    # By hand: from the axis to the tips of 16 teeth round a sun of 16 it is 8 + 16 + 1 = 25, the
    # pitch radius of a ring of 50. A planet larger than the ring was once let through.
    assert inner_planets(16, 22, 50, 2) == (12, 13, 14, 15)
    for inner in (16, 119):
        faults = Ravigneaux(double_sun=16, single_sun=22, ring=50, inner=inner, pairs=2).faults
        assert faults == (f"Inner planets of {inner} teeth would stand out beyond the ring.",)


def test_the_largest_inner_planet_is_found():
    # By hand: 8 + 28 + 1 = 37 lies within a pitch radius of 38; 29 teeth reach it.
    assert inner_planets(16, 24, 76, 2) == tuple(range(12, 29))


def test_an_inner_planet_one_tooth_short_of_the_ring_fits():
    # By hand: from the axis to the tips it is 8.5 + 7.5 + 7.5 + 1 = 24.5; the ring begins at 25.
    assert 15 in inner_planets(17, 22, 50, 3)


def test_tips_reach_one_module_out():
    assert TIP == 1.0  # ISO 53, from memory


def test_double_planets_turn_the_ring_the_other_way():
    # (82 - 31) / 3 = 17 is whole, (82 + 31) / 3 is not.
    assert can_assemble(31, 82, 3, double=True)
    assert not can_assemble(31, 82, 3)


def test_an_odd_planet_is_as_good_as_an_even_one():
    assert single_faults(31, 73, None, 4) == ()


@pytest.mark.parametrize(
    ("counts", "pairs", "fits"),
    [
        # Inner planets of neighbouring pairs: middles 19.98 apart, 18 teeth and two tips are 20.
        ((16, 44, 76, 18), 5, False),
        # An inner planet and the next ring planet: middles 21.07 apart, 21.5 wanted.
        ((18, 24, 60, 21), 3, False),
        ((30, 24, 84, 20), 3, True),
        # Just enough: an inner planet and the next ring planet 14.68 apart, 14.5 wanted.
        ((18, 26, 50, 13), 4, True),
        # And 14.5 apart for inner planets of neighbouring pairs, 14 wanted.
        ((17, 37, 77, 12), 6, True),
    ],
)
def test_neighbouring_pairs_clear_each_other(counts, pairs, fits):
    double, single, ring, inner = counts
    faults = Ravigneaux(
        double_sun=double, single_sun=single, ring=ring, inner=inner, pairs=pairs
    ).faults
    assert any("would touch one another" in fault for fault in faults) is not fits
