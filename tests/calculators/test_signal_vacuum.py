"""The signal vacuum calculator: verdict on engine and line, in the right order."""

import pytest
from underhoist_calculators import door

BASE = {"altitude": "0 m"}


def answer(**entries):
    result = door.run(
        "signal-vacuum", {**BASE, **{k.replace("_", "-"): v for k, v in entries.items()}}
    )
    assert result["errors"] == {}
    return result["answer"]


def test_at_sea_level_the_engines_own_figure():
    found = answer()
    assert found["summary"] == "An engine in order should make about 18.0 inHg here."
    assert found["values"]["expected"]["value"] == pytest.approx(18)
    assert found["warnings"] == []
    assert found["do"] == []


def test_high_up_less_is_in_order():
    # AT-18: 20 inHg at sea level is 14.97 at 5 000 ft with nothing wrong.
    found = answer(altitude="5000 ft", sea_level="20 inHg", source="15 inHg")
    assert found["summary"] == "The engine makes what it should here, about 15.0 inHg."
    assert found["warnings"] == [
        "The air is 5.0 inHg thinner here than at sea level. Shifts come later at light throttle "
        "with nothing wrong; do not set the adjuster by sea-level speeds."
    ]


def test_a_line_that_loses_is_renewed_before_anything_else():
    found = answer(source="18 inHg", modulator="13 inHg")
    assert found["summary"] == (
        "The engine makes what it should here, about 18.0 inHg. The line loses 5.0 inHg on the way."
    )
    assert found["do"][0] == (
        "Renew the hose end to end with vacuum hose of 1/4 in bore, and read again before "
        "anything else is touched."
    )
    assert found["values"]["line"] == "losing"


def test_a_sound_line():
    found = answer(source="18 inHg", modulator="17.5 inHg")
    assert found["values"]["line"] == "sound"
    assert found["do"] == []


def test_a_weak_engine():
    found = answer(source="12 inHg", modulator="12 inHg")
    assert found["values"]["source"] == "low"
    assert found["do"] == [
        "Put the engine right first: idle speed, timing, leaks at the manifold. The transmission "
        "only obeys the vacuum it is given."
    ]


def test_more_at_the_modulator_than_at_the_source_is_a_misreading():
    found = answer(source="15 inHg", modulator="18 inHg")
    assert found["values"]["line"] == "impossible"
    assert found["do"][0].startswith("Read both with the same gauge")


def test_the_barometer_is_used_instead_of_the_altitude():
    found = answer(barometer="84.3073 kPa", altitude="", sea_level="20 inHg")
    assert found["values"]["expected"]["value"] == pytest.approx(14.9747, abs=1e-3)


def test_in_proportion_is_another_convention():
    found = answer(altitude="5000 ft", sea_level="20 inHg", law="proportional")
    assert found["values"]["expected"]["value"] == pytest.approx(20 * 84.3072645 / 101.325)


def test_readings_in_kilopascals_say_the_same():
    inches = answer(source="18 inHg", modulator="13 inHg")["values"]["drop"]["value"]
    found = answer(source="60.95500 kPa", modulator="44.02306 kPa")["values"]["drop"]
    assert found["unit"] == "kilopascal"
    assert found["value"] / 3.386389 == pytest.approx(inches, abs=1e-4)


@pytest.mark.parametrize(
    ("entries", "field", "wrong"),
    [
        (
            {"altitude": "5000 ft", "source": "30.5 inHg"}, "source",
            "The vacuum exceeds the ambient pressure of 24.9 inHg: no gauge can show that here.",
        ),
        ({"altitude": ""}, "altitude", "Neither altitude nor barometer is written."),
    ],
)  # fmt: skip
def test_refused(entries, field, wrong):
    assert door.run("signal-vacuum", {**BASE, **entries})["errors"][field]["wrong"] == wrong
