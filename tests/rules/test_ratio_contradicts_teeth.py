"""`ratio-contradicts-teeth`: exact wording, and silence where nothing is wrong."""

import pytest


def test_first(manual):
    manual.keys("families/kestrel-3.md", "ratios: {first: 2.45, third: 1.0}\n")
    assert manual.found() == [
        (
            "families/kestrel-3.md:28:17 ratio-contradicts-teeth (stop)",
            "2.45",
            "The tooth counts give 2.425 in first.",
            "Write 2.425, or mend the tooth counts on line 6.",
        )
    ]


def test_rounded(manual):
    manual.keys(
        "families/kestrel-3.md",
        """\
ratios: {first: 2.42, second: 1.42, third: 1, reverse: 2.35}
""",
    )
    assert manual.found() == []


def test_overdrive(manual):
    manual.keys(
        "families/kestrel-3.md",
        """\
gear_train:
  type: simpson-overdrive
  teeth: {sun: 30, ring: 74, overdrive_sun: 33, overdrive_ring: 79}
ratios: {fourth: 0.75}
""",
    )
    assert manual.found() == [
        (
            "families/kestrel-3.md:28:18 ratio-contradicts-teeth (stop)",
            "0.75",
            "The tooth counts give 0.705 in fourth.",
            "Write 0.705, or mend the tooth counts on line 26.",
        )
    ]


def train(type_, teeth, ratios):
    return f"gear_train: {{type: {type_}, teeth: {{{teeth}}}}}\nratios: {{{ratios}}}\n"


@pytest.mark.parametrize(
    ("teeth", "gear", "stated", "right"),
    [
        ("input_sun: 30, low_sun: 24, ring: 84", "first", "1.75", "1.800"),
        ("input_sun: 30, low_sun: 24, ring: 84", "reverse", "1.75", "1.800"),
        ("small_sun: 30, large_sun: 36, ring: 72", "second", "1.50", "1.467"),
    ],
)
def test_ravigneaux(manual, teeth, gear, stated, right):
    """30, 36 and 72 give 2.4, 1.467 and 2.0 (PG-10, PG-11, PG-14); 30, 24 and 84 by hand."""
    manual.keys("families/kestrel-3.md", train("ravigneaux", teeth, f"{gear}: {stated}"))
    ((place, *found),) = manual.found()
    assert place.endswith("ratio-contradicts-teeth (stop)")
    assert found == [
        stated,
        f"The tooth counts give {right} in {gear}.",
        f"Write {right}, or mend the tooth counts on line 25.",
    ]


@pytest.mark.parametrize(
    ("type_", "teeth", "ratios"),
    [
        (
            "ravigneaux",
            "input_sun: 30, low_sun: 24, ring: 84, ring_planet: 30, inner_planet: 18, pairs: 3",
            "first: 1.800, second: 1.000, reverse: 1.800",
        ),
        (
            "simpson-overdrive",
            "sun: 30, ring: 74, planet: 22, planets: 4, overdrive_sun: 33, overdrive_ring: 79, "
            "overdrive_planet: 23, overdrive_planets: 4",
            "first: 2.405, second: 1.405, third: 1, fourth: 0.705, reverse: 2.467",
        ),
    ],
)
def test_right(manual, type_, teeth, ratios):
    """30 and 74: i = 2.467, so 2 + 1/i = 2.405, 1 + 1/i = 1.405; overdrive 79 / 112 = 0.705."""
    manual.keys("families/kestrel-3.md", train(type_, teeth, ratios))
    assert manual.found() == []
