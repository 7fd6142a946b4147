"""shift-check: the words beside each reading, the pattern, and what to read next."""

import pytest
from underhoist_calculators import door

WINDOWS = {
    "1-2-light": "16 to 22 km/h",
    "1-2-half": "42 to 50 km/h",
    "1-2-full": "60 to 68 km/h",
    "2-3-light": "30 to 38 km/h",
    "2-3-half": "71 to 81 km/h",
    "2-3-full": "100 to 110 km/h",
    "3-2-full": "86 to 96 km/h",
}
MIDDLES = dict(zip(WINDOWS, (19, 46, 64, 34, 76, 105, 91), strict=True))


def run(speeds, **entries):
    return door.run(
        "shift-check",
        {
            **{f"window-{name}": text for name, text in WINDOWS.items()},
            **{f"measured-{name}": text for name, text in speeds.items()},
            **{name.replace("_", "-"): text for name, text in entries.items()},
        },
    )


def answer(speeds, **entries):
    result = run(
        {k: v if isinstance(v, str) else f"{v} km/h" for k, v in speeds.items()}, **entries
    )
    assert result["ok"], result["errors"]
    return result["answer"]


def verdicts(found):
    return {row[0]: row[3] for row in found["tables"][0]["rows"]}


def test_verdict_shift_by_shift():
    found = answer(
        {"1-2-light": 31, "1-2-half": 52, "1-2-full": 50, "3-2-full": 100, "2-3-light": "none"}
    )
    assert verdicts(found) == {
        "1-2, light throttle": "late by 9 km/h",
        "1-2, half throttle": "late by 2 km/h (within the reading's uncertainty)",
        "1-2, full throttle": "early by 10 km/h",
        "2-3, light throttle": "missing",
        "3-2 kick-down": "too high by 4 km/h",
    }


def test_what_was_not_measured_is_left_out():
    assert set(verdicts(answer({"1-2-light": 31}))) == {"1-2, light throttle"}


@pytest.mark.parametrize(
    ("speeds", "begins"),
    [
        ({"1-2-light": 19}, "The one shift measured comes inside its window."),
        (MIDDLES, "All 7 shifts measured come inside their windows."),
        ({**MIDDLES, "1-2-light": 30, "2-3-light": 52},
         "At light throttle only, the shifts come too high (late)."),
        ({**MIDDLES, "2-3-light": 50, "2-3-full": 130}, "Only the 2-3 comes too high (late)."),
        ({key: 0.7 * middle for key, middle in MIDDLES.items() if key != "3-2-full"},
         "Every shift measured comes too low (early)."),
        ({**{key: 1.15 * middle for key, middle in MIDDLES.items()}, "1-2-light": 20},
         "All but 1-2 at light throttle come too high."),
        ({**MIDDLES, "3-2-full": 60}, "Only the 3-2 kick-down comes too low."),
        ({**MIDDLES, "1-2-light": 30}, "Only the 1-2 at light throttle comes too high (late)."),
        ({"1-2-light": 19, "2-3-light": 34}, "Both shifts measured come inside their windows."),
        ({"1-2-light": 40, "1-2-half": 30, "2-3-half": 76},
         "Some shifts come too high and others too low."),
    ],
)  # fmt: skip
def test_pattern_in_plain_words(speeds, begins):
    assert answer(speeds)["summary"].startswith(begins)


def test_as_specified_says_nothing_more():
    found = answer(MIDDLES)
    assert found["do"] == ["These speeds are those of a unit in order."]
    assert [table["title"] for table in found["tables"]] == [
        "Shift by shift, as this speedometer shows it",
        "What it rules out",
    ]
    assert found["values"]["pattern"] == "as-specified"


def test_one_reading_names_no_cause_and_says_what_to_read():
    found = answer({"1-2-light": 30})
    assert found["summary"] == (
        "The one shift measured comes too high (late). One reading cannot name the cause."
    )
    assert "Fewer than three readings make no pattern: measure more." in found["warnings"]
    assert all(line.startswith("These readings cannot tell") for line in found["do"])


def test_light_throttle_alone_asks_for_full_throttle():
    found = answer({"1-2-light": 30, "2-3-light": 52})
    assert found["do"][1] == (
        "These readings cannot tell a vacuum loss of 3 inHg from all speeds 54 % high. "
        "Measure 2-3 at full throttle: 105 km/h speaks for the first, 162 km/h for the second."
    )


def test_a_stuck_kick_down_is_not_told_from_lost_vacuum_by_driving():
    found = answer({"1-2-light": 64, "1-2-half": 64, "2-3-light": 105})
    assert found["do"][1] == (
        "These readings cannot tell full-throttle behaviour at every throttle from a vacuum "
        "loss of 16 inHg. No further shift speed would: unhook the kick-down and drive again, or "
        "read the vacuum with a gauge at the modulator's own end of the hose."
    )


def test_a_missing_shift_says_how_far_to_drive_first():
    found = answer({"1-2-light": 19, "2-3-light": "none"})
    assert found["summary"].startswith("2-3 never came.")
    assert found["do"][0] == (
        "Drive beyond 110 km/h before calling the 2-3 missing: a stuck kick-down only delays it. "
        "If it is missing, look at its valve, its band or clutch, and the governor's pressure."
    )
    assert found["values"]["pattern"] == "missing-shift"


@pytest.mark.parametrize(
    ("key", "said"),
    [
        ("3-2-full",
         "Kick down below 86 km/h before calling the 3-2 kick-down missing: above its window it "
         "must not come. If it is missing, look at the kick-down's cable, rod or switch first."),
        ("3-2-light",
         "Let it coast at a lower speed before calling the 3-2 coast-down missing. If it is "
         "missing, look at its valve and at a governor that keeps its pressure."),
        ("3-4-light",
         "Drive up to full speed before calling the 3-4 missing: a stuck kick-down only delays it. "
         "If it is missing, look at its valve, its band or clutch, and the governor's pressure."),
    ],
)  # fmt: skip
def test_a_missing_shift_says_how_to_drive_for_it(key, said):
    assert answer({"1-2-light": 19, key: "none"})["do"][0] == said


def test_a_missing_kick_down_is_named_as_such():
    assert answer({"3-2-full": "none"})["summary"] == "3-2 kick-down never came."


def test_one_reading_alone_is_driven_again_and_not_explained():
    found = answer({**MIDDLES, "1-2-light": 30})
    assert found["values"]["pattern"] == "as-specified"
    assert found["do"] == [
        "No cause tried moves the 1-2 at light throttle and leaves the others. Drive it twice "
        "more and take the middle reading."
    ]


def test_what_lies_just_outside_is_not_called_in_order():
    assert answer({**MIDDLES, "1-2-light": 23, "2-3-full": 99})["do"] == [
        "What lies outside its window may be the scatter of readings and of good units. Drive "
        "those shifts twice more and take the middle reading."
    ]


def test_only_a_missing_shift():
    assert answer({"2-3-light": "none"})["summary"] == "2-3 never came."


def test_missing_readings_are_missing_and_not_zero():
    few, empty = answer({"1-2-light": 31}), answer({"1-2-light": 31, "2-3-light": ""})
    assert few["values"] == empty["values"]
    assert verdicts(few) == verdicts(empty)


def test_this_vehicle_moves_the_windows():
    # By hand: 3.70/3.50 x 703.5/634.5 mm / 1.04, rim 381 mm, walls 161.25 and 126.75 mm
    found = answer(
        {"1-2-light": 19},
        reference_tyre="215/75 R 15",
        tyre="195/65 R 15",
        reference_axle="3.50",
        axle="3.70",
        speedometer_error="4 %",
    )
    factor = 3.70 / 3.50 * 703.5 / 634.5 / 1.04
    assert found["values"]["factor"]["value"] == pytest.approx(factor, rel=1e-9)
    window = found["tables"][0]["rows"][0][1]
    assert window == f"{16 / factor:.0f} to {22 / factor:.0f} km/h"
    assert found["warnings"] == ["Fewer than three readings make no pattern: measure more."]


def test_what_is_assumed_is_said():
    assert answer({"1-2-light": 19})["warnings"][:2] == [
        "The tyre is taken as the reference vehicle's.",
        "The axle is taken as the reference vehicle's.",
    ]


def test_a_rolled_tyre_against_a_size_is_a_warning():
    found = answer({"1-2-light": 19}, reference_tyre="215/75 R 15", tyre="2.10 m")
    assert any(line.startswith("One tyre is rolled") for line in found["warnings"])


@pytest.mark.parametrize(
    ("speeds", "entries", "field", "wrong"),
    [
        ({}, {}, "measured-1-2-light", "No shift speed is written."),
        ({"3-4-light": "60 km/h"}, {}, "window-3-4-light",
         "A speed is measured, but there is no window to judge it by."),
        ({"1-2-light": "19 km/h"}, {"tyre": "205/70 R 14"}, "reference-tyre",
         "This vehicle's tyre says nothing without the reference tyre."),
        ({"1-2-light": "19 km/h"}, {"axle": "3.5"}, "reference-axle",
         "This vehicle's axle says nothing without the reference axle."),
        ({"1-2-light": "19 km/h"}, {"vacuum_half": "17 inHg"}, "vacuum-half",
         "The vacuum must fall as the throttle opens."),
    ],
)  # fmt: skip
def test_entries_that_make_no_sense_together(speeds, entries, field, wrong):
    errors = run(speeds, **entries)["errors"]
    assert {name: error["wrong"] for name, error in errors.items()} == {field: wrong}


def test_a_reading_without_a_window_does_not_stop_the_others():
    found = answer({"1-2-light": 19, "3-2-light": 30})
    assert "Not judged, no window given: 3-2 coast-down." in found["warnings"]
    assert verdicts(found)["3-2 coast-down"] == "not judged"


def test_miles_per_hour_are_judged_alike():
    found = answer({"1-2-light": "12 mph", "1-2-full": "40 mph", "2-3-light": "35 mph"})
    assert verdicts(found)["1-2, light throttle"] == "inside"
    assert verdicts(found)["2-3, light throttle"] == "late by 11 mph"
    assert found["tables"][0]["rows"][0][1] == "10 to 14 mph"


def test_working_shows_every_term_of_the_misfit():
    found = answer({**MIDDLES, "1-2-light": 31, "2-3-light": 52})
    assert found["working"][1]["formula"] == (
        "chi-square = sum of ((measured − explained) / scatter)²"
    )
    assert found["working"][1]["numbers"].count("²") == 7
