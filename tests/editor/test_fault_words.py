"""What an editor offers on a fault's page: calculators, their answers, and readings."""

from pathlib import Path

from underhoist.editor.desk import Desk
from underhoist.editor.help import suggestions

SMALLEST = Path(__file__).parents[1] / "good" / "smallest"
FILE = "faults/late-shifts.md"
PAGE = """---
kind: fault
title: Shifts up late
summary: The engine screams before second comes.
complaint: It hangs on to first.
unit_family: kestrel-3
causes:
  worn-band: {name: Worn band, likelihood: 40 %, procedures: [set-band]}
checks:
  count:
    name: Count the turns
    minutes: 10
    access: on the hoist
    procedure: count-turns
    rules_out: [worn-band]
    MARK
---
"""


def offered(text):
    desk = Desk(SMALLEST)
    page = desk.checked().manual.faults["late-shifts"]
    lines = PAGE.replace("MARK", text).split("\n")
    row = max(number for number, line in enumerate(lines) if "|" in line)
    column = lines[row].index("|")
    text = "\n".join(lines).replace("|", "")
    return [each.label for each in suggestions(desk.manual, page, text, row, column)]


def test_the_readings_of_its_procedures():
    assert offered("readings: [|]") == ["turns-to-seat"]


def test_calculators_that_name_a_pattern():
    assert offered("calculators:\n      |") == ["shift-check", "signal-vacuum"]


def test_what_they_answer():
    words = offered("calculators:\n      shift-check:\n        bad: [|]")
    assert {"as-specified", "cable-tight", "line-losing"} <= set(words)


def test_both_sides():
    assert offered("calculators:\n      shift-check:\n        |") == ["bad", "good"]
