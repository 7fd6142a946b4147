"""An image of Python's memory with the calculators imported: on a phone it is back in no time."""

from __future__ import annotations

import hashlib
from pathlib import Path
from tempfile import TemporaryDirectory

from underhoist.browser import tools

LARGEST = 48 * 1024 * 1024
"""Most bytes the image may have: each has to be copied before a phone can calculate."""

_KEPT = 3
_SCRIPT = Path(__file__).with_name("snapshot.mjs")
_PARTS = tuple(Path(__file__).with_name(name) for name in ("sparse.mjs", "still.mjs"))


def snapshot(cache: Path, pyodide: Path, wheels: list[Path], largest: int = LARGEST) -> Path:
    """Return the image for this Pyodide and these wheels, made once and then kept in `cache`.

    Made again, of equal wheels, it is the same to the byte: no phone fetches it anew. Raises
    BrowserError where it is over `largest` bytes or, restored, gives other answers.
    """
    kept = cache / f"{_key(pyodide, wheels)}.bin"
    if not kept.is_file():
        cache.mkdir(parents=True, exist_ok=True)
        with TemporaryDirectory(dir=cache) as scratch:
            made = Path(scratch) / "image"
            command = [tools.node(), str(_SCRIPT), str(pyodide), str(made), str(largest)]
            tools.run("Taking the image of the calculators", [*command, *map(str, wheels)])
            made.rename(kept)
        _drop_older(cache)
    return kept


def _drop_older(cache: Path) -> None:
    """Keep the newest images only; each is several megabytes, and every edit makes one."""
    newest_first = sorted(cache.glob("*.bin"), key=lambda file: file.stat().st_mtime, reverse=True)
    for image in newest_first[_KEPT:]:
        image.unlink()


def _key(pyodide: Path, wheels: list[Path]) -> str:
    """Hash all that decides what the image holds."""
    core = (pyodide / "pyodide.asm.wasm", pyodide / "python_stdlib.zip")
    digest = hashlib.sha256()
    for file in (_SCRIPT, *_PARTS, *core, *wheels):
        digest.update(hashlib.sha256(file.read_bytes()).digest())
    return digest.hexdigest()[:24]
