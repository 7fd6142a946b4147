"""A file that was cut off stops a command with a sentence: its own, or one that it reads."""

import marshal

import pytest
from click.testing import CliRunner

from underhoist import cli
from underhoist.check import check


def run(*words):
    return CliRunner().invoke(cli.main, words)


@pytest.fixture
def half_a_module(monkeypatch):
    """A command whose compiled module is half there, as a full disk leaves it."""
    whole = marshal.dumps(compile("half = 1", "half", "exec"))

    def load(_):
        return marshal.loads(whole[:-9])  # noqa: S302  (our own bytes)

    monkeypatch.setattr(cli, "import_module", load)


@pytest.mark.usefixtures("half_a_module")
def test_a_module_that_is_cut_off_is_told_with_what_to_do():
    done = run("check", ".")
    assert done.exit_code == 1
    assert "ends too early" in done.output
    assert "__pycache__" in done.output
    assert "Aborted" not in done.output


def test_so_is_one_that_is_met_while_the_command_works(tmp_path, monkeypatch):
    def cut(folder):
        raise EOFError

    monkeypatch.setattr(f"{check.__module__}.check", cut)
    done = run("check", str(tmp_path))
    assert done.exit_code == 1
    assert "no reason given" in done.output
    assert "Aborted" not in done.output


def test_a_question_that_nobody_answers_is_no_such_file(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    assert run("init", "manual").exit_code == 0
    monkeypatch.chdir(tmp_path / "manual")
    done = run("draft")
    assert "Nothing was written." in done.output
    assert "too early" not in done.output
