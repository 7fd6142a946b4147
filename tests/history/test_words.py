"""The words of a change, exactly; and that each change is told where it shows, and only there."""

import pytest

from underhoist.history import Rank, compare
from underhoist.history.amounts import became

FAMILY, JOB = "unit-family:wren-2", "procedure:set-band"
WREN, BAND = "families/wren-2.md", "jobs/set-band.md"


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("9 lbf·ft", "10 lbf·ft", "9 -> 10 lbf·ft"),
        ("9 lbf·ft", "9 lbf·in", "9 lbf·ft -> 9 lbf·in, 1/12 of what it was"),
        ("120 lbf·in", "120 lbf·ft", "120 lbf·in -> 120 lbf·ft, 12 times as much"),
        ("120 lbf·in", "10 lbf·ft", "120 lbf·in -> 10 lbf·ft, the same in another unit"),
        ("10 lbf·ft", "25 lbf·ft", "10 -> 25 lbf·ft, 2.5 times as much"),
        ("4.2 L", "4.4 L", "4.2 -> 4.4 L"),
        ("1 1/2 turns", "1 turn", "1 1/2 turns -> 1 turn"),
        ("1 1/4 to 2 turns", "1 to 2 turns", "1 1/4 to 2 turns -> 1 to 2 turns"),
        ("40 %", "50 %", "40 -> 50 %"),
        ("apprentice", "senior", "apprentice -> senior"),
        ("0 turns", "1 turn", "0 turns -> 1 turn"),
        ("20 °C", "80 °C", "20 -> 80 °C"),
    ],
)
def test_one_value_became_another(old, new, said):
    assert became(old, new) == said


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("120 lbf*in", "124 lbf*in", "Band adjuster seat (band-seat): 120 -> 124 lbf·in"),
        ("thread: 1/2-20 UNF", "thread: 1/2-13 UNC",
         "Band adjuster seat (band-seat), thread: 1/2-20 UNF -> 1/2-13 UNC"),
        ("note: Seating only.", "note: Only to seat it.",
         "Band adjuster seat (band-seat), note: Seating only. -> Only to seat it."),
        (", count: 1", "", "Band adjuster seat (band-seat), count taken out (was 1)"),
        ("service_fill: 4.5 L", "service_fill: 4.7 L", "service fill: 4.5 -> 4.7 L"),
        ("between_marks: 0.5 L", "between_marks: 0.6 L", "level between marks: 0.5 -> 0.6 L"),
        ("temperature: 65 to 80 degC", "temperature: 65 to 85 degC",
         "level temperature: 65 to 80 °C -> 65 to 85 °C"),
        ("specification: Dunmere D2", "specification: Dunmere D4",
         "specification: Dunmere D2 -> Dunmere D4"),
        ("accepts: [Dunmere D3]", "accepts: [Dunmere D3, Dunmere D5]",
         "accepted fluid Dunmere D5 added"),
        ("back_off: 1 1/2 turns", "back_off: 2 turns",
         "adjustment Front band (front-band), back off: 1 1/2 -> 2 turns"),
        ("turn: 0.6 inHg", "turn: 0.7 inHg", "modulator turn: 0.6 -> 0.7 inHg"),
        ("pressure: 31 psi", "pressure: 33 psi",
         "governor point 60 km/h, pressure: 31 -> 33 psi"),
        ("speed: 16 to 22 km/h", "speed: 17 to 22 km/h",
         "shift window 1-2, light, speed: 16 to 22 km/h -> 17 to 22 km/h"),
        ("third: 1.000", "third: 1.001", "ratio third: 1.000 -> 1.001"),
        ("planets: 4", "planets: 3", "gear train teeth planets: 4 -> 3"),
        ("axle: 3.50", "axle: 3.70", "reference axle: 3.50 -> 3.70"),
        ("outside diameter: 60.2 to 60.4 mm", "outside diameter: 60.2 to 60.5 mm",
         "part Rear seal (rear-seal), look-alike Early seal, measure outside diameter: "
         "60.2 to 60.4 mm -> 60.2 to 60.5 mm"),
        ("gasket: {name: Gasket}", "gasket: {name: Pan gasket}",
         "part Pan gasket (gasket), name: Gasket -> Pan gasket"),
        ("Two shifts, one band.", "Two shifts and one band.",
         "the text was reworded: “Two shifts and one band. See Shifts up late and Band adjuster "
         "seat.” (was “Two shifts, one band. See Shifts up late and Band adjuster seat.”)"),
    ],
)  # fmt: skip
def test_a_family_tells_its_change(edited, old, new, said):
    edited.replace(WREN, (old, new))
    told = edited.words(FAMILY)
    assert told[0] == said
    assert [each for each in told[1:] if "gear" not in each] == []


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("minutes: 25", "minutes: 30", "minutes: 25 -> 30"),
        ("who: apprentice", "who: senior", "who: apprentice -> senior"),
        ("title: Set the band", "title: Adjust the band", "title: Set the band -> Adjust the band"),
        ("hammer]", "hammer, lamp]", "tool Lamp added"),
        ("hammer]", "lamp, hammer]", "tool Lamp added"),
        ("[inch-wrench, foot-wrench", "[foot-wrench, inch-wrench",
         "the order of the tools changed"),
        ("[Rags]", "[Rags, Cleaner]", "consumable Cleaner added"),
        ("consumables: [Rags]\n", "", "consumable Rags taken out"),
        ("flying-chips]", "]", "caution Flying chips taken out"),
        ("author: RB", "author: TK", "author: RB -> TK"),
        ("before: [raise]\n", "", "procedure before Raise the vehicle taken out"),
        ("limits: 1 1/4 to 2 turns", "limits: 1 to 2 turns",
         "reading Turns to the seat (turns), limits: 1 1/4 to 2 turns -> 1 to 2 turns"),
        ("Wipe the case.", "Wipe the case well.",
         "step 1 now says “Wipe the case well.” (was “Wipe the case.”)"),
        ("Why: Dirt falls in.", "Why: Dirt would fall in.",
         "step 1, Why, now says “Dirt would fall in.” (was “Dirt falls in.”)"),
        ("    Bad: More than 2 turns.\n", "", "step 2: Bad taken out: “More than 2 turns.”"),
        ("    Bad: More than 2 turns.",
         "    Bad: More than 2 turns.\n\n    Mistake: Counting late.",
         "step 2: Mistake added: “Counting late.”"),
        ("1. <hazard:hot-fluid>\n\n    Wipe", "1. Wipe", "step 1: caution Hot fluid taken out"),
        ("3. Seat it", "3. Look twice at the scale.\n\n4. Seat it",
         "step 3 is new: “Look twice at the scale.”"),
        ("2. Turn the screw in. [Record it](reading:turns).\n\n    Bad: More than 2 turns.\n\n", "",
         "step 2 went away: “Turn the screw in. Record it.”"),
        ("[the nut](torque:band-locknut)", "[the nut](torque:band-seat)",
         "step 4: a link leads elsewhere: “Lock it: the nut.”"),
        ("Judge it on the road.", "Judge it on a hill.",
         "the text under What follows was reworded: “Judge it on a hill.” "
         "(was “Judge it on the road.”)"),
        ("## What follows\n\nJudge it on the road.\n", "",
         "What follows was taken out: “Judge it on the road.”"),
    ],
)  # fmt: skip
def test_a_procedure_tells_its_change(edited, old, new, said):
    edited.replace(BAND, (old, new))
    assert edited.words(JOB) == [said]


def test_steps_that_changed_places_are_told_by_their_new_number(edited):
    third = "3. Seat it: <torque:band-seat>.\n\n    Second check: Read the scale aloud.\n\n"
    second = "2. Turn the screw in. [Record it](reading:turns).\n\n    Bad: More than 2 turns.\n\n"
    edited.replace(BAND, (second + third, third + second))
    assert edited.words(JOB) == ["step 2 is now step 3: “Turn the screw in. Record it.”"]


def test_a_torque_on_another_page_is_told_by_the_procedure_that_shows_it(edited):
    edited.replace(WREN, ("120 lbf*in", "10 lbf*ft"), ("28 lbf*ft", "30 lbf*ft"))
    assert edited.words(JOB) == [
        "Band adjuster seat (band-seat): 120 lbf·in -> 10 lbf·ft, the same in another unit",
        "Band locknut (band-locknut): 28 -> 30 lbf·ft",
    ]
    assert all(change.elsewhere for change in edited.changes(JOB))
    assert edited.words("procedure:raise") == []


def test_what_a_hazard_and_a_wrench_say_is_told_by_the_procedure(edited):
    edited.replace("hazards/hot-fluid.md", ("harm: Fluid scalds.", "harm: It burns."))
    edited.replace("tools/inch-wrench.md", ("title: Inch-pound wrench", "title: Small wrench"))
    assert edited.words(JOB) == [
        "caution Hot fluid, harm: Fluid scalds. -> It burns.",
        "Inch-pound wrench is now called Small wrench",
    ]


def test_a_drawing_that_was_redrawn_is_told(edited):
    edited.replace("drawings/adjuster.svg", ("</svg>", "<!-- thicker --></svg>"))
    assert edited.words(JOB) == ["drawing adjuster.svg was redrawn"]


def test_torques_are_told_first_then_capacities(edited):
    edited.replace(
        WREN, ("third: 1.000", "third: 1.001"), ("dry_fill: 8.8", "dry_fill: 8.9"),
        ("28 lbf*ft", "29 lbf*ft"),
    )  # fmt: skip
    ranks = [change.rank for change in edited.changes(FAMILY)]
    assert ranks == [Rank.TORQUE, Rank.CAPACITY, Rank.OTHER]


@pytest.mark.parametrize(
    ("file", "old", "new"),
    [
        (WREN, "120 lbf*in", "120 lbf·in"),
        (WREN, "120 lbf*in", "120 in-lb"),
        (WREN, "service_fill: 4.5 L", "service_fill: 4.50 l"),
        (WREN, "temperature: 65 to 80 degC", "temperature: 65 degC to 80 degC"),
        (BAND, "Judge it on the road.", "Judge it\non the road."),
        (BAND, "tools: [inch-wrench, foot-wrench, hammer]",
         "tools:\n  - inch-wrench\n  - foot-wrench\n  - hammer"),
        (BAND, "Wipe the case.", "Wipe   the case."),
        (BAND, "2. Turn", "7. Turn"),
    ],
)  # fmt: skip
def test_what_reads_the_same_is_not_told(edited, file, old, new):
    edited.replace(file, (old, new))
    assert edited.words(FAMILY) == []
    assert edited.words(JOB) == []


def test_a_longer_way_to_a_check_is_told_by_its_fault():
    old, new = ({"shows": {"access:on the hoist": {"minutes": each}}} for each in ("15", "20"))
    assert [each.words for each in compare(old, new)] == ["access on the hoist, minutes: 15 -> 20"]


def test_what_no_word_fits_is_still_told():
    assert [each.words for each in compare({"shows": {}}, {"shows": {"x:y": {"a": "b"}}})] == [
        "the text was reworded"
    ]
