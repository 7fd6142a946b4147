"""`underhoist draft`: a page of every kind that passes the check but for what is marked."""

import os
import signal
import subprocess
import sys

import pytest

from underhoist.check import check
from underhoist.start.draft import DRAFTS

FULL = {
    "procedure": (
        "title=Seat the pan again", "summary=Puts it back.", "unit_family=example-3", "area=pan",
        "minutes=10", "who=app", "author=RB", "torques=pan-bolts", "fasteners=Plug: 60 lbf*in",
        "parts=gasket", "consumables=Rags, Fine grease", "fluids=1",
        "readings=Turns to seat: 1 to 2 turns", "before=fit",
    ),
    "tool": ("title=Long wrench", "summary=Pulls.", "torque_range=20 to 80 lbf*ft", "scale=lbf*ft"),
    "hazard": (
        "title=Hot fluid", "summary=As the road leaves it.", "signal=1", "harm=It scalds hands.",
        "avoid=Wait.", "tools=-", "areas=+fluid", "words=drain, pour",
    ),
    "fault": (
        "title=Shifts late", "summary=The engine screams.", "complaint=It hangs on.",
        "unit_family=any", "causes=Hose split, Cable stretched", "checks=Look at the hose",
    ),
    "unit-family": (
        "title=Gull 4", "summary=Four speeds.", "type=simpson", "tyre=205/70 R 14", "axle=2.92",
        "specification=Example fluid A", "service_fill=4.2 L", "dry_fill=8.6 L",
        "selector=neutral", "temperature=65 to 80 degC", "between_marks=0.5 L",
        "fasteners=Drain plug: 60 lbf*in, Cover bolts", "parts=Cover gasket",
    ),
    "page": ("title=The bays", "summary=How they are numbered."),
}  # fmt: skip
LOOKS = {"orphan"}
"""Findings of severity look that a new page can have until another one leads to it."""


def codes(made):
    return {each.code for each in check(made.pages).findings}


def test_there_is_a_case_for_every_kind():
    assert FULL.keys() == DRAFTS.keys()


@pytest.mark.parametrize("kind", DRAFTS)
@pytest.mark.parametrize("answered", [False, True], ids=["nothing answered", "all answered"])
def test_a_draft_passes_the_check_but_for_its_marks(kind, answered, made):
    before = set(made.files())
    result = made.draft(f"kind={kind}", *(FULL[kind] if answered else ()))
    assert result.exit_code == 0, result.output
    (new,) = set(made.files()) - before
    assert codes(made) - LOOKS == (
        {"not-written-yet"} if "???" in made.files()[new].decode() else set()
    )
    marks = made.files()[new].decode().count("???")
    assert sum(each.code == "not-written-yet" for each in check(made.pages).findings) == marks


@pytest.mark.parametrize("kind", DRAFTS)
def test_with_every_mark_written_the_page_is_whole(kind, made):
    """Whoever writes something fitting in place of each mark has a manual that builds."""
    before = set(made.files())
    assert made.draft(f"kind={kind}", *FULL[kind]).exit_code == 0
    (new,) = set(made.files()) - before
    path = made.folder / new
    text = path.read_text(encoding="utf-8")
    for key, value in FITTING.items():
        text = text.replace(f"{key}: ???", f"{key}: {value}")
    path.write_text(text.replace("???", "Look at it."), encoding="utf-8")
    assert codes(made) - LOOKS == set(), made.run("check").output


FITTING = {
    "sun": "31", "ring": "73", "when": "as found", "likelihood": "50 %",
    "rules_out": "[hose-split, cable-stretched]", "minutes": "10",
    "access": "level ground", "torque": "50 lbf*in",
}  # fmt: skip


def test_a_procedure_as_it_is_written(made):
    result = made.draft("kind=procedure", *FULL["procedure"])
    assert (made.pages / "example-3/seat-the-pan-again.md").read_text(encoding="utf-8") == PROCEDURE
    assert result.output == TOLD.format(file=made.pages / "example-3/seat-the-pan-again.md")


PROCEDURE = """\
---
kind: procedure
title: Seat the pan again
summary: Puts it back.
unit_family: example-3
area: pan
minutes: 10
who: apprentice
author: RB
tools: [inch-pound-wrench]
parts: [pan-gasket]
consumables: [Rags, Fine grease]
torques: [pan-bolts, plug]
fluids: [Example fluid A]
cautions: [raised-vehicle, wrong-unit-torque]
fasteners:
  plug:
    name: Plug
    torque: 60 lbf*in
readings:
  turns-to-seat:
    name: Turns to seat
    unit: turn
    when: ???
    limits: 1 to 2 turns
before: [fit-pan]
---

## Steps

1. ???

    Why: ???

2. Measure the turns to seat. [Record it](reading:turns-to-seat).

    Good: ???

    Bad: ???

3. Tighten the pan bolts to <torque:pan-bolts>.

    Good: ???

    Second check: ???

4. Tighten the plug to <torque:plug>.

    Good: ???

    Second check: ???
"""
TOLD = """\

Written: {file}
9 places wait for you, marked ???:
  line 24  when is not written yet.
  line 31  1. ???
  line 33  Why: ???
  line 37  Good: ???
  line 39  Bad: ???
  line 43  Good: ???
  line 45  Second check: ???
  line 49  Good: ???
  line 51  Second check: ???
Then: underhoist check
"""


def test_a_second_page_of_one_name_gets_another(made):
    made.draft("kind=page", "title=The bays")
    made.draft("kind=page", "title=The bays")
    assert (made.pages / "the-bays-2.md").is_file()
    result = made.draft("kind=page", "title=The bays", "id=the-bays")
    assert result.exit_code == 2
    assert result.output == (
        "id: the-bays is there already. Write another name, such as the-bays-3. "
        "Nothing was written.\n"
    )


@pytest.mark.parametrize(
    ("pair", "said"),
    [
        ("tools=wrnch", 'tools: "wrnch" is not there. Did you mean inch-pound-wrench? Type 1.'),
        ("tools=9", "tools: There are 1 to choose from; 9 is none of them."),
        ("cautions=r", 'cautions: "r" can be raised-vehicle or wrong-unit-torque. Type one'),
        ("area=pans", "area: Did you mean pan? Type 1, or +pans for a new one."),
        ("minutes=ten", "minutes is a whole number."),
        ("readings=Turns: 2 turns", "Write two numbers"),
        ("fasteners=Plug: 30 lb", "lb"),
        ("who=master", 'who: "master" is not there.'),
        ("titel=A", "titel: there is no such question for this kind of page. Did you mean title?"),
        ("kind=proceedure", 'kind: "proceedure" is not there. Did you mean procedure? Type 1.'),
    ],
)  # fmt: skip
def test_an_answer_that_is_not_clear_writes_nothing_and_says_what_is_meant(pair, said, made):
    before = made.files()
    result = made.draft("kind=procedure", pair)
    assert result.exit_code == 2
    assert said in result.output
    assert result.output.endswith("Nothing was written.\n")
    assert made.files() == before


def test_answers_from_a_file(made, tmp_path):
    answers = tmp_path / "answers.yml"
    answers.write_text(
        "kind: procedure\ntitle: Fill it\ntools: [1]\nfasteners:\n  Plug: 60 lbf*in\nid: fill\n"
    )
    assert made.run("draft", "--answers", str(answers)).exit_code == 0
    text = (made.pages / "any-unit/fill.md").read_text(encoding="utf-8")
    assert "tools: [inch-pound-wrench]\n" in text
    assert "    torque: 60 lbf*in\n" in text


@pytest.mark.parametrize("text", ["- a\n", "{", ""])
def test_a_file_without_answers_is_refused(text, made, tmp_path):
    answers = tmp_path / "answers.yml"
    answers.write_text(text)
    result = made.run("draft", "--answers", str(answers))
    assert result.exit_code == 2
    assert str(answers) in result.output


def test_a_person_is_asked_again_where_the_answer_is_not_clear(made):
    typed = "tool\nDrift\nKnocks pins out.\nbig\n\n\n\n"
    result = made.run("draft", input=typed)
    assert result.exit_code == 0, result.output
    assert "Write two numbers" in result.output
    assert (
        "title: Drift\nsummary: Knocks pins out.\n---"
        in (made.pages / "tools/drift.md").read_text()
    )


def test_where_the_input_ends_early_nothing_is_written(made):
    before = made.files()
    result = made.run("draft", input="tool\nDrift\n")
    assert result.exit_code == 2
    assert "\nNothing was written.\n" in result.output
    assert made.files() == before


@pytest.mark.skipif(os.name == "nt", reason="signals")
def test_ctrl_c_leaves_nothing_behind(made):
    before = made.files()
    asked = subprocess.Popen(
        [sys.executable, "-m", "underhoist", "draft", str(made.folder)],
        stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True,
    )  # fmt: skip
    asked.stdin.write("procedure\nHalf a page\n")
    asked.stdin.flush()
    while "in one sentence" not in asked.stdout.readline():
        pass
    asked.send_signal(signal.SIGINT)
    _, said = asked.communicate(timeout=30)
    assert (asked.returncode, said.strip()) == (2, "Nothing was written.")
    assert made.files() == before


def test_without_a_manual_it_says_so(tmp_path, made):
    result = type(made)(tmp_path / "none").run("draft", "--answer", "kind=tool")
    assert result.exit_code == 2
    assert result.output.endswith("there is no such folder. Nothing was written.\n")


def test_text_that_yaml_would_misread_is_put_in_quotes(made):
    title = "title=Pan: 3 # off, yes & no"
    assert made.draft("kind=page", title, "summary=- odd: #1", "id=odd").exit_code == 0
    page = check(made.pages)
    assert {each.code for each in page.findings} <= {"not-written-yet", "orphan"}
    assert page.manual.plain["odd"].title.value == "Pan: 3 # off, yes & no"
    assert page.manual.plain["odd"].summary.value == "- odd: #1"


def test_what_a_new_page_asks_of_another_is_told(made):
    result = made.draft("kind=hazard", *FULL["hazard"][:5], "tools=wrench")
    assert "With it the check also says:\n" in result.output
    said = "  example-3/fit-pan.md:9:9  This tool asks for the caution hot-fluid, and the page does"
    assert said in result.output
