"""Every value of a page with its place, and what keeps a folder from being loaded."""

import re

import pytest
from underhoist_calculators.units import Span, quantity

from underhoist.place import Place
from underhoist.project import Unusable
from underhoist.source import load

TOOL = """---
kind: tool
title:   Inch-pound wrench
summary: >-
  For small
  torques.
torque_range: 30 to 200 lbf*in
scale: "lbf*in"
---

Use it so.
"""


def test_values_carry_file_line_and_column(loaded):
    tool = loaded({"tools/wrench.md": TOOL}).manual.tools["wrench"]
    assert tool.title.at == Place("tools/wrench.md", 3, 10)
    assert tool.title.written == tool.title.value == "Inch-pound wrench"
    assert tool.summary.value == "For small torques."
    assert tool.summary.at == Place("tools/wrench.md", 4, 10)
    span = Span(quantity(30.0, "pound_force_inch"), quantity(200.0, "pound_force_inch"))
    assert tool.torque_range.value == span
    assert tool.torque_range.written == "30 to 200 lbf*in"
    assert str(tool.torque_range.at) == "tools/wrench.md:7:15"
    assert tool.scale.value == "lbf*in"


def test_body_begins_below_the_dashes(loaded):
    body = loaded({"wrench.md": TOOL}).manual.tools["wrench"].body
    assert body.first_line == 10
    assert body.text == "\nUse it so.\n"
    assert TOOL.split("\n")[body.first_line - 1 :] == body.text.split("\n")


def test_every_place_points_at_what_was_written(loaded):
    text = (
        "---\nkind: procedure\ntitle: Tür öffnen\nsummary: s\nunit_family: any\narea: doors\n"
        "minutes: soon\nwho: senior\nreadings: {größe: {name: Größe, unit: ell, when: later}}\n"
        "author: RB\nauthor: RB\ncolour: blue\n---\n"
    )
    lines = text.split("\n")
    found = loaded({"door.md": text}).findings
    for finding in found:
        assert lines[finding.at.line - 1][finding.at.column - 1 :].startswith(finding.written)
    assert sorted((finding.code, finding.written) for finding in found) == [
        ("duplicate-key", "author"),
        ("unit-unknown", "ell"),
        ("unknown-key", "colour"),
        ("wrong-value", "größe"),
        ("wrong-value", "later"),
        ("wrong-value", "soon"),
    ]


def test_pages_are_sorted_by_kind_and_file(loaded):
    page = "---\nkind: page\ntitle: t\nsummary: s\n---\n"
    manual = loaded({"b/index.md": page, "a.md": page, "w.md": TOOL}).manual
    assert list(manual.plain) == ["a", "b/index"]
    assert list(manual.tools) == ["w"]
    assert manual.files == {"a.md", "b/index.md", "w.md"}


def test_a_page_with_faults_is_kept_out_and_remembered(loaded):
    whole = loaded({"w.md": TOOL, "x.md": TOOL.replace("kind: tool", "kind: tol")})
    assert list(whole.manual.tools) == ["w"]
    assert whole.manual.unread == {"x": "x.md"}
    assert [finding.code for finding in whole.findings] == ["unknown-key"]


def test_hidden_files_and_other_files_are_no_pages(loaded):
    manual = loaded({"w.md": TOOL, ".git/x.md": b"\0", ".x.md": b"\0", "y.txt": b"\0"}).manual
    assert manual.files == {"w.md", "y.txt"}


def test_every_ending_that_makes_a_page_is_read(loaded):
    whole = loaded({"w.md": TOOL, "a.markdown": "x", "b.mkd": "x", "c.MD": "x", "d.mdx": "x"})
    assert [finding.at.file for finding in whole.findings] == ["a.markdown", "b.mkd", "c.MD"]


def test_one_text_counts_as_a_list_of_one(loaded):
    head = "---\nkind: procedure\ntitle: t\nsummary: s\narea: a\nminutes: 1\nwho: senior\n"
    pages = {
        "one.md": f"{head}unit_family: any\n---\n",
        "list.md": f"{head}unit_family: [kestrel-3, heron-4]\n---\n",
    }
    procedures = loaded(pages).manual.procedures
    assert [each.value for each in procedures["one"].unit_family] == ["any"]
    assert [each.value for each in procedures["list"].unit_family] == ["kestrel-3", "heron-4"]


def test_likelihood_is_a_share(loaded):
    page = (
        "---\nkind: fault\ntitle: t\nsummary: s\ncomplaint: c\nunit_family: any\n"
        "causes: {worn: {name: Worn, likelihood: 40 %}}\nchecks: {}\n---\n"
    )
    cause = loaded({"f.md": page}).manual.faults["f"].causes["worn"]
    assert cause.likelihood.value == pytest.approx(0.4)
    assert cause.likelihood.written == "40 %"


def test_no_such_folder(tmp_path):
    gone = tmp_path / "gone"
    with pytest.raises(Unusable, match=re.escape(f"{gone}: the folder cannot be read")):
        load(gone)


def test_no_page(tmp_path):
    (tmp_path / "notes.txt").write_text("x")
    wanted = f"{tmp_path}: there is no page (a file ending in .md) in this folder."
    with pytest.raises(Unusable, match=re.escape(wanted)):
        load(tmp_path)


@pytest.mark.parametrize(
    ("file", "odd"),
    [
        ("javascript:alert(1).md", "javascript:alert(1)"),
        ("a#b.md", "a#b"),
        ("a?b.md", "a?b"),
        ("50%.md", "50%"),
        ("index.html.md", "index.html"),
        ("x&y/wrench.md", "x&y"),
        ("-.md", "-"),
    ],
)
def test_a_name_that_means_something_else_in_an_address(loaded, file, odd):
    (found,) = loaded({file: TOOL, "tools/wrench.md": TOOL}).findings
    assert (found.code, found.at, found.written) == ("unreadable-page", Place(file, 1, 1), odd)
    assert found.wrong == f"The name {odd} holds signs that mean something else in an address."
    assert found.mend == "Name files and folders with letters, digits and hyphens."


@pytest.mark.parametrize("file", ["__proto__.md", "a b.md", "\u0430.md", "Setting_up-2.md"])
def test_a_name_may_hold_any_letter(loaded, file):
    page = "---\nkind: page\ntitle: A\nsummary: B.\n---\n"
    assert loaded({file: page}).findings == ()
