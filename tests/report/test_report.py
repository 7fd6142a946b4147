"""The three forms of a report, to the letter."""

import io
import json
import re
from pathlib import Path

import pytest
from attrs import evolve
from rich.console import Console

from underhoist.check import Checked, check
from underhoist.finding import Edit, Finding, Severity
from underhoist.place import Place
from underhoist.report import write
from underhoist.report.paths import seen_from_here

STOP = Finding(
    "torque-in-prose",
    Severity.STOP,
    Place("bands/set, front.md", 12, 8),
    "50 %\u2028[bold]12 lbf·ft[/bold]",
    "A torque in the text is a second copy.",
    "Refer to it.",
)
LOOK = Finding(
    "reading-without-limits",
    Severity.LOOK,
    Place("a.md", 3, 1),
    "",
    "It has no limits.",
    "Add them.",
)


@pytest.fixture
def manual(tmp_path):
    (tmp_path / "a.md").write_text("---\nkind: page\ntitle: t\nsummary: s\n---\n")
    return check(tmp_path).manual


def written(form, manual, *findings, folder=Path("pages")):
    out = io.StringIO()
    write(form, Checked(manual, findings), folder, out)
    return out.getvalue()


def test_text(manual):
    assert written("text", manual, LOOK, STOP) == (
        "pages/a.md:3:1  look  reading-without-limits\n"
        "  written  (nothing)\n"
        "  wrong    It has no limits.\n"
        "  mend     Add them.\n"
        "\n"
        "pages/bands/set, front.md:12:8  stop  torque-in-prose\n"
        "  written  50 %\u2028[bold]12 lbf·ft[/bold]\n"
        "  wrong    A torque in the text is a second copy.\n"
        "  mend     Refer to it.\n"
        "\n"
        "1 page checked: 1 finding stops the build, 1 finding to look at.\n"
    )


def test_text_without_findings(manual):
    assert written("text", manual) == "1 page checked: nothing found.\n"


def test_text_counts(manual):
    assert written("text", manual, STOP, STOP).endswith(
        "1 page checked: 2 findings stop the build.\n"
    )
    assert written("text", manual, LOOK, LOOK).endswith("1 page checked: 2 findings to look at.\n")


def test_text_is_wrapped_below_itself_on_a_terminal(manual, monkeypatch):
    class Terminal(io.StringIO):
        def isatty(self):
            return True

    monkeypatch.setenv("COLUMNS", "40")
    monkeypatch.setenv("TERM", "xterm")
    out = Terminal()
    write("text", Checked(manual, (STOP,)), Path("pages"), out)
    assert Console(file=out).is_terminal
    plain = re.sub(r"\x1b\[[\d;]*m", "", out.getvalue())
    lines = [line.rstrip() for line in plain.splitlines()]
    assert "  wrong    A torque in the text is a" in lines
    assert "           second copy." in lines


def test_json(manual):
    assert json.loads(written("json", manual, STOP)) == {
        "folder": "pages",
        "pages": 1,
        "findings": [
            {
                "file": "bands/set, front.md",
                "line": 12,
                "column": 8,
                "code": "torque-in-prose",
                "severity": "stop",
                "written": "50 %\u2028[bold]12 lbf·ft[/bold]",
                "wrong": "A torque in the text is a second copy.",
                "mend": "Refer to it.",
                "edit": None,
            }
        ],
    }
    edit = Edit("bands/set, front.md", 12, 8, 12, 20, "<torque:band-seat>")
    found = json.loads(written("json", manual, evolve(STOP, edit=edit)))["findings"][0]
    assert found["edit"] == {
        "file": "bands/set, front.md",
        "line": 12,
        "column": 8,
        "end_line": 12,
        "end_column": 20,
        "text": "<torque:band-seat>",
    }
    assert json.loads(written("json", manual))["findings"] == []


def test_annotations_escape_what_would_end_them(manual):
    assert written("github", manual, STOP, LOOK) == (
        "::error file=pages/bands/set%2C front.md,line=12,col=8,title=torque-in-prose::"
        'Written: "50 %25\u2028[bold]12 lbf·ft[/bold]". '
        "A torque in the text is a second copy. Refer to it.\n"
        "::warning file=pages/a.md,line=3,col=1,title=reading-without-limits::"
        "It has no limits. Add them.\n"
    )
    assert written("github", manual) == ""


def test_files_elsewhere_are_named_whole(tmp_path, monkeypatch):
    inside, place = tmp_path / "here", Place("a.md", 1, 1)
    inside.mkdir()
    monkeypatch.chdir(inside)
    assert seen_from_here(Path(), place) == "a.md"
    assert seen_from_here(inside / "pages", place) == "pages/a.md"
    assert seen_from_here(tmp_path / "other", place) == str(tmp_path / "other" / "a.md")
