"""README.md and DEVELOPERS.md are read by people who act on them: what they say must be so."""

import json
import re
import shlex
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from small_project import make_project

from underhoist.cli import main

ROOT = Path(__file__).resolve().parent.parent
README = (ROOT / "README.md").read_text(encoding="utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")


NOT_A_PROJECT = {".git", ".venv", ".cache", "node_modules", "site", "benchmarks", "tests", "src"}
"""What a copy of the project's settings and pages can do without."""


def commands(text: str, word: str) -> list[list[str]]:
    """Every command in the text's `sh` blocks that begins with this word."""
    blocks = re.findall(r"```sh\n(.*?)```", text, re.DOTALL)
    lines = "\n".join(blocks).replace("\\\n", " ").splitlines()
    return [found for line in lines if (found := shlex.split(line, comments=True))[:1] == [word]]


def underhoist(*words: str) -> Result:
    """Run a command where we are; that it starts as a process is tested where it must."""
    return CliRunner().invoke(main, words)


def test_readme_names_the_two_commands_and_the_makefile_has_them() -> None:
    asked = {words[1] for words in commands(README, "make")}
    assert asked == {"manual", "test"}
    makefile = (ROOT / "Makefile").read_text(encoding="utf-8")
    targets = re.findall(r"^([a-z ]+):\n\t", makefile, re.MULTILINE)
    assert asked <= set(" ".join(targets).split())


def test_ci_runs_the_readme_s_test_command() -> None:
    assert (ROOT / ".ci" / "run").read_text(encoding="utf-8").splitlines()[-1] == "make test"


def test_windows_needs_at_most_four_lines() -> None:
    (block,) = re.findall(r"```powershell\n(.*?)```", README, re.DOTALL)
    assert 1 <= len(block.splitlines()) <= 4


BUILD = ["underhoist", "build"]
"""The command that built the site which all tests share."""


def with_phone_side(project: Path) -> Path:
    """Lend a project the phone side's packages, and what the demo's build kept of the runtime."""
    (project / "node_modules").symlink_to(ROOT / "node_modules")
    (project / ".cache").mkdir()
    for kept in (ROOT / ".cache").glob("*"):
        if kept.name != "underhoist":  # what is kept of pages is each project's own
            (project / ".cache" / kept.name).symlink_to(kept)
    return project


@pytest.mark.parametrize(
    "words", [each for each in commands(README, "underhoist") if each != BUILD], ids=" ".join
)
def test_readme_s_commands_work(
    words: list[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    cwd = tmp_path if words[1] == "init" else ROOT
    if words[1] == "build":  # of the small manual: the demo's build is the site that tests share
        cwd = with_phone_side(make_project(tmp_path / "small"))
    if words[1] == "changes":
        shutil.copytree(ROOT, tmp_path / "changes", ignore=lambda *_: NOT_A_PROJECT)
        words = ["underhoist", "changes", str(tmp_path / "changes"), str(ROOT)]
    monkeypatch.chdir(cwd)
    ran = underhoist(*words[1:])
    assert ran.exit_code == 0, ran.output
    if "--json" in words:
        assert json.loads(ran.stdout)["ok"] is True


def test_readme_s_build_works(demo_site: Path) -> None:
    assert BUILD in commands(README, "underhoist")
    assert (demo_site / "kestrel-3" / "set-band" / "index.html").is_file()


def test_readme_s_example_procedure_passes_the_check(tmp_path: Path) -> None:
    (page,) = re.findall(r"```markdown\n(.*?)```", README, re.DOTALL)
    (name,) = re.findall(r"`procedures/(any-unit/[a-z-]+\.md)`", README)
    manual = tmp_path / "procedures"
    shutil.copytree(ROOT / "procedures", manual)
    (manual / name).write_text(page, encoding="utf-8")
    ran = underhoist("check", str(manual))
    assert ran.exit_code == 0, ran.output
    assert "nothing found" in ran.stdout


@pytest.mark.parametrize("document", ["README.md", "DEVELOPERS.md", "NOTICES.md"])
def test_links_and_pictures_exist(document: str) -> None:
    text = (ROOT / document).read_text(encoding="utf-8")
    linked = re.findall(r"\]\(((?![a-z]+:)[^)#]+)\)", text)
    assert [path for path in linked if not (ROOT / path).exists()] == []


def test_the_map_names_only_what_exists() -> None:
    named = re.findall(r"`([\w./-]+(?:\.(?:py|js|json|txt|md)|/))`", DEVELOPERS)
    places = (ROOT, ROOT / "src/underhoist", ROOT / "site_overrides")
    phone = ROOT / "site_overrides/assets/phone"
    missing = [name for name in named if not any((at / name).exists() for at in (*places, phone))]
    assert len(named) > 30
    assert missing == []


def test_the_map_names_every_folder_of_the_builder() -> None:
    folders = {path.parent.name for path in (ROOT / "src/underhoist").glob("*/__init__.py")}
    assert {name for name in folders if f"`{name}/`" not in DEVELOPERS} == set()


def test_both_say_that_the_maker_s_manual_comes_first_and_the_data_is_invented() -> None:
    front = (ROOT / "procedures/index.md").read_text(encoding="utf-8")
    for text in (README, front):
        assert "invented" in text
        assert "maker's" in text
        assert "law" in text


def test_locks_hold_no_registry_s_address() -> None:
    locks = [*ROOT.glob("requirements*.lock"), ROOT / "package-lock.json"]
    addresses = [
        (path.name, line)
        for path in locks
        for line in path.read_text(encoding="utf-8").splitlines()
        if re.search(r"https?://", line) and "funding" not in line and '"url"' not in line
    ]
    assert len(locks) == 3
    assert addresses == []
