"""What runs in the browser, as byte-compiled wheels, compiled once for each content."""

from __future__ import annotations

import shutil
import sys
from collections.abc import Callable
from importlib.metadata import Distribution, version
from pathlib import Path, PurePosixPath
from tempfile import TemporaryDirectory

from underhoist.browser import own_wheel, tools
from underhoist.browser.archive import read_wheel, write_wheel
from underhoist.browser.distributions import (
    DRAFTING,
    fingerprint,
    installed_files,
    is_left_out,
    needed,
    source_folder,
)

_SPARE = 8
"""How many wheels that this build does not use are kept: going back to a branch is then quick."""


def compiled(cache: Path) -> list[Path]:
    """Return the calculators' wheels, their own first, taken from `cache` where unchanged."""
    return _of_distributions(cache, list(needed().values()))


def drafting(cache: Path) -> list[Path]:
    """Return what the drafting page needs besides the calculators, our own part first.

    Its `cache` is another folder than theirs: each is cleared of what its own last builds left.
    """
    recipe = _recipe()
    modules = own_wheel.carried()
    kept = cache / "own" / own_wheel.fingerprint(modules, recipe)
    own = _kept(kept, lambda folder: own_wheel.write(modules, folder))
    _drop_older(cache / "own", {own.parent})
    known = needed()
    more = {key: dist for name in DRAFTING for key, dist in needed(name).items()}
    others = [dist for key, dist in more.items() if key not in known]
    return [own, *_of_distributions(cache / "libraries", others)]


def _of_distributions(cache: Path, dists: list[Distribution]) -> list[Path]:
    recipe = _recipe()
    wheels = [_one(dist, cache / fingerprint(dist, recipe)) for dist in dists]
    _drop_older(cache, {wheel.parent for wheel in wheels})
    return wheels


def _recipe() -> str:
    return f"2 pyodide-build {version('pyodide-build')}"


def _drop_older(cache: Path, used: set[Path]) -> None:
    """Keep the folders in use and the newest of the others; every edit makes one."""
    others = [folder for folder in cache.iterdir() if folder not in used]
    others.sort(key=lambda folder: folder.stat().st_mtime, reverse=True)
    for folder in others[_SPARE:]:
        shutil.rmtree(folder, ignore_errors=True)


def _one(dist: Distribution, kept: Path) -> Path:
    """Return the compiled wheel of a distribution."""
    source = source_folder(dist)
    if source is None:
        return _kept(kept, lambda folder: _repack(dist, folder))
    return _kept(kept, lambda folder: _build(source, folder))


def _kept(kept: Path, make: Callable[[Path], None]) -> Path:
    """Return the compiled wheel in `kept`, made there first where it is missing."""
    ready = sorted(kept.glob("*.whl"))
    if ready:
        return ready[0]
    with TemporaryDirectory() as scratch:
        folder = Path(scratch)
        make(folder)
        _byte_compile(folder)
        [wheel] = folder.glob("*.whl")
        return _settle(wheel, kept)


def _build(source: Path, folder: Path) -> None:
    """Build the wheel of a working-tree distribution with its own backend, without network.

    It holds what `_repack` takes of the same distribution where it is installed from a wheel.
    """
    command = [sys.executable, "-m", "build", "--wheel", "--no-isolation"]
    tools.run("Building the calculators' wheel", [*command, "-o", str(folder), str(source)])
    [wheel] = folder.glob("*.whl")
    held = read_wheel(wheel)
    write_wheel(wheel, {name: held[name] for name in held if not is_left_out(PurePosixPath(name))})


def _repack(dist: Distribution, folder: Path) -> None:
    """Write an installed pure-Python distribution back into a wheel, without its tests."""
    name = f"{dist.name.replace('-', '_')}-{dist.version}-py3-none-any.whl"
    write_wheel(folder / name, {name: place.read_bytes() for name, place in installed_files(dist)})


def _byte_compile(folder: Path) -> None:
    """Replace the sources in every wheel of `folder` by compiled files, docstrings kept."""
    command = [sys.executable, "-m", "pyodide_cli", "py-compile", "--silent", "--no-keep"]
    tools.run("Byte-compiling for the phone", [*command, str(folder)])


def _settle(wheel: Path, kept: Path) -> Path:
    """Rewrite `wheel` into `kept`, there whole or not at all."""
    making = kept.with_name(f"{kept.name}.new")
    shutil.rmtree(making, ignore_errors=True)
    making.mkdir(parents=True)
    write_wheel(making / wheel.name, read_wheel(wheel))
    shutil.rmtree(kept, ignore_errors=True)
    making.rename(kept)
    return kept / wheel.name
