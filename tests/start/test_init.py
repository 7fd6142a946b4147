"""`underhoist init`: a manual that builds, and nothing that was there is touched."""

import json
import re
import tomllib
from pathlib import Path

import pytest
import yaml
from jsonschema import Draft7Validator

from underhoist.build import build
from underhoist.check import check
from underhoist.project import pages_folder
from underhoist.schema import keys_of
from underhoist.source import KINDS

ROOT = Path(__file__).parents[2]
KEYS = sorted({key.name for kind in KINDS for key in keys_of(kind).keys if key.name != "kind"})


class Silent:
    """Is told how far a build is."""

    def stage(self, words, steps=None):
        """Begin."""

    def step(self):
        """Go on."""


def test_it_checks_without_findings(made):
    result = made.run("check")
    assert (result.exit_code, result.output) == (0, "7 pages checked: nothing found.\n")


def test_it_builds(made):
    built = build(made.folder, made.folder / "site", Silent(), lambda site, tell: None)
    assert built.site is not None
    page = (built.site / "example-3" / "fit-pan" / "index.html").read_text(encoding="utf-8")
    assert "Second check" in page
    assert "invented" in page
    assert len(built.checked.manual.procedures) == 1


def test_it_has_one_page_of_each_kind_but_faults_and_says_what_to_do(made):
    manual = check(made.pages).manual
    assert [len(each) for each in (manual.families, manual.procedures, manual.tools)] == [1, 1, 1]
    assert len(manual.hazards) == 2
    assert manual.words.keys() == {"pan", "second check"}
    readme = (made.folder / "README.md").read_text(encoding="utf-8")
    commands = re.findall(r"^underhoist (\w+)", readme, re.MULTILINE)
    assert commands == ["check", "serve", "build", "draft"]
    for name in re.findall(r"`(procedures/[\w./-]+\.md)`", readme):
        assert (made.folder / name).is_file()


def test_what_it_prints_can_be_typed(tmp_path, made):
    result = made.run("check")
    assert result.exit_code == 0
    again = type(made)(tmp_path / "second")
    said = again.run("init").output
    assert f"cd {again.folder}" in said
    assert "A new manual with 7 pages" in said


def test_a_name_stands_in_every_place_whatever_signs_it_has(tmp_path, made):
    other = type(made)(tmp_path / "other")
    assert other.run("init", "--name", 'Quay "3": gears & more').exit_code == 0
    settings = yaml.safe_load((other.folder / "mkdocs.yml").read_text(encoding="utf-8"))
    assert settings["site_name"] == 'Quay "3": gears & more'
    assert check(other.pages).manual.plain["index"].title.value == 'Quay "3": gears & more'
    assert (other.folder / "README.md").read_text().startswith('# Quay "3": gears & more\n')


def test_a_folder_with_a_file_in_it_is_refused_and_left_alone(made):
    before = made.files()
    result = made.run("init")
    assert result.exit_code == 2
    assert result.output == (
        f"{made.folder} is not empty: it holds .gitignore. Nothing was written. "
        "Name a folder that is not there yet, such as my-manual.\n"
    )
    assert made.files() == before


def test_a_file_in_place_of_the_folder_is_refused(tmp_path, made):
    path = tmp_path / "taken"
    path.write_text("mine")
    result = type(made)(path).run("init")
    assert (result.exit_code, path.read_text()) == (2, "mine")
    assert result.output == f"{path} is a file. Name a folder that is not there yet.\n"


def test_a_virtual_environment_may_be_there_already(tmp_path, made):
    folder = tmp_path / "with-venv"
    (folder / ".venv").mkdir(parents=True)
    assert type(made)(folder).run("init").exit_code == 0


def test_the_package_s_build_takes_the_template_along():
    """The wheel holds all below src/underhoist; names that packaging leaves out are not used."""
    template = ROOT / "src/underhoist/start/template"
    hidden = [path.name for path in template.rglob("*") if path.name.startswith(".")]
    assert hidden == []
    assert (template / "dot-gitignore").is_file()


def test_the_editors_files_can_be_read_by_their_editors(made):
    for name in ("settings", "tasks"):
        assert json.loads((made.folder / f".vscode/{name}.json").read_text(encoding="utf-8"))
    helix = tomllib.loads((made.folder / ".helix/languages.toml").read_text(encoding="utf-8"))
    assert helix["language-server"]["underhoist"] == {"command": "underhoist", "args": ["editor"]}
    schema = json.loads((made.folder / "front-matter.schema.json").read_text(encoding="utf-8"))
    Draft7Validator.check_schema(schema)
    assert "example-3" in json.dumps(schema)


@pytest.mark.parametrize("key", KEYS)
def test_there_is_a_snippet_with_its_help_for_every_key(key, made):
    path = made.folder / ".vscode/underhoist.code-snippets"
    snippets = json.loads(path.read_text(encoding="utf-8")).values()
    helps = {
        each.help for kind in KINDS for each in keys_of(kind).keys if each.name == key
    }  # fmt: skip
    assert {each["description"] for each in snippets if each["prefix"] == key} >= helps


def test_a_snippet_offers_the_ids_of_the_manual_and_leaves_a_mark_else(made):
    path = made.folder / ".vscode/underhoist.code-snippets"
    snippets = json.loads(path.read_text(encoding="utf-8"))
    assert snippets["unit_family"]["body"] == ["unit_family: [${1|any,example-3|}]"]
    assert snippets["tools"]["body"] == ["tools: [inch-pound-wrench]"]
    assert snippets["minutes"]["body"] == ["minutes: ${1:???}"]
    assert snippets["consumables"]["body"] == ['consumables: ["${1:???}"]']


def test_the_editors_files_are_written_again_with_the_ids_of_today(made):
    (made.folder / ".vscode/settings.json").write_text("{}")
    assert made.draft("kind=tool", "title=Drift").exit_code == 0
    page = made.pages / "tools/drift.md"
    page.write_text(page.read_text().replace("???", "Knocks pins out."))
    assert made.run("schema", "--editors").exit_code == 0
    snippets = json.loads((made.folder / ".vscode/underhoist.code-snippets").read_text())
    assert snippets["tools"]["body"] == ["tools: [${1|drift,inch-pound-wrench|}]"]
    assert (made.folder / ".vscode/settings.json").read_text() == "{}"


def test_a_line_of_the_check_fits_the_editor_s_pattern(made):
    page = made.pages / "index.md"
    page.write_text(page.read_text(encoding="utf-8") + "\n<tool:torhc>\n", encoding="utf-8")
    tasks = json.loads((made.folder / ".vscode/tasks.json").read_text(encoding="utf-8"))
    pattern = tasks["tasks"][0]["problemMatcher"]["pattern"]
    result = made.run("check", "--format", "lines")
    (line,) = result.output.splitlines()
    found = re.fullmatch(pattern["regexp"], line)
    assert found[pattern["file"]] == f"{made.folder}/procedures/index.md"
    assert (found[pattern["line"]], found[pattern["severity"]]) == ("14", "error")
    assert found[pattern["code"]] == "dead-reference"


def test_the_schema_command_prints_one_schema(made):
    result = made.run("schema")
    assert result.exit_code == 0
    assert json.loads(result.output)["definitions"].keys() == KINDS.keys()


def test_the_demo_manual_is_not_needed(made):
    assert pages_folder(made.folder) == made.pages
