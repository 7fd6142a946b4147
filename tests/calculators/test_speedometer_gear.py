"""The speedometer gear calculator: which gear, what it reads, and what to do where none will do."""

import pytest
from underhoist_calculators import door

# SP-08 of the published cases: a tyre of 800 turns a mile rolls 2.01168 m.
COUNTED = {"available": "16 to 18", "drive": "7", "axle": "3.08", "tyre": "2.01168 m"}
MEASURED = {
    "way": "measured", "available": "16 to 24", "fitted": "20", "indicated": "60 mph",
    "true": "57 mph",
}  # fmt: skip


def answer(entries):
    result = door.run("speedometer-gear", entries)
    assert result["errors"] == {}
    return result["answer"]


def test_by_counting():
    found = answer(COUNTED)
    assert found["summary"] == "Fit 17 teeth: the speedometer reads 1.46 % high."
    assert [row[-1] for row in found["tables"][0]["rows"]] == [
        "reads higher",
        "fit this",
        "reads low",
    ]
    assert found["warnings"] == []


def test_by_a_proven_error():
    found = answer(MEASURED)
    assert found["summary"] == "Fit 21 teeth: the speedometer reads 0.25 % high."
    assert found["working"][0]["numbers"] == "20 × 60 mph / 57 mph"


def test_where_every_gear_reads_low_an_adapter_is_named():
    found = answer({**COUNTED, "available": "18 to 20"})
    assert found["summary"] == (
        "17.25 teeth would read right. Every gear there is has more and reads low, which a "
        "speedometer must not."
    )
    # By hand: 18 / 17.248.
    assert found["do"] == [
        "Fit 18 teeth and a ratio adapter that turns the cable 1.044 times as often, or another "
        "drive gear."
    ]
    assert "best" not in found["values"]


def test_too_high_for_the_law_is_said():
    found = answer({**COUNTED, "available": "14 to 15"})
    assert found["warnings"] == [
        "Even so it reads 115 km/h at a true 100 km/h; 114 km/h is the most that UN Regulation 39 "
        "allows."
    ]


def test_a_size_is_known_too_badly_to_be_sure():
    found = answer({**COUNTED, "tyre": "205/75 R 14"})
    assert found["warnings"] == [
        "The tyre is known to about 3 %, more than this gear reads high: it may still read low. "
        "Roll one turn, or prove it."
    ]


def test_the_cable_constant_is_a_choice():
    mile = answer(COUNTED)["values"]["needed"]["value"]
    kilometre = answer({**COUNTED, "cable": "637 turns/km"})["values"]["needed"]["value"]
    assert mile / kilometre == pytest.approx(1.025152, rel=1e-6)


@pytest.mark.parametrize(
    ("entries", "field", "wrong"),
    [
        ({**COUNTED, "drive": ""}, "drive", "Counting needs the drive gear."),
        ({**COUNTED, "drive": "7.5"}, "drive", "7.5 is not a whole number."),
        ({**COUNTED, "tyre": ""}, "tyre", "Counting needs the tyre."),
        ({**MEASURED, "true": ""}, "true", "A proven error needs the true speed."),
        ({**COUNTED, "available": "16.5 to 18"}, "available", "16.5 is not a whole number."),
    ],
)
def test_refused(entries, field, wrong):
    assert door.run("speedometer-gear", entries)["errors"][field]["wrong"] == wrong
