"""What decides what is made of a manual, besides the manual: programs, and all that they use."""

import hashlib
import sys
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path

import underhoist_calculators

from underhoist import theme
from underhoist.browser.hashes import paths_in

_PACKAGES = ("attrs", "Jinja2", "Markdown", "MarkupSafe", "mkdocs", "mkdocs-material", "Pint",
             "properdocs", "PyYAML")  # fmt: skip


def builder() -> str:
    """Return a hash of all that decides what is made of a manual: this program and what it uses."""
    digest = hashlib.sha256(sys.version.encode())
    for name in _PACKAGES:
        digest.update(f"{name} {_version(name)}\n".encode())
    ours = (Path(__file__).parents[1], Path(underhoist_calculators.__file__).parent, theme.folder())
    for folder in ours:
        for path in sorted(paths_in(folder)):
            if "__pycache__/" not in path:
                digest.update(hashlib.sha256((folder / path).read_bytes()).digest())
                digest.update(path.encode() + b"\n")
    return digest.hexdigest()


def outside(modules: Path) -> str:
    """Return a hash of all else that a phone's part of a site is made from: the packages of others.

    `modules` is where those of the phone are. Raises OSError where there are none.
    """
    digest = hashlib.sha256((modules / ".package-lock.json").read_bytes())
    folders = [folder for folder in map(Path, sys.path) if folder.is_dir()]
    names = {each.name for folder in folders for each in folder.glob("*.dist-info")}
    digest.update("\n".join(sorted(names)).encode())
    return digest.hexdigest()


def _version(name: str) -> str:
    try:
        return version(name)
    except PackageNotFoundError:
        return ""
