"""A build that is killed or runs out of disk leaves the old site whole, and the next one works."""

import random
import signal
import subprocess
import sys
import time

import pytest
from in_build import build_aloud
from in_child import quick_start
from small_project import make_project

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


class Building:
    """A build in a process of its own, which can be killed."""

    def __init__(self, folder):
        processes = quick_start()
        self.heard, said = processes.Pipe(duplex=False)
        self.process = processes.Process(target=build_aloud, args=(folder, said))
        self.process.start()
        said.close()  # so that the pipe ends with the build

    def wait_for(self, word):
        """Read until the build says the word; one that ended before fails."""
        try:
            while word not in self.heard.recv():
                pass
        except EOFError:
            self.process.join()
            pytest.fail(f"the build ended before {word}: {self.process.exitcode}")

    def kill(self):
        self.process.kill()
        self.process.join()
        self.heard.close()

    def end(self):
        """Let it come to its end; what it ended with."""
        self.process.join()
        self.heard.close()
        return self.process.exitcode


@pytest.fixture(scope="module")
def project(tmp_path_factory):
    """A project whose site was built, and whose manual then changed."""
    folder = make_project(tmp_path_factory.mktemp("broken"))
    assert Building(folder).end() == 0
    page = folder / "pages" / "index.md"
    page.write_text(page.read_text(encoding="utf-8") + "\nA new line.\n", encoding="utf-8")
    return folder


def whole(folder):
    """Return the one site that is there: in its place, or put aside a moment before the swap."""
    site, aside = folder / "site", folder / "site.underhoist-old"
    return files(site if site.is_dir() else aside)


@pytest.mark.skipif(not hasattr(signal, "SIGKILL"), reason="Windows has no SIGKILL")
def test_a_build_killed_at_any_moment_leaves_a_whole_site(project):
    old = files(project / "site")
    dice = random.Random(7)  # noqa: S311
    for _ in range(4):
        building = Building(project)
        building.wait_for("Writing")
        time.sleep(dice.uniform(0, 0.5))
        building.kill()
        left = whole(project)
        if left != old:  # it was quicker: then the new one is whole
            assert b"A new line." in left["index.html"] and set(left) >= set(old)
    assert Building(project).end() == 0
    assert b"A new line." in (project / "site" / "index.html").read_bytes()
    assert [path.name for path in project.glob("site.*")] == []


def test_a_full_disk_leaves_the_old_site_and_says_so(project):
    pytest.importorskip("resource", reason="Windows has no such limit")
    old = files(project / "site")
    command = [sys.executable, "-c", SMALL_DISK, str(project)]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 2, done.stdout + done.stderr
    assert "Traceback" not in done.stderr
    assert done.stderr.strip().endswith("cannot be written: File too large. The old site stays.")
    assert files(project / "site") == old
    assert [path.name for path in project.glob("site.*")] == []
