"""`teeth-incomplete`: exact wording, and silence where nothing is wrong."""

import pytest


def train(type_, teeth, ratios=""):
    return f"gear_train: {{type: {type_}, teeth: {{{teeth}}}}}\nratios: {{{ratios}}}\n"


def test_missing_sun(manual):
    manual.keys("families/kestrel-3.md", train("ravigneaux", "input_sun: 30, ring: 84"))
    assert manual.found() == [
        (
            "families/kestrel-3.md:25:20 teeth-incomplete (stop)",
            "ravigneaux",
            "A ravigneaux train has no ratios without low_sun.",
            "Count the teeth and add them, or write another type.",
        )
    ]


def test_misspelt(manual):
    manual.keys("families/kestrel-3.md", train("simpson", "sun: 31, rign: 73"))
    assert manual.found() == [
        (
            "families/kestrel-3.md:25:52 teeth-incomplete (stop)",
            "rign: 73",
            "A simpson train has no rign.",
            "Did you mean ring?",
        )
    ]


def test_of_another_train(manual):
    manual.keys("families/kestrel-3.md", train("simpson", "sun: 31, ring: 73, pairs: 3"))
    assert manual.found() == [
        (
            "families/kestrel-3.md:25:63 teeth-incomplete (stop)",
            "pairs: 3",
            "A simpson train has no pairs.",
            "Its gears are sun, ring, planet, planets, rear_sun, rear_ring, rear_planet and "
            "rear_planets.",
        )
    ]


def test_overdrive_without_its_set(manual):
    manual.keys("families/kestrel-3.md", train("simpson-overdrive", "sun: 30, ring: 74"))
    assert manual.found() == [
        (
            "families/kestrel-3.md:25:20 teeth-incomplete (stop)",
            "simpson-overdrive",
            "A simpson-overdrive train has no ratios without overdrive_sun and overdrive_ring.",
            "Count the teeth and add them, or write another type.",
        )
    ]


def test_half_a_rear_set(manual):
    manual.keys("families/kestrel-3.md", train("simpson", "sun: 31, ring: 73, rear_sun: 31"))
    assert [each[2] for each in manual.found()] == [
        "A simpson train has no ratios without rear_ring."
    ]


def test_gear_that_the_train_lacks(manual):
    manual.keys("families/kestrel-3.md", train("simpson", "sun: 31, ring: 73", "fourth: 0.705"))
    assert manual.found() == [
        (
            "families/kestrel-3.md:26:18 teeth-incomplete (stop)",
            "fourth: 0.705",
            "A simpson train with these gears has no fourth.",
            "Its gears are first, second, third and reverse.",
        )
    ]


@pytest.mark.parametrize(
    ("type_", "teeth"),
    [
        ("simpson", "sun: 31, ring: 73"),
        ("simpson", "sun: 31, ring: 73, rear_sun: 31, rear_ring: 73"),
        ("ravigneaux", "small_sun: 30, large_sun: 36, ring: 72"),
        ("simpson-overdrive", "sun: 30, ring: 74, overdrive_sun: 33, overdrive_ring: 79"),
    ],
)
def test_whole(manual, type_, teeth):
    manual.keys("families/kestrel-3.md", train(type_, teeth))
    assert manual.found() == []
