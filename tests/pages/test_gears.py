"""Ratios against an independent solution of Willis' equations as a linear system."""

import numpy as np
import pytest

from underhoist.gears import as_calculated, ratios
from underhoist.model import GearTrain
from underhoist.place import Place, Placed


def train(kind, **teeth):
    def placed(value):
        return Placed(value, Place("family.md", 1, 1), str(value))

    return GearTrain(type=placed(kind), teeth={name: placed(n) for name, n in teeth.items()})


def solved(sun, ring, *, first_speed, held):
    """Speeds of sun, front ring, front carrier, rear ring, rear carrier; the output is joined."""
    names = ("sun", "front_ring", "front_carrier", "rear_ring", "rear_carrier")

    def row(**weights):
        return [weights.get(name, 0) for name in names]

    equations = [
        row(sun=sun, front_ring=ring, front_carrier=-(sun + ring)),
        row(sun=sun, rear_ring=ring, rear_carrier=-(sun + ring)),
        row(front_carrier=1, rear_ring=-1),
        row(**{first_speed: 1}),
        row(**{held: 1}),
    ]
    speeds = np.linalg.solve(np.array(equations, float), np.array([0, 0, 0, 1, 0], float))
    return 1 / speeds[names.index("rear_ring")]


@pytest.mark.parametrize(("sun", "ring"), [(31, 73), (28, 62), (33, 79), (40, 80)])
@pytest.mark.parametrize(
    ("gear", "driven", "held"),
    [
        ("first", "front_ring", "rear_carrier"),
        ("second", "front_ring", "sun"),
        ("reverse", "sun", "rear_carrier"),
    ],
)
def test_simpson_ratio_solves_willis_equations(sun, ring, gear, driven, held):
    found = ratios(train("simpson", sun=sun, ring=ring))
    assert float(found[gear]) == pytest.approx(solved(sun, ring, first_speed=driven, held=held))
    assert found["third"] == 1


def test_demo_family_has_the_ratios_it_states():
    found = ratios(train("simpson", sun=31, ring=73))
    assert [round(float(ratio), 3) for ratio in found.values()] == [2.425, 1.425, 1.0, -2.355]


def test_overdrive_set_makes_fourth():
    # Willis with the sun held: ring over ring and sun, 79 / 112.
    found = ratios(train("simpson-overdrive", sun=30, ring=74, overdrive_sun=33, overdrive_ring=79))
    assert float(found["fourth"]) == pytest.approx(79 / 112)


def test_ravigneaux_set_by_its_suns():
    # Published: suns 30 and 36, ring 72 give 2.4, 1.467 and 2.0 backwards (PG-10, PG-11, PG-14).
    found = ratios(train("ravigneaux", small_sun=30, large_sun=36, ring=72))
    assert [round(float(ratio), 3) for ratio in found.values()] == [2.4, 1.467, 1.0, -2.0]


def test_two_speed_set_by_its_suns():
    found = ratios(train("ravigneaux", input_sun=30, low_sun=24, ring=84, planets=3))
    assert [float(ratio) for ratio in found.values()] == pytest.approx([1.8, 1.0, -1.8])


def test_a_two_speed_set_fills_the_calculator_in():
    kind, teeth = as_calculated(train("ravigneaux", input_sun=30, low_sun=24, ring=84, planets=3))
    assert kind == "ravigneaux-two-speed"
    assert teeth == {"double_sun": 30, "single_sun": 24, "ring": 84, "planets": 3}


@pytest.mark.parametrize("kind", ["ravigneaux", "simpson"])
def test_train_without_its_counts_has_no_ratios(kind):
    assert ratios(train(kind, planets=3)) == {}
