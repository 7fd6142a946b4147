"""Band adjusters: the way of a screw against published values, and facts of the trade."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from underhoist_calculators import door
from underhoist_calculators.band import Adjuster, is_worn, slip, wear
from underhoist_calculators.calculators.torque_units import SCALES
from underhoist_calculators.units import quantity

TURNS = st.floats(0, 10)
PITCHES = st.floats(0.25, 3)


def millimetres(value):
    return quantity(value, "millimetre")


def turns(value):
    return quantity(value, "turn")


def torque(value, unit="pound_force_inch"):
    return quantity(value, unit)


def test_published_way_of_a_screw(published):
    entries, expected, _ = published("bolts", "BT-35")
    screw = Adjuster(pitch=millimetres(entries["pitch"]), starts=entries["starts"])
    found = screw.clearance(quantity(entries["angle"], "degree"))
    assert found.magnitude == pytest.approx(expected, rel=1e-12)


def test_published_turns_for_a_way(published):
    entries, expected, _ = published("bolts", "BT-37")
    pitch = quantity(1 / entries["threads_per_inch"], "inch")
    found = Adjuster(pitch=pitch, starts=entries["starts"]).turns(millimetres(entries["travel"]))
    assert found.magnitude == pytest.approx(expected, rel=1e-9)


def test_no_turns_make_no_way(published):
    entries, expected, _ = published("bolts", "BT-38")
    screw = Adjuster(pitch=millimetres(entries["pitch"]))
    assert screw.clearance(turns(entries["turns"])).magnitude == expected


def test_two_starts_and_a_lever_each_double_it():
    screw = Adjuster(pitch=millimetres(1.25), starts=2, lever=0.4)
    assert screw.clearance(turns(3)).magnitude == pytest.approx(3 * 1.25 * 2 * 0.4)


def test_a_quarter_turn_shows_a_worn_band():
    # Common practice, no source.
    assert is_worn(wear(turns(1.75), turns(1.5)))
    assert is_worn(wear(quantity(630, "degree"), turns(1.5)))
    assert not is_worn(wear(turns(1.74), turns(1.5)))


@given(TURNS, TURNS)
def test_wear_keeps_its_sign(found, left):
    there, back = wear(turns(found), turns(left)), wear(turns(left), turns(found))
    assert there.magnitude == pytest.approx(-back.magnitude)
    assert (there.magnitude > 0) is (found > left)


@given(TURNS, PITCHES, st.integers(1, 4), st.floats(0.1, 10))
def test_there_and_back(number, pitch, starts, lever):
    screw = Adjuster(pitch=millimetres(pitch), starts=starts, lever=lever)
    assert screw.turns(screw.clearance(turns(number))).m_as("turn") == pytest.approx(number)


@given(TURNS, PITCHES, st.floats(0.01, 2))
def test_more_turns_more_clearance(number, pitch, more):
    screw = Adjuster(pitch=millimetres(pitch))
    assert screw.clearance(turns(number)) < screw.clearance(turns(number + more))


@given(TURNS, PITCHES)
def test_inches_and_degrees_make_no_difference(number, pitch):
    inches = Adjuster(pitch=millimetres(pitch).to("inch"))
    found = inches.clearance(quantity(number * 360, "degree")).m_as("millimetre")
    assert found == pytest.approx(number * pitch, rel=1e-9)


@pytest.mark.parametrize(
    ("used", "unit", "scales"),
    [
        (120, "pound_force_foot", ("pound_force_inch", "pound_force_foot")),
        (120, "newton_metre", ("pound_force_inch", "newton_metre")),
        (10, "pound_force_inch", ("pound_force_foot", "pound_force_inch")),
        (13.6, "pound_force_foot", ("newton_metre", "pound_force_foot")),
        (10, "newton_metre", ("pound_force_foot", "newton_metre")),
        (138, "pound_force_inch", ("kilogram_force_centimetre", "pound_force_inch")),
        (126, "pound_force_foot", ("pound_force_inch", "pound_force_foot")),  # 5 %
        (114, "pound_force_foot", ("pound_force_inch", "pound_force_foot")),
    ],
)
def test_slips_between_scales(used, unit, scales):
    # An external band is seated at 120 lbf·in: common practice, no source.
    assert slip(torque(120), torque(used, unit)) == scales


@pytest.mark.parametrize(
    ("used", "unit"),
    [
        (120, "pound_force_inch"), (10, "pound_force_foot"), (13.6, "newton_metre"),
        (125.9, "pound_force_inch"), (114.1, "pound_force_inch"), (60, "pound_force_inch"),
        (126.03, "pound_force_foot"), (113.97, "pound_force_foot"),
    ],
)  # fmt: skip
def test_no_slip(used, unit):
    assert slip(torque(120), torque(used, unit)) is None


@given(st.floats(1, 200), st.sampled_from(SCALES), st.sampled_from(SCALES), st.sampled_from(SCALES))
def test_every_slip_is_found_in_any_unit(number, meant, read_on, told_in):
    assume(meant != read_on)
    used = quantity(number, read_on).to(told_in)
    found = slip(quantity(number, meant), used)
    assert found is not None
    # Another pair of scales can explain the same torque as well, never worse.
    other, on = found
    again = quantity(quantity(number, meant).m_as(other), on)
    assert again.m_as("newton_metre") == pytest.approx(used.m_as("newton_metre"), rel=1e-9)


@given(st.floats(1, 200), st.floats(0.951, 1.049), st.sampled_from(SCALES))
def test_the_right_torque_is_never_a_slip(number, off, told_in):
    specified = torque(number)
    assert slip(specified, torque(number * off).to(told_in)) is None


def run(**entries):
    common = {"seat": "120 lbf·in", "back-off": "1 1/2 turns", "pitch": "1/20 in"}
    return door.run("band-set", common | entries)


def test_no_wear_says_so_and_warns_of_nothing():
    answer = run(**{"as-found": "1 1/2 turns"})["answer"]
    assert answer["summary"].endswith("Wear since it was set: nothing.")
    assert answer["warnings"] == []
    assert answer["values"]["verdict"] == "good"


def test_a_worn_band_is_named():
    answer = run(**{"as-found": "1 3/4 turns"})["answer"]
    assert answer["warnings"] == [
        "A quarter of a turn or more between as found and as left shows a worn band. Look at the "
        "fluid and in the pan for lining, and set the band again soon."
    ]
    assert answer["plates"][2]["number"] == "0.32"
    assert answer["plates"][2]["note"] == "1/4 of a turn, as found less as left."


def test_a_band_that_was_set_tighter_is_named():
    (warning,) = run(**{"as-found": "1 1/4 turns"})["answer"]["warnings"]
    assert warning.startswith("It was set tighter than it is left now, and a band does not grow")


@pytest.mark.parametrize("used", ["120 lbf·in", "10 lbf·ft", "13.6 N·m", "125 lbf·in"])
def test_the_right_seat_torque_is_not_warned_of(used):
    assert run(**{"seat-used": used})["answer"]["warnings"] == []


def test_a_wrong_seat_torque_that_is_no_slip_is_warned_of():
    assert run(**{"seat-used": "60 lbf·in"})["answer"]["warnings"] == [
        "Seated at 60 lbf·in, 50 % of 120 lbf·in: the turns count from another place. Seat it "
        "again."
    ]


def test_degrees_are_shown_as_turns():
    answer = run(**{"back-off": "540°"})["answer"]
    assert answer["summary"] == "Backed off 1 1/2 turns, the band has 1.91 mm of clearance."
    assert answer["plates"][0]["others"] == ["540°"]


def test_turns_for_a_wanted_clearance_are_given_to_an_eighth():
    plate = run(wanted="1 mm")["answer"]["plates"][-1]
    assert plate["number"] == "0.79"  # 1 mm over 1.27 mm a turn
    assert plate["note"] == "For 1 mm. The nearest eighth: 3/4 turn."
