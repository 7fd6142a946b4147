"""`underhoist pack`, `book`, `labels` and `share` as they are called: messages and exit codes."""

from pathlib import Path

import pytest
from click.testing import CliRunner
from small_project import make_project

from underhoist.cli import main

ROOT = Path(__file__).parents[2]
ALL = ("pack", "book", "labels", "share")
STOPPED = "---\nkind: pag\ntitle: A page\nsummary: For a test.\n---\n"


def run(*arguments):
    result = CliRunner().invoke(main, list(map(str, arguments)))
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result


@pytest.fixture
def stopped(tmp_path):
    """A project with a finding that stops."""
    (tmp_path / "docs").mkdir()
    (tmp_path / "docs" / "index.md").write_text(STOPPED)
    (tmp_path / "mkdocs.yml").write_text("site_name: Quay\nplugins: [underhoist]\n")
    return tmp_path


@pytest.fixture
def with_chromium(monkeypatch):
    """Any program does: nothing is printed."""
    monkeypatch.setattr("underhoist.bound.headless.chromium", lambda: "chromium")


@pytest.mark.parametrize("command", ALL)
def test_help_tells_the_exit_codes(command):
    result = run(command, "--help")
    assert result.exit_code == 0
    assert "Exit code" in " ".join(result.output.split())


@pytest.mark.parametrize("command", ["pack", "book", "labels"])
@pytest.mark.usefixtures("with_chromium")
def test_a_finding_that_stops_is_printed_and_nothing_is_written(command, stopped):
    result = run(command, stopped, "--out", stopped / "x.pdf")
    assert result.exit_code == 1
    assert "unknown-key" in result.output
    assert result.output.endswith("Nothing was written.\n")
    assert not (stopped / "x.pdf").exists()


@pytest.mark.parametrize("command", ["pack", "book", "labels"])
@pytest.mark.usefixtures("with_chromium")
def test_a_folder_that_is_no_project(command, tmp_path):
    result = run(command, tmp_path)
    assert result.exit_code == 2
    assert "there is no mkdocs.yml here" in result.output


def test_labels_without_an_address_say_how_to_give_it():
    result = run("labels", ROOT)
    assert result.exit_code == 2
    assert "Give it with --address https://manual.example.org/" in result.output


def test_labels_are_a_pdf_or_a_page():
    assert "the name must end in .pdf or .html" in run("labels", ROOT, "--out", "x.png").output


def test_labels_as_a_page_need_no_chromium(tmp_path):
    out = tmp_path / "labels.html"
    result = run("labels", ROOT, "--address", "https://a.example", "--tool", "torch", "-o", out)
    assert (result.exit_code, result.output) == (0, f"{out} holds 1 label. Print it at 100 %.\n")
    assert "a.example/tools/torch" in out.read_text(encoding="utf-8")


def test_pack_writes_the_chosen_set(tmp_path):
    small = make_project(tmp_path / "project")
    before = sorted(small.iterdir())
    out = tmp_path / "packed" / "manual.html"
    out.parent.mkdir()
    result = run("pack", small, "--procedure", "set-band", "--reading-only", "--out", out)
    assert result.exit_code == 0, result.output
    assert "for reading only" in result.output
    assert out.read_bytes().startswith(b"<!doctype html>")
    assert list(out.parent.iterdir()) == [out]
    assert sorted(small.iterdir()) == before


def test_pack_into_a_folder_that_is_not_there(tmp_path):
    small = make_project(tmp_path / "project")
    out = tmp_path / "none" / "manual.html"
    result = run("pack", small, "--procedure", "set-band", "--reading-only", "--out", out)
    assert result.exit_code == 2
    assert f"{out} cannot be written: No such file or directory." in result.output


def test_a_name_that_is_not_in_the_manual(tmp_path):
    result = run("pack", make_project(tmp_path / "project"), "--family", "wren-3")
    assert result.exit_code == 2
    assert "Did you mean wren-2?" in result.output


def test_a_book_without_chromium_says_how_to_get_it(monkeypatch):
    monkeypatch.setenv("UNDERHOIST_CHROMIUM", "/nowhere/chromium")
    result = run("book", ROOT)
    assert result.exit_code == 2
    assert "names /nowhere/chromium" in result.output


def test_share_without_a_site_or_a_certificate(tmp_path):
    given = ("--certificate", tmp_path / "chain.pem", "--key", tmp_path / "key.pem")
    result = run("share", tmp_path, *given)
    assert result.exit_code == 2
    assert "there is no site here" in result.output
    (tmp_path / "index.html").write_text("x")
    result = run("share", tmp_path, *given)
    assert result.exit_code == 2
    assert "chain.pem: there is no such file." in result.output
