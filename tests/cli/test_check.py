"""`underhoist check` as it is called: what it prints, and its exit code."""

import json
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner

from underhoist.cli import COMMANDS, main

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
    assert (result.exit_code, result.output) == (0, "13 pages checked: nothing found.\n")


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
    assert result.stdout == "13 pages checked: nothing found.\nset()\n"
