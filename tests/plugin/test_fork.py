"""The maintained fork of MkDocs builds the same site from the same manual, byte for byte.

The theme's support ends on 5 May 2027, and MkDocs 1 is maintained by nobody. The small manual has
every kind of page; what the demo has more of, neither of the two looks into.
"""

import os
import subprocess
import sys
from pathlib import Path

import pytest
from small_project import make_project

BUILD = """
import sys
from pathlib import Path
from underhoist.check import check
from underhoist.plugin import build_site
import mkdocs
print(mkdocs.__file__)
project, into = Path(sys.argv[1]), Path(sys.argv[2])
build_site(project / "mkdocs.yml", check(project / "pages"), into, lambda page: None)
"""
ADDRESS = "https://manual.example/"
"""In the settings it makes MkDocs write a list for the web."""
FORK = "import properdocs.replacement\n"
"""From here on whoever imports mkdocs gets the fork: its own way for plugins of the old name."""


def built(first, project, into):
    """Start building a project's pages in a Python of its own."""
    environment = {**os.environ, "NO_MKDOCS_2_WARNING": "1"}
    command = [sys.executable, "-c", first + BUILD, str(project), str(into)]
    return subprocess.Popen(
        command, env=environment, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
    )


def files(site):
    paths = (path for path in site.rglob("*") if path.is_file())
    return {path.relative_to(site).as_posix(): path.read_bytes() for path in paths}


@pytest.fixture(scope="module")
def both(tmp_path_factory):
    """Which package built, and what came out: of MkDocs and of its fork."""
    folder = tmp_path_factory.mktemp("both")
    project = make_project(folder / "project")
    settings = project / "mkdocs.yml"
    settings.write_text(f"site_url: {ADDRESS}\n{settings.read_text()}", encoding="utf-8")
    running = [built("", project, folder / "mkdocs"), built(FORK, project, folder / "fork")]
    said = [each.communicate(timeout=300) for each in running]
    assert [each.returncode for each in running] == [0, 0], said
    assert [errors for _, errors in said] == ["", ""]
    names = [Path(out.strip()).parent.name for out, _ in said]
    return names, files(folder / "mkdocs"), files(folder / "fork")


def test_each_site_was_built_by_its_own(both):
    assert both[0] == ["mkdocs", "properdocs"]


def test_both_have_the_same_files(both):
    _, ours, forks = both
    assert len(ours) > 350
    assert f"{ADDRESS}jobs/set-band/" in ours["sitemap.xml"].decode()
    assert set(ours) == set(forks)


def test_every_file_is_the_same(both):
    _, ours, forks = both
    assert [name for name in ours if ours[name] != forks[name]] == []
