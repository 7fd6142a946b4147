"""`teeth-cannot-be-built`: exact wording, and silence where nothing is wrong.

The counts are worked out by hand: the planets fill (ring - sun) / 2, and equally spaced planets
mesh where ring and sun together divide by their number (common knowledge of gearing, from memory).
"""

import pytest


def train(type_, teeth):
    return f"gear_train: {{type: {type_}, teeth: {{{teeth}}}}}\nratios: {{}}\n"


def faults(manual):
    found = manual.found()
    assert {place for place, *_ in found} <= {
        "families/kestrel-3.md:25:20 teeth-cannot-be-built (stop)"
    }
    assert {mend for *_, mend in found} <= {"Count the teeth again, and the planets."}
    return [wrong for _, _, wrong, _ in found]


def test_two_speed_that_no_one_can_put_together(manual):
    manual.keys(
        "families/kestrel-3.md",
        train("ravigneaux", "input_sun: 30, low_sun: 25, ring: 82, pairs: 3"),
    )
    found = manual.found()
    assert found == [
        (
            "families/kestrel-3.md:25:20 teeth-cannot-be-built (stop)",
            "input_sun: 30, low_sun: 25, ring: 82, pairs: 3",
            "The space between sun 25 and ring 82 takes a planet of 28.5 teeth, which is not a "
            "whole number.",
            "Count the teeth again, and the planets.",
        )
    ]


@pytest.mark.parametrize(
    ("type_", "teeth", "wrong"),
    [
        (
            "simpson",
            "sun: 31, ring: 73, planet: 22, planets: 4",
            ["Sun 31, two planets of 22 and nothing between make 75 teeth across, not the ring's "
             "73."],
        ),
        (
            "simpson",
            "sun: 31, ring: 73, planet: 21, planets: 3",
            ["73 + 31 = 104 does not divide by 3: equally spaced planets cannot all be put in."],
        ),
        (
            "simpson-overdrive",
            "sun: 30, ring: 74, planets: 4, overdrive_sun: 33, overdrive_ring: 80",
            [
                "Overdrive set: 80 + 33 = 113 does not divide by 4: equally spaced planets "
                "cannot all be put in.",
                "Overdrive set: The space between sun 33 and ring 80 takes a planet of 23.5 "
                "teeth, which is not a whole number.",
            ],
        ),
        (
            "ravigneaux",
            "input_sun: 30, low_sun: 24, ring: 840000000, pairs: 3",
            ["A gear of 840000000 teeth is larger than any in a transmission: 300 at most."],
        ),
        ("simpson", "sun: 73, ring: 31", ["A sun of 73 teeth does not go into a ring of 31."]),
        (
            "ravigneaux",
            "input_sun: 90, low_sun: 24, ring: 84",
            ["A sun of 90 teeth does not go into a ring of 84."],
        ),
        (
            "ravigneaux",
            "input_sun: 30, low_sun: 24, ring: 84, ring_planet: 29, pairs: 3",
            ["Sun 24, two planets of 29 and nothing between make 82 teeth across, not the ring's "
             "84."],
        ),
        (
            "ravigneaux",
            "input_sun: 30, low_sun: 24, ring: 84, ring_planet: 30, inner_planet: 40, pairs: 3",
            ["3 pairs of planets would touch one another.",
             "Inner planets of 40 teeth would stand out beyond the ring."],
        ),
    ],
)  # fmt: skip
def test_reasons(manual, type_, teeth, wrong):
    manual.keys("families/kestrel-3.md", train(type_, teeth))
    assert faults(manual) == wrong


@pytest.mark.parametrize(
    ("type_", "teeth"),
    [
        ("simpson", "sun: 31, ring: 73, planet: 21, planets: 4"),
        (
            "simpson-overdrive",
            "sun: 30, ring: 74, planet: 22, planets: 4, overdrive_sun: 33, overdrive_ring: 79, "
            "overdrive_planet: 23",
        ),
        (
            "ravigneaux",
            "input_sun: 30, low_sun: 24, ring: 84, ring_planet: 30, inner_planet: 18, pairs: 3",
        ),
    ],
)
def test_can_be_built(manual, type_, teeth):
    manual.keys("families/kestrel-3.md", train(type_, teeth))
    assert manual.found() == []
