"""Set-up and the everyday commands. Standard library only: it runs before anything is installed.

python tasks.py manual   install what building needs, check and build the demo manual
python tasks.py test     install what the tests need, run every check and test
python tasks.py serve    preview with live reload
python tasks.py bench    run the benchmarks, or the one that is named after it
python tasks.py lock     pin the requirements anew
"""

from __future__ import annotations

import hashlib
import os
import shutil
import subprocess
import sys
import tempfile
import time
from collections import deque
from concurrent.futures import ThreadPoolExecutor, as_completed
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parent
VENV = ROOT / ".venv"
BIN = VENV / ("Scripts" if os.name == "nt" else "bin")
PYTHON = BIN / ("python.exe" if os.name == "nt" else "python")
NODE_MODULES = ROOT / "node_modules"
WANTED = (3, 13)
BENCHMARKS = (
    "scale",
    "preview_speed",
    "search_speed",
    "phone_speed",
    "card_kill",
    "card_speed",
    "road_tests",
    "twelve_fold",
    "fault_order",
    "fault_speed",
    "handout",
    "every_page",
    "lighthouse",
    "install_speed",
    "fuzz",
    "mutation",
)


class StoppedError(Exception):
    """Something that the person at the keyboard must put right; its text says what."""


# --- showing what happens -------------------------------------------------------------------


class Bar:
    """A progress bar on a terminal; elsewhere one line when the step is done."""

    WIDTH = 24

    def __init__(self, label: str, total: int) -> None:
        self.label, self.total, self.done = label, max(total, 1), 0
        self.live = sys.stdout.isatty()
        self.began = time.monotonic()
        self.draw()

    def step(self) -> None:
        """One more piece is done."""
        self.done = min(self.done + 1, self.total)
        self.draw()

    def draw(self) -> None:
        """Show how far it is, in place."""
        if self.live:
            full = self.WIDTH * self.done // self.total
            bar = "#" * full + "." * (self.WIDTH - full)
            print(f"\r  {self.label:<34} [{bar}]", end="", flush=True)

    def finish(self) -> None:
        """Say that the step is done."""
        self.done = self.total
        self.draw()
        seconds = time.monotonic() - self.began
        print(
            f"\r  {self.label:<34} done in {seconds:.0f} s" + " " * self.WIDTH
            if self.live
            else f"  {self.label:<34} done in {seconds:.0f} s"
        )


@dataclass(kw_only=True)
class Work:
    """A command that is run out of sight, and by what it is told how far it is."""

    name: str
    command: list[str]
    counts: str = ""
    """What stands in each line that counts; nothing: it counts once, when it is done."""
    total: int = 1


def run_together(label: str, *works: Work) -> None:
    """Run them at the same time; the bar moves with each of them. The first that fails is told."""
    bar = Bar(label, sum(each.total for each in works))
    with ThreadPoolExecutor(len(works)) as pool:
        running = {pool.submit(run_hidden, each, bar): each.name for each in works}
        for ended in as_completed(running):
            code, said = ended.result()
            if code != 0:
                print()
                raise StoppedError(f"{running[ended]}: this did not work.\n{said}")
    bar.finish()


def run_hidden(work: Work, bar: Bar) -> tuple[int, str]:
    """Run one; what it ended with, and the last lines of what it said."""
    process = subprocess.Popen(
        work.command, cwd=ROOT, env=environment(), stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT, text=True, encoding="utf-8", errors="replace",
    )  # fmt: skip
    lines = deque[str](maxlen=40)
    for line in process.stdout or ():
        lines.append(line)
        if work.counts and work.counts in line:
            bar.step()
    code = process.wait()
    if code == 0 and not work.counts:
        bar.step()
    return code, "".join(lines)


def environment() -> dict[str, str]:
    """Give what we start our own Node first, and no third-party notices."""
    return {
        **os.environ,
        "PATH": f"{BIN}{os.pathsep}{os.environ.get('PATH', '')}",
        "PIP_DISABLE_PIP_VERSION_CHECK": "1",
        "PYTHONUTF8": "1",
        "NO_MKDOCS_2_WARNING": "1",
        "NO_UPDATE_NOTIFIER": "1",
    }


# --- installing, once a change ----------------------------------------------------------------


def fingerprint(*files: Path) -> str:
    """Give one hash for what these files hold."""
    return hashlib.sha256(b"\0".join(file.read_bytes() for file in files)).hexdigest()


def is_current(stamp: Path, wanted: str) -> bool:
    """Whether this step was already done for exactly these files."""
    return stamp.exists() and stamp.read_text(encoding="utf-8") == wanted


def make_venv() -> None:
    """Create .venv, or make it anew where it belongs to another Python."""
    config = VENV / "pyvenv.cfg"
    version = "version = {}.{}.".format(*WANTED)
    if PYTHON.exists() and version in config.read_text(encoding="utf-8"):
        return
    shutil.rmtree(VENV, ignore_errors=True)
    made = subprocess.run(
        [sys.executable, "-m", "venv", str(VENV)], capture_output=True, text=True, check=False
    )
    if made.returncode != 0:
        raise StoppedError(
            f"Python could not make a virtual environment in .venv.\n{made.stdout.strip()}"
        )


@dataclass(kw_only=True)
class Install(Work):
    """A step of the set-up, and where it stands that it was done for `wanted`."""

    stamp: Path
    wanted: str


def of_python(lock: Path, name: str) -> Install:
    """Give what a lock file pins, every file checked against its hash. It names all there is."""
    command = [str(PYTHON), "-m", "pip", "install", "--no-deps", "--require-hashes", "-r"]
    return Install(
        name=name,
        command=[*command, str(lock)],
        counts="Collecting ",
        total=sum("==" in line for line in lock.read_text(encoding="utf-8").splitlines()),
        stamp=VENV / f".installed-{lock.stem}",
        wanted=fingerprint(lock),
    )


def of_ours() -> Install:
    """Give the builder and the calculators, into .venv as they stand in the working tree."""
    command = [str(PYTHON), "-m", "pip", "install", "--no-deps", "--no-build-isolation"]
    return Install(
        name="Underhoist itself",
        command=[*command, "-e", str(ROOT), "-e", str(ROOT / "calculators")],
        counts="Building ",
        total=2,
        stamp=VENV / ".installed-ours",
        wanted=fingerprint(ROOT / "pyproject.toml", ROOT / "calculators" / "pyproject.toml"),
    )


def of_node() -> Install:
    """Give the phone side's packages, which the Node that .venv brought installs."""
    npm = BIN / ("npm.exe" if os.name == "nt" else "npm")
    return Install(
        name="Phones' packages",
        command=[
            str(npm), "ci", "--ignore-scripts", "--no-audit", "--no-fund", "--loglevel=error",
        ],
        stamp=NODE_MODULES / ".installed",
        wanted=fingerprint(ROOT / "package-lock.json"),
    )  # fmt: skip


def install(*steps: Install) -> None:
    """Take those of these steps at the same time that were not taken for just this."""
    due = [each for each in steps if not is_current(each.stamp, each.wanted)]
    if not due:
        return
    run_together(", ".join(each.name for each in due), *due)
    for each in due:
        each.stamp.write_text(each.wanted, encoding="utf-8")


def set_up(*, tests: bool) -> None:
    """Everything the chosen command needs; nothing where nothing changed."""
    make_venv()
    install(of_python(ROOT / "requirements.lock", "Python packages"))
    install(of_ours())
    more = [of_python(ROOT / "requirements-test.lock", "Tests' packages")] if tests else []
    install(*more, of_node())


# --- a browser for the tests ------------------------------------------------------------------


def find_browser() -> str | None:
    """Find a Chromium that is already on this machine."""
    return os.environ.get("UNDERHOIST_CHROMIUM") or shutil.which("chromium")


def install_browser() -> None:
    """Debian's Chromium where apt is there and may be used, otherwise the one of Playwright."""
    if shutil.which("chromium-headless-shell") or is_current(*_own_browser()):
        return
    if may_use_apt():
        install_from_debian()
    if not find_browser():
        command = [str(PYTHON), "-m", "playwright", "install", "chromium"]
        run_together("Chromium for the tests", Work(name="Chromium", command=command))
        stamp, wanted = _own_browser()
        stamp.write_text(wanted, encoding="utf-8")


def may_use_apt() -> bool:
    """Whether this machine has apt, and we are root or may become it without a password."""
    if not shutil.which("apt-get"):
        return False
    if os.geteuid() == 0:
        return True
    asked = ["sudo", "-n", "true"]
    return bool(shutil.which("sudo")) and subprocess.run(asked, check=False).returncode == 0


def install_from_debian() -> None:
    """Install Debian's Chromium, and the one without windows, which the tests take where it is.

    Where that fails, a Chromium that is there already serves, or Playwright's.
    """
    bar = Bar("Chromium from Debian's packages", 2)
    sudo = [] if os.geteuid() == 0 else ["sudo", "-n"]
    quiet = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
    browsers = ["chromium", "chromium-headless-shell"]
    for words in (["update", "-qq"], ["install", "-y", "-qq", *browsers]):
        subprocess.run([*sudo, "apt-get", *words], capture_output=True, check=False, env=quiet)
        bar.step()
    bar.finish()


def _own_browser() -> tuple[Path, str]:
    """Where it stands which of Playwright's browsers was installed, and which is wanted."""
    return VENV / ".installed-browser", fingerprint(ROOT / "requirements-test.lock")


# --- the commands -----------------------------------------------------------------------------


def ours(*words: str, **more: str) -> int:
    """Run one of our own commands, its output as it is, with more in its environment."""
    known = {**environment(), **more}
    return subprocess.run(list(words), cwd=ROOT, env=known, check=False).returncode


def manual() -> int:
    """Check the demo manual and build it."""
    set_up(tests=False)
    return ours(str(PYTHON), "-m", "underhoist", "build", ".")


def serve() -> int:
    """Preview with live reload."""
    set_up(tests=False)
    return ours(str(PYTHON), "-m", "underhoist", "serve", ".")


def test() -> int:
    """Run every check and test; the first that fails ends it."""
    set_up(tests=True)
    install_browser()
    with tempfile.TemporaryDirectory() as folder:
        site = Path(folder) / "site"
        run_together("Style, layout, types, demo manual", *checks(site))
        # One process more than there are cores: much of a test with a browser is waiting. The
        # order of the files is kept, because the slow ones are put first.
        processes = str((os.process_cpu_count() or 1) + 1)
        spread = ["-n", processes, "--dist", "loadfile", "--no-loadscope-reorder"]
        return ours(str(PYTHON), "-m", "pytest", *spread, UNDERHOIST_TEST_SITE=str(site))


def checks(site: Path) -> list[Work]:
    """Give what is asked before the tests, and the build of the site that the tests share."""
    node = str(BIN / ("node.exe" if os.name == "nt" else "node"))
    python = str(PYTHON)
    commands = {
        "Style (ruff check)": [python, "-m", "ruff", "check", "-q", "."],
        "Layout (ruff format)": [python, "-m", "ruff", "format", "-q", "--check", "."],
        "Types, Python (pyright)": [node, "node_modules/pyright/index.js"],
        "Types, phone side (tsc)": [node, "node_modules/typescript/bin/tsc", "-p", "."],
        "Demo manual": [python, "-m", "underhoist", "build", ".", "--site", str(site)],
    }
    return [Work(name=name, command=command) for name, command in commands.items()]


def bench(wanted: str = "") -> int:
    """Run every benchmark in turn, or one; each writes its lines of the table of results."""
    if wanted and wanted not in BENCHMARKS:
        raise StoppedError(f"There is no benchmark {wanted}. Say one of: {', '.join(BENCHMARKS)}.")
    set_up(tests=True)
    install_browser()
    failed = 0
    for name in (wanted,) if wanted else BENCHMARKS:
        print(f"\n{name}")
        failed |= ours(str(PYTHON), str(ROOT / "benchmarks" / f"{name}.py"))
    print(f"\nThe table is {Path('benchmarks', 'results', 'README.md')}.")
    return failed


def lock() -> int:
    """Pin every requirement anew, with hashes and without any registry's address."""
    set_up(tests=True)
    compiler = [str(PYTHON), "-m", "uv", "pip", "compile", "-q", "--universal", "--no-header"]
    compiler += ["--generate-hashes", "--no-emit-index-url", "--python-version", "3.13"]
    ours(str(PYTHON), "-m", "pip", "install", "-q", "uv")
    failed = 0
    for name in ("requirements", "requirements-test"):
        failed |= ours(*compiler, "--upgrade", f"{name}.in", "-o", f"{name}.lock")
    return failed


COMMANDS = {"manual": manual, "test": test, "serve": serve, "bench": bench, "lock": lock}


def main() -> int:
    """Run the command that was asked for; what goes wrong is said in a sentence."""
    if sys.version_info[:2] != WANTED:
        have = "{}.{}.{}".format(*sys.version_info[:3])
        print(f"Underhoist needs Python 3.13, and this is {have}: install 3.13 and run it again.")
        return 2
    name, *given = sys.argv[1:] or [""]
    if name not in COMMANDS or len(given) > (name == "bench"):
        print(f"Say one of: {', '.join(COMMANDS)}.")
        return 2
    try:
        return COMMANDS[name](*given)
    except StoppedError as reason:
        print(reason)
        return 1
    except KeyboardInterrupt:
        return 130


if __name__ == "__main__":
    sys.exit(main())
