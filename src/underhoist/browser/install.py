"""Adds the phone side to a site that was just built."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from attrs import evolve, frozen

from underhoist.browser import tools
from underhoist.browser.hashes import Hashes
from underhoist.browser.licences import write_licences
from underhoist.browser.packer import Packer
from underhoist.browser.precache import Precached, write_service_worker
from underhoist.browser.runtime import Sources, write_runtime
from underhoist.browser.scripts import write_scripts
from underhoist.browser.search_index import write_search_index
from underhoist.browser.snapshot import snapshot
from underhoist.browser.vendor import copy_vendored
from underhoist.browser.webmanifest import write_webmanifest
from underhoist.browser.wheels import compiled, drafting

_MEGABYTE = 1_000_000


@frozen
class BrowserReport:
    """What the phone stores: files of the manual, then the runtime; sizes in uncompressed bytes."""

    pages: int
    text_bytes: int
    runtime_bytes: int
    wheels: tuple[str, ...]

    def summary(self) -> str:
        """Say it in one line."""
        return (
            f"{self.pages} files readable offline ({self.text_bytes / _MEGABYTE:.1f} MB), "
            f"calculators offline ({self.runtime_bytes / _MEGABYTE:.1f} MB)"
        )


@frozen
class Before:
    """What the site before leaves to one whose runtime, libraries and settings are the same."""

    site: Path
    report: BrowserReport


def install(
    site: Path,
    *,
    progress: Callable[[str], None],
    offline: bool = True,
    hashes: Hashes | None = None,
) -> BrowserReport:
    """Make the site in folder `site` able to calculate, installable and readable offline.

    Call it last: every file then in the folder is stored on the phone. `progress` is told each
    stage. Without `offline` nothing is stored, as a preview wants it: it must show the newest text.
    `hashes` may know files that need not be read again. Raises BrowserError where something is
    missing or would not work offline.
    """
    progress("Finding what the phone needs")
    modules = tools.node_modules(site)
    progress("Compiling the calculators for the phone")
    cache = modules.parent / ".cache"
    wheels = compiled(cache / "wheels")
    desk = drafting(cache / "drafting")
    image = snapshot(cache / "images", modules / "pyodide", wheels)
    sources = Sources(pyodide=modules / "pyodide", wheels=wheels, drafting=desk, image=image)
    progress("Adding the runtime, libraries and fonts")
    manifest = write_runtime(site, sources, Packer(cache / "packed"))
    copy_vendored(site, modules)
    write_scripts(site, modules, cache / "scripts")
    write_search_index(site, modules)
    write_licences(site, modules)
    write_webmanifest(site)
    stored = Precached(files=0, size=0)
    if offline:
        progress("Making the manual readable offline")
        stored = write_service_worker(site, cache / "packed", hashes)
    return BrowserReport(
        pages=stored.files,
        text_bytes=stored.size,
        runtime_bytes=sum(file["size"] for file in manifest["files"]),
        wheels=tuple(wheel.name for wheel in (*wheels, *desk)),
    )


def install_again(
    site: Path, *, progress: Callable[[str], None], before: Before, hashes: Hashes
) -> BrowserReport:
    """Do what `install` does on a site that has from the one before what follows from no page.

    Raises BrowserError likewise.
    """
    modules = tools.node_modules(site)
    progress("Making the manual readable offline")
    write_search_index(site, modules, before.site / "search/index.json")
    write_webmanifest(site)
    stored = write_service_worker(site, modules.parent / ".cache" / "packed", hashes)
    return evolve(before.report, pages=stored.files, text_bytes=stored.size)
