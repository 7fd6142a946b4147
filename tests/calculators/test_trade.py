"""Facts of the trade (tests/published/trade.json): common practice, no source."""

import pytest
from underhoist_calculators import door, get
from underhoist_calculators.filling import first_fill
from underhoist_calculators.units import quantity, read_quantity

BAND = {"pitch": "1/20 in"}
"""Twenty threads to the inch: invented, and of no matter to the turns."""


def answer(calculator, **entries):
    result = door.run(calculator, {name.replace("_", "-"): text for name, text in entries.items()})
    assert result["ok"], result["errors"]
    return result["answer"]


def test_an_external_band_is_seated_at_120_and_backed_off_one_and_a_half_turns(published):
    inputs, expected, _ = published("trade", "TR-01")
    back_off = f"{expected['back_off']} turns"
    found = answer("band-set", seat=f"{inputs['seat']} lbf·in", back_off=back_off, **BAND)
    assert found["do"][1:] == [
        "Back off, then tighten to 120 lbf·in. Mark the screw.",
        "Back off 1 1/2 turns from the mark and hold the screw while the locknut is tightened.",
    ]


def test_the_form_shows_that_band_as_its_example(published):
    inputs, expected, tolerance = published("trade", "TR-01")
    seat, back_off = (get("band-set").field(name) for name in ("seat", "back-off"))
    assert seat is not None
    assert back_off is not None
    shown = read_quantity(seat.example or "").m_as("pound_force_inch")
    assert shown == pytest.approx(inputs["seat"], **tolerance)
    turns = read_quantity(back_off.example or "").m_as("turn")
    assert turns == pytest.approx(expected["back_off"], **tolerance)


def test_about_four_litres_go_in_before_starting(published):
    inputs, expected, tolerance = published("trade", "TR-02")
    fill = quantity(inputs["service_fill"], "litre")
    # The pan down lets out the service fill.
    found = first_fill(fill, fill).m_as("litre")
    assert found == pytest.approx(expected["first_fill"], rel=0, abs=tolerance["abs"])


def test_about_four_litres_are_shown_where_nobody_measured(published):
    inputs, expected, tolerance = published("trade", "TR-02")
    fills = {name: f"{litres} L" for name, litres in inputs.items()}
    found = answer("staged-fill", **fills, drained_by="pan", between_marks="0.5 L",
                   level_temperature="65 to 80 degC")  # fmt: skip
    litres = found["values"]["first-fill"]
    shown = quantity(litres["value"], litres["unit"]).m_as("litre")
    assert shown == pytest.approx(expected["first_fill"], rel=0, abs=tolerance["abs"])


def test_a_line_that_loses_gets_a_hose_of_a_quarter_inch(published):
    bore = published("trade", "TR-03").expected["bore"]
    found = answer("signal-vacuum", altitude="0 m", source="18 inHg", modulator="13 inHg")
    assert f"vacuum hose of {bore} in bore" in found["do"][0]
    assert any(f"{bore} in bore" in said and "no source" in said
               for said in get("signal-vacuum").sources)  # fmt: skip


@pytest.mark.parametrize(("share", "verdict"), [(1, "worn"), (1.2, "worn"), (0.9, "good")])
def test_a_quarter_turn_between_found_and_left_shows_a_worn_band(published, share, verdict):
    inputs, expected, _ = published("trade", "TR-04")
    found = inputs["as_left"] + share * expected["worn_from"]
    shown = answer("band-set", seat="120 lbf·in", back_off=f"{inputs['as_left']} turns",
                   as_found=f"{found} turns", **BAND)  # fmt: skip
    assert shown["values"]["verdict"] == verdict
