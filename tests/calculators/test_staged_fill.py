"""staged-fill: what it says at each stage. Amounts are worked in door_cases.json."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from underhoist_calculators import door

FAMILY = {
    "service-fill": "4.2 L",
    "dry-fill": "8.6 L",
    "between-marks": "0.5 L",
    "level-temperature": "65 to 80 °C",
    "selector": "park",
    "specification": "Dunmere D2",
    "accepts": "Dunmere D3, Dunmere D4",
    "fluid": "Dunmere D2",
}


def run(**entries):
    typed = {name.replace("_", "-"): text for name, text in entries.items()}
    return door.run("staged-fill", {**FAMILY, **typed})


def answer(**entries):
    result = run(**entries)
    assert result["ok"], result["errors"]
    return result["answer"]


def test_first_stage_says_how_to_get_to_a_reading():
    assert answer(drained="4.3 L")["do"] == [
        "Read the container: it must say Dunmere D2.",
        "Level ground, wheels chocked, parking brake on.",
        "Put in 3.8 L.",
        "Start the engine and let it idle. Hold the foot brake.",
        "Move the selector slowly through every position, then to park.",
        "Read the dipstick twice, wiped between, with the engine idling. The lower reading counts.",
        "Enter the reading and the fluid temperature here.",
    ]


def test_first_plate():
    (plate,) = answer(drained="4.3 L")["plates"]
    assert plate["name"] == "Put in before starting"
    assert (plate["number"], plate["unit"]) == ("3.8", "litres")
    assert plate["others"] == ["4.02 US qt", "3.34 imp qt"]


@pytest.mark.parametrize(
    ("method", "out"),
    [("pan", 4.2), ("plug", 3.78), ("converter", 7.31), ("empty", 8.6)],
)
def test_an_unmeasured_drain_is_estimated_and_says_so(method, out):
    estimated = answer(drained_by=method)
    assert estimated["values"]["out"]["value"] == pytest.approx(out)
    assert estimated["warnings"] == [
        "What came out was not measured: this rests on a common share, not on this unit. "
        "Trust the dipstick, and measure next time."
    ]


def test_a_measured_drain_needs_no_warning():
    assert answer(drained="4.3 L")["warnings"] == []


def test_nothing_known_of_the_drain():
    assert run()["errors"] == {
        "drained": {
            "written": "",
            "wrong": "Neither the drained volume nor how it was drained is known.",
            "mend": "Write what came out, or choose how it was drained.",
        }
    }


def test_service_fill_above_dry_fill():
    errors = run(drained="4 L", service_fill="9 L")["errors"]
    assert errors["service-fill"]["wrong"] == (
        "A service fill of 9 L is more than the dry fill of 8.6 L."
    )


def test_top_up_in_half_marks_and_never_past():
    topped = answer(drained="4.3 L", level="2 below full", fluid_temperature="70 °C")
    assert topped["summary"] == "Add 0.95 L: the level stands 2 marks below full at 70 °C."
    assert topped["plates"][0]["note"] == "In 3 steps: 0.45 L, 0.25 L, 0.25 L."
    assert topped["do"][0] == "Read the container: it must say Dunmere D2."
    assert topped["do"][3].endswith("Stop at the full mark, whatever this sheet says.")
    assert topped["warnings"] == [
        "Below the low mark the dipstick is a guess. Add the first step, then read again."
    ]


def test_at_the_mark():
    left = answer(drained="4.3 L", level="0 below full", fluid_temperature="70 °C")
    assert left["summary"] == (
        "Leave it: at 70 °C the level is at full, as near as a dipstick shows."
    )
    assert left["plates"] == []
    assert left["warnings"] == []


def test_over_the_mark_says_why_it_matters():
    over = answer(drained="4.3 L", level="0.5 above full", fluid_temperature="70 °C")
    assert over["summary"] == "Take out 0.25 L: 0.5 of a mark over full at 70 °C."
    assert "whip the fluid to foam" in over["plates"][0]["note"]


def test_full_when_cold_is_warmed_before_any_is_taken_out():
    cold = answer(drained="4.3 L", level="0 below full", fluid_temperature="20 °C")
    assert cold["summary"] == (
        "Warm the fluid and read again: "
        "by this cold reading it will stand 0.6 of a mark over full at 65 °C."
    )
    assert cold["do"][0] == "Warm the fluid until it is between 65 °C and 80 °C and read again."


def test_a_reading_outside_the_rule_is_named():
    cool = answer(drained="4.3 L", level="1 below full", fluid_temperature="30 °C")
    assert cool["warnings"] == [
        "Read at 30 °C, outside the rule of 65 °C to 80 °C: the level will rise by 0.47 of a mark, "
        "and this is allowed for. Only a reading inside the rule decides."
    ]


@pytest.mark.parametrize(
    ("added", "begins"),
    [("5.0 L", "0.70 L more goes in than came out."), ("3.8 L", "0.50 L less goes in")],
)
def test_a_gap_in_the_ledger_is_named(added, begins):
    full = answer(drained="4.3 L", level="0 below full", fluid_temperature="70 °C", added=added)
    (warning,) = full["warnings"]
    assert warning.startswith(begins)


def test_a_small_gap_is_silent():
    full = answer(drained="4.3 L", level="0 below full", fluid_temperature="70 °C", added="4.1 L")
    assert full["warnings"] == []


def test_what_was_missing_before_is_expected():
    full = answer(
        drained="4.3 L",
        level_before="1 below full",
        level="0 below full",
        fluid_temperature="70 °C",
        added="4.78 L",
    )
    rows = dict(full["tables"][0]["rows"])
    assert rows["Was missing before draining"] == "0.48 L"
    assert rows["Gap, in less out"] == "0.00 L"


def test_no_gap_is_made_of_an_estimate():
    full = answer(drained_by="pan", level="0 below full", fluid_temperature="70 °C", added="9 L")
    assert dict(full["tables"][0]["rows"])["Gap, in less out"] == "not known"
    assert "gap" not in full["values"]


@pytest.mark.parametrize("typed", ["dunmere d3", "Dunmere  D3", "DunmereD3"])
def test_a_fluid_that_supersedes_is_named_as_the_family_writes_it(typed):
    first = answer(drained="4.3 L", fluid=typed)
    assert first["do"][0] == (
        "Read the container: it must say Dunmere D3, "
        "which supersedes Dunmere D2 by the family page."
    )
    assert first["warnings"] == []


@pytest.mark.parametrize("entries", [{}, {"level": "1 below full", "fluid_temperature": "70 °C"}])
def test_a_fluid_that_the_family_does_not_name_is_refused_with_the_reason(entries):
    assert run(drained="4.3 L", fluid="FM-5", **entries)["errors"] == {
        "fluid": {
            "written": "FM-5",
            "wrong": "The unit was built for Dunmere D2, and the family page does not say that "
            "FM-5 supersedes it. Another friction makes clutches and bands slip or shudder.",
            "mend": "Put in Dunmere D2, Dunmere D3 or Dunmere D4.",
        }
    }


def test_the_older_fluid_does_not_replace_the_newer():
    # D3 supersedes D2; nothing says the opposite.
    entries = {"specification": "Dunmere D3", "accepts": "", "fluid": "Dunmere D2"}
    error = run(drained="4.3 L", **entries)["errors"]["fluid"]
    assert error["mend"] == "Put in Dunmere D3."


@pytest.mark.parametrize(
    ("accepts", "says"),
    [
        ("", "This unit takes Dunmere D2; nothing is known to supersede it."),
        ("D3", "This unit takes Dunmere D2; D3 supersedes it."),
        ("D3; D4", "This unit takes Dunmere D2; D3 and D4 supersede it."),
    ],
)
def test_a_fluid_that_is_not_written_is_asked_for(accepts, says):
    first = answer(drained="4.3 L", fluid="", accepts=accepts)
    assert first["warnings"] == [f"Which fluid goes in is not written. {says}"]
    assert first["do"][0] == "Level ground, wheels chocked, parking brake on."


@pytest.mark.parametrize(
    ("fluid", "what"),
    [
        ("FM-5", "whether FM-5 may go in is not known"),
        ("", "no fluid is judged"),
    ],
)
def test_where_nothing_is_known_of_the_fluid_it_says_so(fluid, what):
    first = answer(drained="4.3 L", fluid=fluid, specification="")
    assert first["warnings"] == [
        f"Which fluid this unit was built for is not written, so {what}. "
        "Read it on the family page before anything is put in."
    ]


def test_nothing_is_read_on_a_container_where_nothing_goes_in():
    entries = {"drained": "4.3 L", "fluid_temperature": "70 °C"}
    for level in ("0 below full", "0.5 above full"):
        assert not any("container" in do for do in answer(level=level, **entries)["do"])


def test_answers_in_the_unit_of_the_family():
    quarts = answer(drained="4.3 L", service_fill="4.4 qt US")
    (plate,) = quarts["plates"]
    assert (plate["number"], plate["unit"]) == ("4", "US quarts")


@settings(max_examples=60)
@given(st.floats(0.6, 8.5), st.sampled_from([("L", 1), ("US qt", 0.946352946), ("mL", 0.001)]))
def test_the_unit_of_the_drain_makes_no_difference(litres, unit):
    symbol, in_litres = unit
    typed = f"{litres / in_litres:.9f} {symbol}"
    found = answer(drained=typed)["values"]["first-fill"]["value"]
    expected = max(0.0, min(litres - max(0.5, 0.1 * litres), 4.2))
    # The first fill may come back in the drain's unit.
    unit_name = answer(drained=typed)["values"]["first-fill"]["unit"]
    scale = {"litre": 1, "US_quart": 0.946352946, "millilitre": 0.001}[unit_name]
    assert found * scale == pytest.approx(expected, abs=1e-6)


@settings(max_examples=60)
@given(st.floats(-1, 2.5), st.floats(0.05, 0.5), st.floats(20, 110))
def test_a_lower_reading_never_wants_less(below, lower, celsius):
    entries = {"drained": "4.3 L", "fluid_temperature": f"{celsius:.3f} °C"}
    first = answer(level=f"{below:.6f} below full", **entries)["values"]["change"]["value"]
    second = answer(level=f"{below + lower:.6f} below full", **entries)["values"]["change"]["value"]
    assert second > first
