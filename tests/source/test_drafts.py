"""A page with faults in its front matter: its text is checked in the same run."""

from underhoist.check import check

FRONT = """---
kind: procedure
title: Set the band
summary: For a test.
unit_family: any
area: bands
minuts: 25
who: apprentice
---
"""
BODY = """## Steps

1. Tighten to 28 lbf·ft, then <torque:band-seat>.
2. See [the other page](other.md) and <procedure:nowhere>.

    ![](drawing.svg)
"""


def codes(folder):
    return [(found.at.line, found.code) for found in check(folder).findings]


def test_the_text_is_checked_although_a_key_is_misspelt(tmp_path):
    (tmp_path / "set-band.md").write_text(FRONT + BODY)
    assert codes(tmp_path) == [
        (7, "unknown-key"),
        (12, "torque-in-prose"),
        (13, "dead-reference"),
        (13, "dead-reference"),
        (15, "dead-reference"),
        (15, "image-without-text"),
    ]


def test_what_only_the_family_can_tell_is_left_for_the_next_run(tmp_path):
    (tmp_path / "set-band.md").write_text(FRONT + "## Steps\n\n1. Seat it: <torque:band-seat>.\n")
    assert codes(tmp_path) == [(7, "unknown-key")]


def test_steps_are_missed_only_where_there_is_text(tmp_path):
    (tmp_path / "set-band.md").write_text(FRONT + "Tighten it.\n")
    (tmp_path / "empty.md").write_text(FRONT)
    assert codes(tmp_path) == [(7, "unknown-key"), (7, "unknown-key"), (10, "no-steps")]


def test_a_tool_may_tell_a_torque_even_as_a_draft(tmp_path):
    front = "---\nkind: tool\ntitle: Wrench\nsumary: For a test.\n---\n"
    (tmp_path / "wrench.md").write_text(front + "It reads to 100 lbf·ft.\n")
    assert codes(tmp_path) == [(4, "unknown-key")]
