"""The demo site with little to store, for tests of how files come to be stored and kept."""

from __future__ import annotations

import gzip
import json
import random
import shutil
from hashlib import sha256
from pathlib import Path

from underhoist.browser.precache import write_service_worker

FOLDERS = {
    "any-unit", "assets", "drafting", "drawings", "hazards", "kestrel-3", "offline", "plover-2",
    "runtime",
}  # fmt: skip
"""The one large file of all pages, and pages for three bundles.

With fewer, one that changes is half of the list, which is then fetched whole.
"""

SCRIPTS = {"cards", "drafting", "fault", "search", "vendor"}
"""Assets that none of these pages loads: it is the number of files that costs, not their bytes."""

SIZE = 2_700_000
"""Bytes of a large file of the runtime, packed and unpacked: more than two whole pieces."""


def make_lean(folder: Path, site: Path) -> None:
    """Copy a few folders of the site; its runtime is of the same names and of fewer bytes.

    Pages, scripts and lists are as the build makes them; only Python cannot be started. What is
    stored of the whole site, and that Python starts from it, is tested in `test_offline.py`.
    """

    def left_out(place: str, names: list[str]) -> list[str]:
        if Path(place) == site / "assets":
            return [each for each in names if each in SCRIPTS]
        is_top = Path(place) == site
        return [each for each in names if is_top and (site / each).is_dir() and each not in FOLDERS]

    shutil.copytree(site, folder, ignore=left_out)
    path = folder / "runtime" / "manifest.json"
    manifest = json.loads(path.read_text(encoding="utf-8"))
    for number, file in enumerate(manifest["files"]):
        _shorten(folder / file["url"], file, random.Random(number))  # noqa: S311  (any bytes)
    path.write_text(json.dumps(manifest), encoding="utf-8")
    write_service_worker(folder)


def _shorten(path: Path, file: dict, any_bytes: random.Random) -> None:
    """Put fewer bytes in the file's place: a large one is packed where it was packed."""
    if "stored_sha256" in file:
        content = any_bytes.randbytes(SIZE)
        file["stored_sha256"] = sha256(content).hexdigest()
        content = gzip.compress(content, 1, mtime=0)
    else:
        content = any_bytes.randbytes(20_000)
    path.write_bytes(content)
    file |= {"size": len(content), "sha256": sha256(content).hexdigest()}
