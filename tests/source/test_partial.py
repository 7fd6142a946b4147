"""A fault whose front matter has faults: what is left of its tables."""

import pytest

from underhoist.source import read

FRONT = """---
kind: fault
title: Shifts up late
summary: It hangs on.
complaint: It hangs on.
unit_family: wren-2
causes:
  band: {name: Slack band, likelihood: 40 %}
  hose: {name: Hose split, likelihood: 30 %}
checks:
  turn: {name: Turn it, minutes: 5, access: here, rules_out: [band]}
  look: {name: Look, minutes: 5, access: here, rules_out: [hose]}
---
"""


def left(*replaced):
    text = FRONT
    for old, new in replaced:
        assert old in text
        text = text.replace(old, new)
    found = read("faults/late.md", text.encode())
    assert found.page is None and found.findings
    return found.draft.partial


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("title: Shifts", "titel: Shifts"),
        ("complaint: It hangs on.\n", ""),
        ("summary: It", "summary: [a, b]\nnote: It"),
    ],
)
def test_words_that_cannot_be_read_leave_both_tables(old, new):
    fault = left((old, new))
    assert (list(fault.causes), list(fault.checks)) == (["band", "hose"], ["turn", "look"])


def test_what_is_not_written_yet_is_marked():
    assert left(("title: Shifts", "titel: Shifts")).title.value == "Not written yet"


def test_a_check_with_a_fault_is_dropped_alone():
    fault = left(("Turn it, minutes: 5", "Turn it, minutes: soon"))
    assert (list(fault.causes), list(fault.checks)) == (["band", "hose"], ["look"])


def test_a_cause_with_a_fault_is_dropped_alone():
    assert list(left(("40 %", "many")).causes) == ["hose"]


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("causes:\n", "causes: soon\ncases:\n"),
        ("unit_family: wren-2\n", ""),
        ("kind: fault", "kind: page"),
        ("title: Shifts", "title: {Shifts"),
    ],
)
def test_too_little_is_nothing(old, new):
    assert left((old, new)) is None
