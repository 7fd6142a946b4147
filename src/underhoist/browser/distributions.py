"""Which installed distributions the browser needs, and which of their files."""

from __future__ import annotations

import hashlib
import json
import sys
import tomllib
from collections.abc import Iterator
from importlib.metadata import Distribution, distribution
from pathlib import Path, PurePosixPath

from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

from underhoist.browser.browser_error import BrowserError

CALCULATORS = "underhoist-calculators"

DRAFTING = ("attrs", "cattrs", "Markdown", "MarkupSafe", "PyYAML")
"""What our own part of the drafting page imports of others."""

# Never imported by a calculator: tests, typing stubs and pint's own large unit list, which the
# calculators replace by the trade's. What an installer leaves behind is no part of a wheel.
_LEFT_OUT_FOLDERS = frozenset({"testsuite", "tests", "__pycache__", "sboms"})
_LEFT_OUT_NAMES = frozenset({
    "INSTALLER", "REQUESTED", "RECORD", "direct_url.json",
    "default_en.txt", "constants_en.txt", "py.typed",
})  # fmt: skip
_LEFT_OUT_SUFFIXES = frozenset({".pyc", ".pyi", ".so", ".pth"})


def needed(name: str = CALCULATORS) -> dict[str, Distribution]:
    """Return the distribution and everything it requires, by normalised name, itself first."""
    found: dict[str, Distribution] = {}
    waiting = [name]
    while waiting:
        key = canonicalize_name(waiting.pop(0))
        if key in found:
            continue
        found[key] = distribution(key)
        for text in _requirements(found[key]):
            wanted = Requirement(text)
            if wanted.marker is None or wanted.marker.evaluate({"extra": ""}):
                waiting.append(wanted.name)
    return found


def _requirements(dist: Distribution) -> list[str]:
    """Return what a distribution requires; a working tree's project file is the newest word."""
    folder = source_folder(dist)
    if folder is None:
        return dist.requires or []
    project = tomllib.loads((folder / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    return project.get("dependencies", [])


def source_folder(dist: Distribution) -> Path | None:
    """Return the working-tree folder of a distribution that is installed editable, else None."""
    text = dist.read_text("direct_url.json")
    if not text:
        return None
    origin = json.loads(text)
    if not origin.get("dir_info", {}).get("editable"):
        return None
    return Path.from_uri(str(origin["url"]))


def installed_files(dist: Distribution) -> Iterator[tuple[str, Path]]:
    """Yield the name in the wheel and the place on disk of every file a calculator may need."""
    for file in sorted(dist.files or [], key=str):
        if not is_left_out(file):
            yield file.as_posix(), Path(str(dist.locate_file(file)))


def is_left_out(file: PurePosixPath) -> bool:
    """Whether a distribution's file, named as in its wheel, is of no use in the browser."""
    return bool(
        _LEFT_OUT_FOLDERS.intersection(file.parts)
        or file.name in _LEFT_OUT_NAMES
        or file.suffix in _LEFT_OUT_SUFFIXES
        or ".." in file.parts
    )


def source_files(folder: Path) -> Iterator[tuple[str, Path]]:
    """Yield the name and the place on disk of every file that a wheel of `folder` depends on."""
    for file in sorted(folder.rglob("*")):
        if file.is_file() and "__pycache__" not in file.parts:
            yield file.relative_to(folder).as_posix(), file


def fingerprint(dist: Distribution, recipe: str) -> str:
    """Return a hash of all that decides how the compiled wheel looks; `recipe` names the tools."""
    folder = source_folder(dist)
    files = installed_files(dist) if folder is None else source_files(folder)
    digest = hashlib.sha256(f"{recipe} {sys.version_info[:2]} {dist.version}".encode())
    count = 0
    for name, place in files:
        digest.update(name.encode() + b"\0" + hashlib.sha256(place.read_bytes()).digest())
        count += 1
    if count == 0:
        raise BrowserError(f"{dist.name} is installed without any file: install it again.")
    return digest.hexdigest()[:24]
