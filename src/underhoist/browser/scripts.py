"""The pages' modules put into few files, made once for each content.

A page would else ask for some forty modules one after the other, and a phone that reads them from
its store proves each.
"""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from pathlib import Path

from underhoist import theme
from underhoist.browser import tools
from underhoist.browser.hashes import sha

_HERE = Path(__file__).parent
_MAKERS = ("scripts.mjs", "script_groups.mjs")
_APART = ("early", "look", "pack", "preview")
"""Folders of scripts that are no modules of the pages."""
_SPARE = 4
"""How many that this build does not use are kept."""


def write_scripts(site: Path, modules: Path, cache: Path) -> None:
    """Replace the modules in the site's `assets` by what they were put together to.

    What was made before for the same modules is taken from `cache`. Raises BrowserError.
    """
    made = _made(theme.folder() / "assets", modules, cache)
    assets = site / "assets"
    for old in _modules(assets):
        old.unlink()
    for file in sorted(made.rglob("*.js")):
        place = assets / file.relative_to(made)
        place.parent.mkdir(parents=True, exist_ok=True)
        place.unlink(missing_ok=True)  # it may be a link into the older site
        shutil.copyfile(file, place)


def _modules(assets: Path) -> Iterator[Path]:
    """Yield the modules; those of libraries are known by their package."""
    for file in sorted(assets.rglob("*.js")):
        if file.relative_to(assets).parts[0] not in (*_APART, "vendor"):
            yield file


def _made(assets: Path, modules: Path, cache: Path) -> Path:
    kept = cache / _fingerprint(assets, modules)
    if not kept.is_dir():
        making = cache / f"{kept.name}.{os.getpid()}"
        shutil.rmtree(making, ignore_errors=True)
        making.mkdir(parents=True)
        tools.run(
            "Putting the pages' scripts together",
            [tools.node(), str(_HERE / _MAKERS[0]), str(assets), str(modules), str(making)],
        )
        _settle(making, kept)
    kept.touch()
    _drop_older(cache, kept)
    return kept


def _fingerprint(assets: Path, modules: Path) -> str:
    """Hash all that goes in; libraries are known by the lock that they were installed from."""
    files = [*(_HERE / name for name in _MAKERS), modules / ".package-lock.json"]
    named = [(file.name, file) for file in files]
    named += [(file.relative_to(assets).as_posix(), file) for file in _modules(assets)]
    return sha("\n".join(f"{name} {sha(file.read_bytes())}" for name, file in named).encode())


def _settle(making: Path, kept: Path) -> None:
    """Put what was made in its place; another build may have been quicker with the same."""
    try:
        making.rename(kept)
    except OSError:
        if not kept.is_dir():
            raise
        shutil.rmtree(making, ignore_errors=True)


def _drop_older(cache: Path, used: Path) -> None:
    others = [folder for folder in cache.iterdir() if folder != used]
    others.sort(key=lambda folder: folder.stat().st_mtime, reverse=True)
    for folder in others[_SPARE:]:
        shutil.rmtree(folder, ignore_errors=True)
