"""The old site stays until the new one is complete, whatever goes wrong."""

import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from underhoist import swap
from underhoist.plugin import NotBuiltError
from underhoist.project import Unusable


class StoppedError(Exception):
    """Something went wrong in the middle."""


def fail(site, tell):
    raise StoppedError


def test_stop_finding_leaves_the_old_site_alone(standing):
    old = standing.held()
    standing.replace("jobs/set-band.md", "torque:band-seat>", "torque:band-set>")
    result = standing.build()
    assert result.site is None
    assert [finding.code for finding in result.checked.findings] == ["dead-reference"]
    assert standing.held() == old
    assert standing.beside() == ["mkdocs.yml", "pages", "site"]


def test_stop_finding_builds_no_first_site(project):
    project.replace("jobs/set-band.md", "kind: procedure", "kind: prosedure")
    assert project.build().site is None
    assert project.beside() == ["mkdocs.yml", "pages"]


def test_failing_phone_side_leaves_the_old_site_alone(standing):
    old = standing.held()
    standing.replace("jobs/set-band.md", "Wipe the case.", "Clean the case.")
    with pytest.raises(StoppedError):
        standing.build(fail)
    assert standing.held() == old
    assert standing.beside() == ["mkdocs.yml", "pages", "site"]


@pytest.mark.parametrize("moves", [0, 1])
def test_crash_between_the_renames_loses_no_site(standing, monkeypatch, moves):
    old = standing.held()
    rename, left = Path.rename, iter([True] * moves)

    def crash(path, target):
        if next(left, False):
            return rename(path, target)
        raise StoppedError

    with monkeypatch.context() as patch:
        patch.setattr(Path, "rename", crash)
        patch.setattr(swap, "drop", lambda site: None)
        with pytest.raises(StoppedError):
            standing.build()
    standing.replace("jobs/set-band.md", "kind: procedure", "kind: prosedure")
    swap.fresh(standing.site)
    assert standing.held() == old


def test_what_a_crash_left_behind_is_tidied(standing):
    old = standing.held()
    shutil.copytree(standing.site, standing.folder / "site.underhoist-old")
    (standing.folder / "site.underhoist-new" / "half").mkdir(parents=True)
    standing.build()
    assert standing.beside() == ["mkdocs.yml", "pages", "site"]
    assert standing.held() == old


def test_folder_that_only_looks_like_ours_is_not_removed(project):
    other = project.folder / "site.underhoist-old"
    other.mkdir()
    (other / "accounts.txt").write_text("mine", encoding="utf-8")
    with pytest.raises(Unusable, match=r"site\.underhoist-old is in the way of the build"):
        project.build()
    assert (other / "accounts.txt").read_text(encoding="utf-8") == "mine"


def test_folder_with_something_else_is_refused(project):
    project.site.mkdir()
    (project.site / "accounts.txt").write_text("mine", encoding="utf-8")
    with pytest.raises(Unusable, match=r"site holds something that was not built here\. Name"):
        project.build()
    assert (project.site / "accounts.txt").read_text(encoding="utf-8") == "mine"


def test_empty_folder_is_taken(project):
    project.site.mkdir()
    assert project.build().site == project.site


def test_project_without_settings_is_refused(project):
    (project.folder / "mkdocs.yml").unlink()
    with pytest.raises(Unusable, match=r"there is no mkdocs\.yml here"):
        project.build()


def settle(project, old, new):
    settings = project.folder / "mkdocs.yml"
    text = settings.read_text(encoding="utf-8")
    assert old in text
    settings.write_text(text.replace(old, new), encoding="utf-8")


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        (
            "  - underhoist\n",
            "",
            r"mkdocs\.yml: the list of plugins lacks underhoist\. Add the line",
        ),
        ("name: material", "name: paper", "Unrecognised theme name: 'paper'"),
        (
            "  - underhoist\n",
            "  - underhoist\n  - searching\n",
            'The "searching" plugin is not installed',
        ),
        ("  - underhoist\n", "  - underhoist:\n      demo: perhaps\n", "demo"),
        ("site_name: A small manual\n", "", "site_name"),
    ],
)
def test_settings_that_cannot_be_used_are_told_without_a_traceback(project, old, new, said):
    settle(project, old, new)
    with pytest.raises(NotBuiltError) as problem:
        project.build()
    assert re.search(said, str(problem.value))
    assert project.beside() == ["mkdocs.yml", "pages"]


def test_plain_mkdocs_checks_by_itself(project):
    project.replace("jobs/set-band.md", "torque:band-seat>", "torque:band-set>")
    command = [sys.executable, "-m", "mkdocs", "build", "-q"]
    done = subprocess.run(command, cwd=project.folder, capture_output=True, text=True, check=False)
    assert done.returncode == 1
    assert "The check found what stops the build: run `underhoist check` to read it." in done.stderr
    assert not project.site.exists()


def test_plain_mkdocs_builds_the_same_pages(project, built):
    command = [sys.executable, "-m", "mkdocs", "build", "-q"]
    subprocess.run(command, cwd=project.folder, capture_output=True, check=True)
    page = "jobs/set-band/index.html"
    assert project.held()[page] == built.held()[page]
