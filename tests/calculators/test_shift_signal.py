"""A family with a throttle cable: lost vacuum is told as a cable that is too tight.

The valves do not know where their throttle pressure comes from, so the fit is the same one; that
a cable's way stands for the vacuum between light and full throttle is this calculator's choice.
"""

import pytest
from underhoist_calculators import door

WINDOWS = {
    "window-1-2-light": "16 to 22 km/h",
    "window-1-2-half": "42 to 50 km/h",
    "window-1-2-full": "60 to 68 km/h",
    "window-2-3-light": "30 to 38 km/h",
    "window-2-3-half": "71 to 81 km/h",
    "window-2-3-full": "100 to 110 km/h",
}
LATE = {
    "measured-1-2-light": "36 km/h",
    "measured-1-2-half": "55 km/h",
    "measured-1-2-full": "64 km/h",
    "measured-2-3-light": "60 km/h",
    "measured-2-3-half": "90 km/h",
}


def answer(**signal):
    result = door.run("shift-check", {**WINDOWS, **LATE, **signal})
    assert result["ok"], result["errors"]
    return result["answer"]


@pytest.fixture(scope="module")
def tight():
    return answer(signal="cable")


def test_names_the_cable_and_a_quarter_of_its_way(tight):
    # 4 of the 16 inHg between light and full throttle.
    assert tight["summary"].endswith(
        "Best explained by a throttle cable too tight by 25 % of its way."
    )


def test_says_what_to_measure_before_the_adjuster(tight):
    assert tight["do"][0].endswith(
        "fits. Measure its gap at idle and its travel, and feel whether it drags, before touching "
        "the adjuster."
    )


def test_points_to_no_hose_and_no_modulator(tight):
    told = str(tight)
    assert "Throttle cable's gap" in told
    for word in ("hose", "modulator", "Manifold"):
        assert word not in told


def test_vacuum_is_what_is_taken_without_a_word():
    assert answer()["summary"].endswith("Best explained by a vacuum loss of 4 inHg.")


def test_what_lacks_a_window_is_named_by_the_same_signal():
    entries = {k: v for k, v in WINDOWS.items() if k != "window-2-3-full"}
    entries |= {"window-2-3-half": "", "measured-2-3-half": ""}
    result = door.run(
        "shift-check", {**entries, **LATE, **{"measured-2-3-half": ""}, "signal": "cable"}
    )
    assert (
        "A tight throttle cable could not be judged: a measured shift has no window at full "
        "throttle." in result["answer_text"]
    )


def test_another_signal_is_refused():
    result = door.run("shift-check", {**WINDOWS, **LATE, "signal": "wire"})
    assert not result["ok"]
    assert "signal" in result["errors"]
