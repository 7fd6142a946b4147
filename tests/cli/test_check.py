"""`underhoist check` as it is called: what it prints, and its exit code."""

import json
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner

from underhoist.cli import COMMANDS, main
from underhoist.cli.check import check

SMALLEST = Path(__file__).parents[1] / "good" / "smallest"
PAGE = "---\nkind: page\ntitle: A page\nsummary: For a test.\n---\n"
LOOK = """---
kind: procedure
title: Read
summary: s
unit_family: any
area: a
minutes: 1
who: senior
readings: {odometer: {name: Odometer, unit: km, when: as found}}
---
## Steps

1. Read <reading:odometer>.
"""


def run(*arguments):
    return CliRunner().invoke(main, ["check", *map(str, arguments)])


def project(folder, settings="docs_dir: pages\n", text=PAGE, pages="pages"):
    (folder / pages).mkdir()
    (folder / pages / "index.md").write_text(text)
    (folder / "mkdocs.yml").write_text(settings)
    return folder


def test_clean():
    result = run(SMALLEST)
    assert (result.exit_code, result.output) == (0, "14 pages checked: nothing found.\n")


def test_findings_to_look_at_do_not_stop(tmp_path):
    result = run(project(tmp_path, text=LOOK))
    assert result.exit_code == 0
    assert result.output.endswith("1 page checked: 1 finding to look at.\n")


def test_findings_stop(tmp_path):
    result = run(project(tmp_path, text=PAGE.replace("kind: page", "kind: pag")))
    assert result.exit_code == 1
    assert result.output == (
        f"{tmp_path}/pages/index.md:2:7  stop  unknown-key\n"
        "  written  pag\n"
        "  wrong    There is no kind of page pag.\n"
        "  mend     Did you mean page?\n"
        "\n"
        "1 page checked: 1 finding stops the build.\n"
    )


def test_the_current_folder_is_the_default(tmp_path, monkeypatch):
    monkeypatch.chdir(project(tmp_path))
    assert run().output == "1 page checked: nothing found.\n"


def test_json(tmp_path):
    result = run(project(tmp_path, text="x"), "--format", "json")
    assert result.exit_code == 1
    whole = json.loads(result.output)
    assert whole["folder"] == f"{tmp_path}/pages"
    assert [finding["code"] for finding in whole["findings"]] == ["front-matter"]


def test_github(tmp_path):
    result = run(project(tmp_path, text="x"), "--format", "github")
    assert result.exit_code == 1
    assert result.output.startswith(f"::error file={tmp_path}/pages/index.md,line=1,col=1,")


@pytest.mark.parametrize(
    ("settings", "said"),
    [
        ("docs_dir: nowhere\n", "mkdocs.yml: docs_dir names {0}/nowhere, and there is no such"),
        ("site_name: x\n", "mkdocs.yml: docs_dir names {0}/docs, and there is no such folder."),
        ("docs_dir: [\n", "mkdocs.yml: the settings cannot be read ("),
    ],
)
def test_settings_that_cannot_be_used(settings, said, tmp_path):
    result = run(project(tmp_path, settings))
    assert result.exit_code == 2
    assert said.format(tmp_path) in result.output
    assert result.output.count("\n") == 1


def test_settings_with_tags_of_plugins_are_read(tmp_path):
    settings = "a: !!python/name:os.system\nb: !ENV [X, 1]\nc: {docs_dir: no}\ndocs_dir: pages\n"
    assert run(project(tmp_path, settings)).exit_code == 0


def test_the_usual_folder_where_settings_do_not_say(tmp_path):
    assert run(project(tmp_path, "site_name: x\n", pages="docs")).exit_code == 0


def test_a_console_without_the_letters(tmp_path):
    (tmp_path / "index.md").write_text(f"{PAGE}[Öl](../→.md)\n", encoding="utf-8")
    command = [sys.executable, "-m", "underhoist", "check", str(tmp_path)]
    old = {"PYTHONIOENCODING": "cp1252", "PYTHONUTF8": "0"}
    result = subprocess.run(command, capture_output=True, env=old, check=False)
    assert (result.returncode, result.stderr) == (1, b"")
    assert b"  written  ../\\u2192.md" in result.stdout


def test_no_such_folder(tmp_path):
    result = run(tmp_path / "gone")
    assert (result.exit_code, result.output) == (2, f"{tmp_path}/gone: there is no such folder.\n")


def test_a_file_for_a_folder(tmp_path):
    file = tmp_path / "a.md"
    file.write_text(PAGE)
    result = run(file)
    assert (result.exit_code, result.output) == (2, f"{file}: is a file, not a folder.\n")


def test_no_pages(tmp_path):
    result = run(tmp_path)
    assert result.exit_code == 2
    assert result.output == f"{tmp_path}: there is no page (a file ending in .md) in this folder.\n"


def test_help_names_the_exit_codes():
    assert "Exit code 0" in " ".join(run("--help").output.split())


def test_a_missing_command_does_not_break_the_others(monkeypatch):
    monkeypatch.setitem(COMMANDS, "fly", "underhoist.cli.fly")
    result = CliRunner().invoke(main, ["--help"])
    assert "check" in result.output and "fly" not in result.output
    assert CliRunner().invoke(main, ["fly"]).exit_code == 2


def test_check_loads_neither_the_site_builder_nor_what_is_not_asked_for():
    """The check must start fast: these alone would take longer than checking a thousand pages."""
    script = (
        "import sys; from underhoist.cli import main\n"
        f"main(['check', {str(SMALLEST)!r}], standalone_mode=False)\n"
    )
    script = script.replace("main([", "\ntry: main([") + "except SystemExit: pass\n"
    script += (
        "print({'mkdocs', 'markdown', 'jinja2', 'underhoist.report.as_json'} & sys.modules.keys())"
    )
    result = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=True
    )
    assert result.stdout == "14 pages checked: nothing found.\nset()\n"


@pytest.fixture
def slipped(tmp_path):
    """The smallest manual with one misspelt key, its lines ended as some editors do."""
    folder = tmp_path / "manual"
    shutil.copytree(SMALLEST, folder)
    page = folder / "kestrel-3" / "set-band.md"
    page.write_bytes(page.read_bytes().replace(b"minutes:", b"minuets:").replace(b"\n", b"\r\n"))
    return page


def mend(page, *options, answer=None):
    done = CliRunner().invoke(check, [str(page.parents[1]), "--mend", *options], input=answer)
    return done.exit_code, done.output


def test_without_a_terminal_mends_are_only_shown(slipped):
    before = slipped.read_bytes()
    code, output = mend(slipped)
    assert code == 1
    assert "line 7: There is no key minuets on this kind of page. Did you mean minutes?" in output
    assert "    -minuets: 25\n    +minutes: 25\n" in output
    assert "1 mend in 1 page.\nNothing was changed. With --yes they are made.\n" in output
    assert slipped.read_bytes() == before


def test_with_yes_they_are_made_and_the_rest_is_reported(slipped):
    before = slipped.read_bytes()
    code, output = mend(slipped, "--yes")
    assert code == 0, output
    assert output.endswith("nothing found.\n")
    assert slipped.read_bytes() == before.replace(b"minuets:", b"minutes:")
    assert [path.name for path in slipped.parent.iterdir() if path.name.startswith(".")] == []
    code, output = mend(slipped, "--yes")
    assert output.startswith("No finding has a mend that needs no thought.\n")


@pytest.mark.parametrize(("answer", "made"), [("y\n", True), ("n\n", False), ("\n", False)])
def test_on_a_terminal_they_are_asked_for(slipped, monkeypatch, answer, made):
    monkeypatch.setattr("underhoist.cli.check.is_terminal", lambda: True)
    output = mend(slipped, answer=answer)[1]
    assert "Make them? [y/N]" in output
    assert (b"minutes:" in slipped.read_bytes()) == made
    assert ("They are made. What is left:" in output) == made


def test_a_page_that_somebody_saved_meanwhile_is_left(slipped, monkeypatch):
    def save(*_, **__):
        slipped.write_text("other")
        return True

    monkeypatch.setattr("underhoist.cli.check.is_terminal", lambda: True)
    monkeypatch.setattr("click.confirm", save)
    done = CliRunner().invoke(check, [str(slipped.parents[1]), "--mend"])
    assert "kestrel-3/set-band.md was changed meanwhile and is left as it is." in done.stderr
    assert slipped.read_text() == "other"


def test_mends_are_for_people(slipped):
    code, output = mend(slipped, "--format", "json")
    assert code == 2
    assert "--mend speaks to people: leave --format out." in output
