"""The service worker, and the list of pages and assets that it stores at the first visit."""

from __future__ import annotations

import json
from pathlib import Path

from attrs import frozen

from underhoist.browser import tools
from underhoist.browser.browser_error import BrowserError

LARGEST = 16 * 1024 * 1024
"""Most bytes one stored page or asset may have; a search index of a large manual stays below."""


@frozen
class Precached:
    """How many files the phone stores for reading offline, and how many bytes they are."""

    files: int
    size: int


def write_service_worker(site: Path, modules: Path, largest: int = LARGEST) -> Precached:
    """Write `sw.js` and `offline/files.json`; a file over `largest` bytes stops the build.

    Raises BrowserError with every warning of workbox-build: each of them means a file that would
    be missing offline.
    """
    (site / "offline").mkdir(exist_ok=True)
    script = Path(__file__).with_name("precache.mjs")
    command = [tools.node(), str(script), str(site.resolve()), str(modules), str(largest)]
    said = json.loads(tools.run("Making the manual readable offline", command))
    if said["warnings"]:
        raise BrowserError(
            "Some files would be missing offline, so nothing was built:\n"
            + "\n".join(said["warnings"])
        )
    return Precached(files=said["count"], size=said["size"])
