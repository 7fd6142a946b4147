"""A build that is killed or runs out of disk leaves the old site whole, and the next one works."""

import random
import signal
import subprocess
import sys
import time

import pytest
from small_project import make_project

BUILD = """
import sys
from pathlib import Path
from underhoist.build import build
class Silent:
    def stage(self, words, steps=None): print(words, flush=True)
    def step(self): pass
folder = Path(sys.argv[1])
build(folder, folder / "site", Silent(), lambda site, tell: None)
"""
SMALL_DISK = """
import resource, sys
sys.dont_write_bytecode = True  # else modules would be left cut off, for whoever imports them next
resource.setrlimit(resource.RLIMIT_FSIZE, (3000, 3000))
from underhoist.cli import main
sys.argv[:] = ["underhoist", "build", sys.argv[1]]
main()
"""
"""No file may grow beyond 3 kB: writing fails in the middle of one, as on a full disk."""


def files(site):
    paths = (path for path in site.rglob("*") if path.is_file())
    return {path.relative_to(site).as_posix(): path.read_bytes() for path in paths}


def run(code, folder, **more):
    command = [sys.executable, "-c", code, str(folder)]
    return subprocess.run(command, capture_output=True, text=True, check=False, **more)


@pytest.fixture(scope="module")
def project(tmp_path_factory):
    """A project whose site was built, and whose manual then changed."""
    folder = make_project(tmp_path_factory.mktemp("broken"))
    done = run(BUILD, folder)
    assert done.returncode == 0, done.stderr
    page = folder / "pages" / "index.md"
    page.write_text(page.read_text(encoding="utf-8") + "\nA new line.\n", encoding="utf-8")
    return folder


def whole(folder):
    """Return the one site that is there: in its place, or put aside a moment before the swap."""
    site, aside = folder / "site", folder / "site.underhoist-old"
    return files(site if site.is_dir() else aside)


def wait_for(word, building):
    """Read until the build says the word; one that ended before fails, with what it said."""
    for line in building.stdout:
        if word in line:
            return
    pytest.fail(f"the build ended before {word}: {building.communicate()[1]}")


@pytest.mark.skipif(not hasattr(signal, "SIGKILL"), reason="Windows has no SIGKILL")
def test_a_build_killed_at_any_moment_leaves_a_whole_site(project):
    old = files(project / "site")
    dice = random.Random(7)  # noqa: S311
    for _ in range(4):
        command = [sys.executable, "-c", BUILD, str(project)]
        building = subprocess.Popen(
            command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
        )
        wait_for("Writing", building)
        time.sleep(dice.uniform(0, 0.5))
        building.kill()
        building.communicate()
        left = whole(project)
        if left != old:  # it was quicker: then the new one is whole
            assert b"A new line." in left["index.html"] and set(left) >= set(old)
    done = run(BUILD, project)
    assert done.returncode == 0, done.stderr
    assert b"A new line." in (project / "site" / "index.html").read_bytes()
    assert [path.name for path in project.glob("site.*")] == []


def test_a_full_disk_leaves_the_old_site_and_says_so(project):
    pytest.importorskip("resource", reason="Windows has no such limit")
    old = files(project / "site")
    done = run(SMALL_DISK, project)
    assert done.returncode == 2, done.stdout + done.stderr
    assert "Traceback" not in done.stderr
    assert done.stderr.strip().endswith("cannot be written: File too large. The old site stays.")
    assert files(project / "site") == old
    assert [path.name for path in project.glob("site.*")] == []
