"""What the manual gives to a card: plain data, whole, with a revision that means something."""

import json
from pathlib import Path

import pytest

from underhoist import cards
from underhoist.check import check
from underhoist.pages import make_site, sheets
from underhoist.pages.card_data import card_files, cards_of

FAMILY = """---
kind: unit-family
title: Kestrel 3
summary: Three-speed.
gear_train:
  type: simpson
  teeth: {sun: 31, ring: 73, planet: 21, planets: 4}
reference: {tyre: 215/75 R 15, axle: 3.50}
fluid:
  specification: Dunmere D2
  service_fill: 4.5 L
  dry_fill: 8.8 L
  level: {selector: park, temperature: 65 to 80 degC, between_marks: 0.5 L}
fasteners:
  band-seat: {name: Band adjuster seat, torque: 120 lbf*in}
parts:
  band-nut:
    name: Band nut
    variants:
      - {name: Thick, tell: Yellow, measures: {height: 8.0 to 8.2 mm}}
      - {name: Thin, tell: Plain, measures: {height: 6.0 to 6.2 mm}}
---
"""
PROCEDURE = """---
kind: procedure
title: Set the front band
summary: Brings the clearance back.
unit_family: kestrel-3
area: bands
minutes: 25
who: apprentice
tools: [wrench]
parts: [band-nut]
consumables: [Rags]
torques: [band-seat]
cautions: [hot-fluid]
readings:
  turns: {name: Turns to the seat, unit: turn, when: as found, limits: 1 1/4 to 2 turns}
  heat: {name: Fluid temperature, unit: degF, when: both, limits: 65 to 80 degC}
  note: {name: Turns counted, unit: turn, when: as left}
  caught: {name: Fluid caught, unit: L, when: as found, fluid: out}
before: [look-first]
---

## Steps

1. <hazard:hot-fluid>

    Turn it in. Record: <reading:turns>, <reading:heat>, <reading:note>, <reading:caught>.

    Why: It tells the wear.

2. Seat it: <torque:band-seat>.

3. Lock it.

    Off: spanner, marker

    Back on: shield

    Second check: Look at the mark.
"""
OTHER = """---
kind: procedure
title: Look first
summary: Looks.
unit_family: any
area: checks
minutes: 5
who: apprentice
---

## Steps

1. Look.
"""
FAULT = """---
kind: fault
title: Late shift
summary: Shifts late.
complaint: It hangs on in first.
unit_family: kestrel-3
causes:
  seldom: {name: Seldom, likelihood: 10 %, procedures: [look-first]}
  often: {name: Often, likelihood: 60 %, procedures: [set-band]}
checks:
  look: {name: Look, minutes: 5, access: level ground, procedure: look-first}
---
"""
TOOL = "---\nkind: tool\ntitle: Inch-pound wrench\nsummary: Small.\n---\n"
HAZARD = """---
kind: hazard
title: Hot fluid
summary: Scalds.
signal: warning
harm: Fluid scalds.
avoid: Let it cool.
---
"""


@pytest.fixture
def manual_folder(tmp_path):
    pages = {
        "families/kestrel-3.md": FAMILY,
        "kestrel-3/set-band.md": PROCEDURE,
        "any-unit/look-first.md": OTHER,
        "faults/late-shift.md": FAULT,
        "tools/wrench.md": TOOL,
        "hazards/hot-fluid.md": HAZARD,
    }
    for name, text in pages.items():
        path = tmp_path / name
        path.parent.mkdir(exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return tmp_path


def files_of(folder: Path) -> dict:
    """What the build writes for cards: the index and each procedure, by name."""
    site = make_site(check(folder).manual, folder, name="T")
    made = card_files(site, cards_of(site, {sheet.address: sheet for sheet in sheets(site)}))
    return {Path(path).stem: json.loads(text) for path, text in made}


def data_of(folder: Path, id_: str) -> dict:
    return files_of(folder)[id_]


def test_a_procedure_as_a_card_takes_it(manual_folder):
    made = data_of(manual_folder, "set-band")
    assert (made["format"], made["id"], made["title"]) == (2, "set-band", "Set the front band")
    assert made["url"] == "kestrel-3/set-band/"
    assert made["tools"] == [{"id": "wrench", "name": "Inch-pound wrench"}]
    assert made["parts"] == [
        {
            "id": "kestrel-3/band-nut",
            "name": "Band nut",
            "variants": [
                {"name": "Thick", "tell": "Yellow", "measures": ["height: 8 to 8.2 mm"]},
                {"name": "Thin", "tell": "Plain", "measures": ["height: 6 to 6.2 mm"]},
            ],
        }
    ]
    assert made["cautions"] == [
        {
            "id": "hot-fluid",
            "word": "warning",
            "harm": "Fluid scalds.",
            "avoid": "Let it cool.",
        }
    ]
    assert (made["minutes"], made["before"], made["consumables"]) == (25, ["look-first"], ["Rags"])


def test_steps_say_what_they_want(manual_folder):
    turn, seat, lock = data_of(manual_folder, "set-band")["steps"]
    assert [step["wants_second_check"] for step in (turn, seat, lock)] == [False, True, True]
    assert seat["torques"] == [
        {
            "id": "kestrel-3/band-seat",
            "name": "Band adjuster seat",
            "value": "120 pound-force inches",
        }
    ]
    assert turn["cautions"][0]["id"] == "hot-fluid"
    assert "It tells the wear." in turn["html"]
    assert lock["text"] == "Lock it."
    assert (lock["takes_off"], lock["puts_back"]) == (["spanner", "marker"], ["shield"])


def test_a_reading_of_both_times_on_two_steps_is_as_found_on_the_first(manual_folder):
    def whens() -> list[list[str]]:
        steps = data_of(manual_folder, "set-band")["steps"]
        heat = "set-band/heat"
        return [[one["when"] for one in step["readings"] if one["id"] == heat] for step in steps]

    assert whens() == [["both"], [], []], "on a single step, that step asks for both"
    page = manual_folder / "kestrel-3" / "set-band.md"
    page.write_text(PROCEDURE.replace("3. Lock it.", "3. Lock it. <reading:heat>"))
    assert whens() == [["as found"], [], ["as left"]]


def test_limits_are_numbers_in_the_unit_that_is_read(manual_folder):
    turns, heat, note, caught = data_of(manual_folder, "set-band")["steps"][0]["readings"]
    assert turns == {
        "id": "set-band/turns",
        "name": "Turns to the seat",
        "unit": "turn",
        "unit_words": "turns",
        "when": "as found",
        "low": 1.25,
        "high": 2.0,
        "limits_text": "1 1/4 to 2 turns",
        "fluid": "",
    }
    assert caught["fluid"] == "out"
    # 65 °C = 149 °F and 80 °C = 176 °F, exact by the definition of the scales.
    assert heat["low"] == pytest.approx(149)
    assert heat["high"] == pytest.approx(176)
    assert heat["limits_text"] == "149 to 176 °F"
    assert (note["low"], note["high"], note["limits_text"]) == (None, None, "")


def test_the_revision_changes_with_the_text_and_only_with_it(manual_folder):
    first = data_of(manual_folder, "set-band")["revision"]
    assert data_of(manual_folder, "set-band")["revision"] == first
    page = manual_folder / "kestrel-3" / "set-band.md"
    page.write_text(PROCEDURE.replace("Lock it.", "Lock it hard."), encoding="utf-8")
    assert data_of(manual_folder, "set-band")["revision"] != first


def test_a_torque_is_in_the_unit_that_the_step_shows(manual_folder):
    """Two units of one value in one line of paper would be a mistake waiting for a wrench."""
    tool = manual_folder / "tools" / "wrench.md"
    text = tool.read_text(encoding="utf-8")
    reads = "kind: tool\nscale: lbf*ft\ntorque_range: 5 to 80 lbf*ft\n"
    tool.write_text(text.replace("kind: tool\n", reads), encoding="utf-8")
    step = data_of(manual_folder, "set-band")["steps"][1]
    assert step["torques"][0]["value"] == "10 pound-force feet"
    assert "10 lbf·ft" in step["text"]


def test_a_torque_changed_in_the_family_is_a_new_revision(manual_folder):
    first = data_of(manual_folder, "set-band")["revision"]
    page = manual_folder / "families" / "kestrel-3.md"
    page.write_text(FAMILY.replace("120 lbf*in", "110 lbf*in"), encoding="utf-8")
    assert data_of(manual_folder, "set-band")["revision"] != first


def test_the_index_offers_checks_first_and_the_likeliest_mend_first(manual_folder):
    index = files_of(manual_folder)["index"]
    assert index["families"] == [
        {
            "id": "kestrel-3",
            "title": "Kestrel 3",
            "tyre": "215/75 R 15",
            "axle": "3.50",
            "between_marks": "0.5 L",
        }
    ]
    assert {entry["id"] for entry in index["procedures"]} == {"set-band", "look-first"}
    assert "steps" not in index["procedures"][0]
    [fault] = index["faults"]
    assert fault["complaint"] == "It hangs on in first."
    assert (fault["checks"], fault["mends"]) == (["look-first"], ["set-band", "look-first"])


def test_the_index_offers_nothing_that_a_card_cannot_take(manual_folder):
    manual = check(manual_folder).manual
    index = cards.index(manual, [data_of(manual_folder, "set-band")])
    assert index["faults"][0]["checks"] == []
