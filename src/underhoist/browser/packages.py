"""The phone-side packages of a builder that was installed on its own: fetched once, then kept."""

from __future__ import annotations

import hashlib
import os
import shutil
import sys
import tempfile
from pathlib import Path

from platformdirs import user_cache_path

LISTED = Path(__file__).with_name("npm")
"""The list of packages and its lock, as an installed builder carries them. A working tree has
them in its root and installs them there."""


def home() -> Path | None:
    """Return the folder for the packages of this builder; None where it carries no list of them."""
    lock = LISTED / "package-lock.json"
    if not lock.is_file():
        return None
    version = hashlib.sha256(lock.read_bytes()).hexdigest()[:12]
    return user_cache_path("underhoist", appauthor=False) / f"phone-{version}"


def command() -> list[str]:
    """Return the command that installs exactly what is locked and runs nothing of it."""
    beside = Path(sys.executable).with_name("npm.exe" if os.name == "nt" else "npm")
    npm = str(beside) if beside.is_file() else (shutil.which("npm") or "npm")
    return [npm, "ci", "--omit=dev", "--ignore-scripts", "--no-audit", "--no-fund"]


def scratch(into: Path) -> Path:
    """Return a new folder beside `into` that holds the list, to install into and then rename."""
    into.parent.mkdir(parents=True, exist_ok=True)
    folder = Path(tempfile.mkdtemp(prefix="fetching-", dir=into.parent))
    for file in LISTED.glob("package*.json"):
        shutil.copyfile(file, folder / file.name)
    return folder
