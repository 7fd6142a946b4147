"""The shift map: what it says of a loss, an adjuster and what vacuum cannot explain."""

import xml.etree.ElementTree as ET

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from underhoist_calculators import door

EXAMPLE = door.example("shift-map")


def run(**changes):
    return door.run(
        "shift-map", {**EXAMPLE, **{k.replace("_", "-"): v for k, v in changes.items()}}
    )


def answer(**changes):
    result = run(**changes)
    assert result["errors"] == {}
    return result["answer"]


def test_one_loss_explains_both_shifts():
    found = answer()
    assert found["summary"] == "A vacuum loss of 2.7 to 3.4 inHg explains 1-2 and 2-3."
    # By hand: 16 - (64² - 31²) / ((64² - 19²) / 16).
    assert found["values"]["1-2_loss"]["value"] == pytest.approx(16 - 3135 / (3735 / 16))
    assert found["do"][0].startswith("Read the vacuum with a gauge at the manifold")


def test_the_adjuster_is_what_not_to_do_first():
    said = answer()["do"][1]
    assert said == (
        "An adjuster turned in by 5.0 turns would look the same. Turning it out by as much lowers "
        "and softens all shifts and would bring these back. Do not do it before the hose is "
        "proven: it would hide the leak."
    )


def test_a_stop_in_the_way_is_said():
    said = answer(stop_in="3 turns", stop_out="2 turns")["do"][1]
    assert said.endswith(
        "Turning it out cannot make up for it: that takes 5.0 turns and only 2.0 are left. Beyond "
        "its stop the valve cannot travel."
    )


def test_without_the_stops_it_says_that_they_are_not_known():
    assert answer()["warnings"] == [
        "The adjuster has a stop either way, beyond which the valve cannot travel. Its turns are "
        "not written, so whether they suffice is not known."
    ]
    assert answer(stop_in="3 turns", stop_out="9 turns")["warnings"] == []


def test_in_raises_and_out_lowers():
    table = answer()["tables"][3]
    assert table["heads"] == ["Shift", "One turn in", "One turn out"]
    # By hand from 19 km/h at 16 inHg: V less 0.6 and V more 0.6.
    assert table["rows"][0] == ["1-2", "22 km/h", "15 km/h"]


def test_a_table_for_each_shift_says_what_the_drawing_shows():
    one, two = answer()["tables"][1:3]
    assert one["title"] == "1-2 against vacuum"
    assert one["heads"] == ["Throttle and vacuum", "As specified", "4.0 inHg lost"]
    assert one["rows"][0] == ["light, 16 inHg", "19 km/h", "36 km/h"]
    assert two["title"] == "2-3 against vacuum"
    assert two["rows"][2] == ["full, 0 inHg", "105 km/h", "105 km/h"]


def test_an_early_shift_is_no_leak():
    found = answer(measured_1_2="14 km/h", measured_2_3="29 km/h", uncertainty="1 km/h")
    assert found["summary"].startswith("1-2 and 2-3 came early: as if there were ")
    assert found["do"][0] == (
        "A leak cannot do this: it only makes shifts later. Look at the adjuster, the modulator "
        "and the governor."
    )
    assert "An adjuster turned out by" in found["do"][1]
    assert "raises and firms all shifts" in found["do"][1]


def test_as_specified_needs_no_loss():
    found = answer(measured_1_2="20 km/h", measured_2_3="33 km/h")
    assert found["summary"] == (
        "1-2 and 2-3 came as the family's windows say; no vacuum loss is needed to explain it."
    )
    assert found["do"] == []


def test_later_than_full_throttle_is_not_vacuum():
    found = answer(measured_1_2="75 km/h", measured_2_3="")
    assert found["summary"] == "Vacuum alone cannot explain 1-2."
    assert found["tables"][0]["rows"][0][3] == (
        "Vacuum alone cannot: later than 64 km/h, which comes without any vacuum."
    )


def test_earlier_than_the_cut_off_is_not_vacuum():
    found = answer(measured_1_2="5 km/h", measured_2_3="")
    assert found["tables"][0]["rows"][0][3] == (
        "Vacuum alone cannot: earlier than 11 km/h, where the modulator does nothing more."
    )


def test_two_shifts_that_want_different_losses():
    found = answer(measured_1_2="20 km/h", measured_2_3="90 km/h")
    assert found["summary"] == "One vacuum loss cannot explain 1-2 and 2-3 together."
    assert found["do"][0].startswith("Put the whole road test into shift-check")


def test_nothing_measured_shows_the_loss():
    found = answer(measured_1_2="", measured_2_3="")
    assert found["summary"] == (
        "With 4.0 inHg lost of 16.0 inHg, 1-2 comes at 36 km/h instead of 19 km/h."
    )


def test_without_a_loss_it_says_where_the_shift_comes():
    found = answer(measured_1_2="", measured_2_3="", loss="0 inHg")
    assert found["summary"] == "1-2 comes at 19 km/h with 16.0 inHg, at 64 km/h without."
    assert found["tables"][0]["heads"] == ["Throttle and vacuum", "As specified"]


def test_at_full_throttle_speed_a_stuck_kick_down_is_named_too():
    found = answer(measured_1_2="64 km/h", measured_2_3="")
    assert found["tables"][0]["rows"][0][3].endswith("All of it may be gone.")
    assert found["do"][1] == (
        "A kick-down stuck on gives the same speeds as no vacuum at all: look at its cable, rod or "
        "switch as well."
    )


def test_beyond_the_last_known_point_is_not_known():
    found = answer(cut_off="")
    out = [row[-1] for row in found["tables"][3]["rows"]]
    assert out == ["not known", "not known"]


def test_a_window_that_the_model_misses_is_named():
    found = answer(window_1_2_half="55 to 59 km/h")
    assert found["warnings"][0] == (
        "The model gives 47 km/h for 1-2 at half throttle, outside the family's 55 to 59 km/h. "
        "Try the governor's own points."
    )


POINTS = {
    "law": "points",
    "governor_speed_1": "10 km/h", "governor_pressure_1": "15 kPa",
    "governor_speed_2": "40 km/h", "governor_pressure_2": "110 kPa",
    "governor_speed_3": "120 km/h", "governor_pressure_3": "310 kPa",
}  # fmt: skip


def test_the_governors_own_points_move_the_middle_of_the_map():
    plain, sprung = answer(cut_off=""), answer(cut_off="", **POINTS)
    half = [[table["rows"][1][1] for table in each["tables"][1:3]] for each in (plain, sprung)]
    assert half[0] == ["47 km/h", "78 km/h"]
    assert half[1] != half[0]
    ends = ("1-2_ceiling", "1-2_floor", "2-3_ceiling", "2-3_floor")
    for end in ends:
        expected = plain["values"][end]["value"]
        assert sprung["values"][end]["value"] == pytest.approx(expected, abs=1e-6)


@pytest.mark.parametrize(
    ("changes", "field", "wrong"),
    [
        ({"law": "points"}, "governor-speed-1", "A governor by its own points needs at least two"),
        (
            {**POINTS, "governor_pressure_2": ""}, "governor-pressure-2",
            "A governor point needs both its speed and its pressure.",
        ),
        (
            {**POINTS, "governor_pressure_2": "10 kPa"}, "governor-speed-1",
            "Speed and pressure must both rise from each governor point to the next.",
        ),
        (
            {**POINTS, "governor_speed_3": "90 km/h"}, "window-2-3-light",
            "The governor's points do not reach over the shift speeds.",
        ),
        (
            {"vacuum_half": "17 inHg"}, "vacuum-half",
            "The vacuum must fall as the throttle opens.",
        ),
        (
            {"cut_off": "12 inHg"}, "cut-off",
            "The modulator cannot stop working below the light throttle's vacuum.",
        ),
        (
            {"cut_off": "20 inHg"}, "window-1-2-light",
            "At its earliest the shift would come at a standstill or below the governor's points.",
        ),
        (
            {"vacuum_measured": "0 inHg"}, "vacuum-measured",
            "Without vacuum at the source there is none to lose.",
        ),
        (
            {"measured_3_4": "90 km/h"}, "measured-3-4",
            "This shift is measured, but has not two windows to calibrate it by.",
        ),
        (
            {"window_1_2_light": "80 to 90 km/h"}, "window-1-2-light",
            "With more throttle the shift must come at a higher speed.",
        ),
    ],
)  # fmt: skip
def test_refused_with_the_reason(changes, field, wrong):
    assert run(**changes)["errors"][field]["wrong"].startswith(wrong)


@settings(max_examples=30)  # a change of unit that is wrong is wrong at every speed
@given(st.floats(20, 63))
def test_miles_and_kilometres_find_the_same_loss(kmh):
    metric = answer(measured_1_2=f"{kmh!r} km/h", measured_2_3="")["values"]["1-2_loss"]
    other = answer(measured_1_2=f"{kmh / 1.609344!r} mph", measured_2_3="")["values"]["1-2_loss"]
    assert other["value"] == pytest.approx(metric["value"], abs=1e-6)


SVG = "{http://www.w3.org/2000/svg}"


def drawing(**changes):
    return ET.fromstring(answer(**changes)["picture"])  # noqa: S314 - our own text


def test_the_drawing_is_named_and_described():
    root = drawing()
    assert root.get("role") == "img"
    ids = {each.get("id"): each.text for each in root.iter() if each.get("id")}
    for id_ in root.get("aria-labelledby").split():
        assert ids[id_]
    assert ids["uh-plot-desc"].startswith("1-2: 64 km/h without vacuum, falling to 11 km/h")
    assert "Measured: 2-3 at 56 km/h with 16 inHg." in ids["uh-plot-desc"]


def test_every_mark_stands_in_the_drawing():
    root = drawing()
    marks = [each.get("class") for each in root.iter() if each.get("class")]
    assert marks.count("uh-plot__curve") == 2
    assert marks.count("uh-plot__lost") == 2
    assert marks.count("uh-plot__band") == 2
    assert marks.count("uh-plot__measured") == 2
    words = {each.text for each in root.iter(f"{SVG}text")}
    assert {"1-2", "2-3", "4 inHg lost", "1-2: 31", "full", "half", "light"} <= words


@pytest.mark.parametrize("loss", ["0.5 inHg", "4 inHg", "12 inHg", "20 inHg"])
def test_no_inline_style_and_nothing_outside_the_paper(loss):
    root = drawing(loss=loss)
    assert all(each.get("style") is None for each in root.iter())
    for text in root.iter(f"{SVG}text"):
        # A letter of 16 is about 8 wide.
        wide, x = 8 * len(text.text), float(text.get("x"))
        begins = x - wide * {"start": 0, "middle": 0.5, "end": 1}[text.get("text-anchor")]
        assert begins >= -4
        assert begins + wide <= 344
        assert 0 <= float(text.get("y")) <= 356


@given(st.floats(0, 20), st.booleans())
def test_every_curve_stays_on_the_paper_and_runs_to_the_right(loss, sprung):
    root = drawing(loss=f"{loss:.6f} inHg", **({**POINTS, "cut_off": ""} if sprung else {}))
    for path in root.iter(f"{SVG}path"):
        if path.get("class") in {"uh-plot__curve", "uh-plot__lost"}:
            places = [tuple(map(float, p.split())) for p in path.get("d")[1:].split("L")]
            assert all(44 <= x <= 330 and 34 <= y <= 288 for x, y in places)
            assert places == sorted(places)


def test_the_ring_stands_at_the_reading():
    # 56 km/h of 120 between the axis at 288 and the top at 34; 16 of 18 inHg between 44 and 330.
    ring = list(drawing().iter(f"{SVG}circle"))[1]
    assert float(ring.get("cy")) == pytest.approx(288 - 254 * 56 / 120, abs=0.06)
    assert float(ring.get("cx")) == pytest.approx(44 + 286 * 16 / 18, abs=0.06)


def test_without_loss_and_reading_nothing_of_them_is_drawn():
    root = drawing(loss="0 inHg", measured_1_2="", measured_2_3="")
    marks = {each.get("class") for each in root.iter()}
    assert not {"uh-plot__lost", "uh-plot__measured"} & marks


def test_miles_are_drawn_in_miles():
    windows = {key.replace("-", "_"): "" for key in EXAMPLE if key.startswith("window")}
    root = drawing(**{**windows, "window_1_2_light": "10 to 14 mph",
                      "window_1_2_full": "37 to 42 mph", "measured_2_3": "",
                      "measured_1_2": "19 mph"})  # fmt: skip
    assert "Road speed, mph" in {each.text for each in root.iter(f"{SVG}text")}


def test_one_reading_s_plate_says_what_its_table_says():
    alone = answer(measured_1_2="37 km/h", measured_2_3="")
    [plate] = alone["plates"]
    assert plate["number"] == "4.3"
    assert "A loss of 4.3 inHg (3.4 to 5.3 inHg)." in str(alone["tables"])


def test_two_points_are_a_governor_of_its_own():
    points = {
        "governor_speed_1": "10 km/h", "governor_pressure_1": "2 psi",
        "governor_speed_2": "130 km/h", "governor_pressure_2": "80 psi",
    }  # fmt: skip
    one = {**points, "governor_speed_2": "", "governor_pressure_2": ""}
    assert run(law="points", **points)["errors"] == {}
    assert list(run(law="points", **one)["errors"]) == ["governor-speed-2"]
