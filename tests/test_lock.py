"""Two builds into one place: the second is refused, told who is at work; the dead hold nothing."""

import os
import re
import shutil
import socket
import subprocess
import sys
from pathlib import Path

import pytest

from underhoist.build import build
from underhoist.lock import held
from underhoist.project import Unusable

SMALLEST = Path(__file__).parent / "good" / "smallest"
HOLD = """
import sys, time
from pathlib import Path
from underhoist.lock import held
with held(Path(sys.argv[1])):
    print("held", flush=True)
    time.sleep(600)
"""


class Silent:
    """Is told how far the build is, and says nothing."""

    def stage(self, words, steps=None):
        pass

    def step(self):
        pass


@pytest.fixture
def other(tmp_path):
    """Another process that holds the place."""
    command = [sys.executable, "-c", HOLD, str(tmp_path / "site")]
    process = subprocess.Popen(command, stdout=subprocess.PIPE, text=True)
    assert process.stdout.readline() == "held\n"
    yield process
    process.kill()
    process.wait()


def test_the_second_build_is_refused_and_told_who_is_at_work(tmp_path, other):
    site = tmp_path / "site"
    with pytest.raises(Unusable) as raised, held(site):
        pass
    said = re.sub(r"since \d\d:\d\d", "since 00:00", str(raised.value))
    assert said == (
        f"Another build (process {other.pid} on {socket.gethostname()}, since 00:00) is building "
        f"into {site}. Wait until it has ended, then build again."
    )


def test_a_refused_build_leaves_the_old_site_and_the_new_one_alone(tmp_path, other):
    del other
    shutil.copytree(SMALLEST, tmp_path / "pages")
    (tmp_path / "mkdocs.yml").write_text("site_name: x\ndocs_dir: pages\n", encoding="utf-8")
    site, new = tmp_path / "site", tmp_path / "site.underhoist-new"
    for folder in (site, new):
        folder.mkdir()
        (folder / "underhoist.json").write_text("{}", encoding="utf-8")
    with pytest.raises(Unusable, match=r"is building into"):
        build(tmp_path, site, Silent())
    assert [path.name for folder in (site, new) for path in folder.iterdir()] == [
        "underhoist.json",
        "underhoist.json",
    ]


def test_the_lock_of_a_killed_build_is_no_lock(tmp_path, other):
    other.kill()
    other.wait()
    with held(tmp_path / "site"):
        assert (tmp_path / "site.underhoist-holder").is_file()


def test_a_lock_without_a_name_is_told_as_well(tmp_path, other):
    del other
    (tmp_path / "site.underhoist-holder").write_text("{}")
    with (
        pytest.raises(Unusable, match=r"^Another build is building into "),
        held(tmp_path / "site"),
    ):
        pass


def test_builds_into_two_places_do_not_wait_for_each_other(tmp_path, other):
    del other
    with held(tmp_path / "site-2"):
        pass


def test_nothing_is_left_behind_and_the_place_is_free_again(tmp_path):
    for _ in range(2):
        with pytest.raises(ZeroDivisionError), held(tmp_path / "new" / "site"):
            raise ZeroDivisionError
    assert list((tmp_path / "new").iterdir()) == []


@pytest.mark.skipif(os.name == "nt" or os.geteuid() == 0, reason="root may write anywhere")
def test_a_folder_that_cannot_be_written_is_said(tmp_path):
    tmp_path.chmod(0o500)
    with pytest.raises(Unusable, match=r"cannot be built: Permission denied"), held(tmp_path / "a"):
        pass
