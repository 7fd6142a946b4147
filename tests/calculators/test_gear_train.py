"""Ratios from tooth counts: published figures, an independent solver and closed forms."""

from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from underhoist_calculators.gear_train import Gear, PlanetarySet, ratio, speeds
from underhoist_calculators.train_kinds import TRAINS


@pytest.mark.parametrize("case", ["PG-01", "PG-05", "PG-06"])
def test_published_single_set(published, case):
    inputs, wanted, _ = published("planetary_gears", case)
    train = TRAINS["single"]({"sun": inputs["sun"], "ring": inputs["ring"]})
    name = f"{inputs['fixed']} held, {inputs['input']} in, {inputs['output']} out"
    assert float(train.ratios[name]) == pytest.approx(wanted, rel=1e-9)


def test_published_speeds_of_carrier_and_planet(published):
    inputs, wanted, _ = published("planetary_gears", "PG-09")
    counts = {"sun_teeth": inputs["sun"], "ring_teeth": inputs["ring"]}
    one = PlanetarySet(sun="sun", ring="ring", carrier="carrier", **counts)
    solved = speeds((one,), Gear(name="", input="sun", output="carrier", held=("ring",)))
    assert solved["sun"] == 1
    carrier = float(solved["carrier"]) * inputs["sun_speed"]
    assert carrier == pytest.approx(wanted["carrier"])
    # Seen from the carrier the sun and a planet are a plain pair of gears.
    planet = carrier - (inputs["sun_speed"] - carrier) * inputs["sun"] / inputs["planet"]
    assert planet == pytest.approx(wanted["planet"])


@pytest.mark.parametrize(
    ("case", "gear"),
    [("PG-10", "first"), ("PG-11", "second"), ("PG-13", "overdrive"), ("PG-14", "reverse")],
)
def test_published_ravigneaux_ratio(published, case, gear):
    inputs, wanted, tolerance = published("planetary_gears", case)
    teeth = {"double_sun": inputs["small_sun"], "single_sun": inputs["large_sun"]}
    found = TRAINS["ravigneaux"]({**teeth, "ring": inputs["ring"]}).ratios
    assert float(found[gear]) == pytest.approx(wanted, **tolerance)


def test_ravigneaux_first_gear_is_forwards():
    # PG-10: with the formula for single planets it would come out as -2.4.
    found = TRAINS["ravigneaux"]({"double_sun": 30, "single_sun": 36, "ring": 72}).ratios
    assert found["first"] == Fraction(12, 5)


@pytest.mark.parametrize("case", ["PG-16", "PG-18", "PG-19"])
def test_published_simpson_ratio(published, case):
    inputs, wanted, _ = published("planetary_gears", case)
    teeth = {name.removeprefix("front_"): n for name, n in inputs.items() if name != "gear"}
    found = TRAINS["simpson"](teeth).ratios
    assert float(found[inputs["gear"]]) == pytest.approx(wanted, rel=1e-9)


def test_the_short_formula_is_wrong_for_unequal_sets():
    # PG-19: 2 + 28/57 = 2.491 is what a formula for equal sets would give.
    found = TRAINS["simpson"]({"sun": 28, "ring": 57, "rear_sun": 37, "rear_ring": 80}).ratios
    assert float(found["first"]) - (2 + 28 / 57) == pytest.approx(0.0621, abs=1e-4)


def solved(train, gear):
    """The same equations through numpy."""
    members = sorted({m for s in train.sets for m in s.weights} | {gear.input} | {
        m for lock in gear.locks for m in lock})  # fmt: skip
    rows = [*(s.weights for s in train.sets), *gear.locks, {gear.input: 1}]
    matrix = np.array([[row.get(m, 0) for m in members] for row in rows], float)
    right = np.array([0.0] * (len(rows) - 1) + [1.0])
    return 1 / np.linalg.solve(matrix, right)[members.index(gear.output)]


teeth = st.integers(20, 45)
rings = st.integers(60, 110)


@given(st.tuples(teeth, teeth, teeth), st.tuples(rings, rings, rings))
def test_every_train_agrees_with_a_numeric_solver(suns, ring_teeth):
    names = ("", "rear_", "overdrive_")
    counts = {f"{name}sun": sun for name, sun in zip(names, suns, strict=True)}
    counts |= {f"{name}ring": ring for name, ring in zip(names, ring_teeth, strict=True)}
    counts |= {"double_sun": suns[0], "single_sun": suns[1]}
    for build in TRAINS.values():
        train = build(counts)
        for gear in train.gears:
            assert float(train.ratios[gear.name]) == pytest.approx(solved(train, gear), rel=1e-9)


@given(teeth, rings, teeth, rings)
def test_simpson_closed_form(s1, r1, s2, r2):
    found = TRAINS["simpson"]({"sun": s1, "ring": r1, "rear_sun": s2, "rear_ring": r2}).ratios
    assert found["first"] == 1 + Fraction(s1, r1) + Fraction(s1 * r2, r1 * s2)
    assert found["second"] == 1 + Fraction(s1, r1)
    assert found["third"] == 1
    assert found["reverse"] == -Fraction(r2, s2)


@given(teeth, teeth, rings)
def test_two_speed_closed_form(driver, low, ring):
    # In the carrier's frame the two suns turn against each other: 1 + z_low / z_input.
    counts = {"double_sun": driver, "single_sun": low, "ring": ring}
    found = TRAINS["ravigneaux-two-speed"](counts).ratios
    assert found["first"] == 1 + Fraction(low, driver)
    assert found["second"] == 1
    assert found["reverse"] == 1 - Fraction(ring, driver)


@given(teeth, rings, teeth, rings)
def test_overdrive_multiplies_nothing_but_fourth(sun, ring, over_sun, over_ring):
    counts = {"sun": sun, "ring": ring, "overdrive_sun": over_sun, "overdrive_ring": over_ring}
    found = TRAINS["simpson-overdrive"](counts).ratios
    assert found["fourth"] == Fraction(over_ring, over_ring + over_sun)
    assert {gear: found[gear] for gear in ("first", "second", "third", "reverse")} == (
        TRAINS["simpson"](counts).ratios
    )


@given(teeth, rings, st.permutations(["sun", "ring", "carrier"]))
def test_swapping_input_and_output_inverts_the_ratio(sun, ring, members):
    held, one, other = members
    found = TRAINS["single"]({"sun": sun, "ring": ring}).ratios
    there, back = (found[f"{held} held, {a} in, {b} out"] for a, b in ((one, other), (other, one)))
    assert there * back == 1


ONE = PlanetarySet(sun="sun", ring="ring", carrier="carrier", sun_teeth=30, ring_teeth=72)


@pytest.mark.parametrize(
    ("gear", "said"),
    [
        (Gear(name="neutral", input="sun", output="ring"), "neutral: a member is left free"),
        (
            Gear(name="both", input="sun", output="carrier", held=("ring", "carrier")),
            "both: the train is locked",
        ),
        (
            Gear(name="park", input="sun", output="ring", held=("ring",)),
            "park: the output is locked",
        ),
    ],
)
def test_what_is_no_gear_is_refused(gear, said):
    with pytest.raises(ValueError, match=said):
        ratio((ONE,), gear)
