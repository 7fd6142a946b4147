"""The service worker, and the list of pages and assets that it stores at the first visit.

A first visit fetches bundles, many pages in one packed file: a request a page would take minutes
where each waits a fifth of a second for its answer. A new version fetches only the files that
changed, of the list itself only the lines that changed, and of a large file only the parts. Either
way each file is proven by its hash before it counts as stored.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from fnmatch import translate
from functools import partial
from pathlib import Path
from typing import NamedTuple, NotRequired, TypedDict
from urllib.parse import quote
from zlib import crc32

from attrs import frozen

from underhoist.browser import tools
from underhoist.browser.hashes import Hashes, paths_in, sha
from underhoist.browser.packer import Packer
from underhoist.browser.parts import FOLDER, LARGE, Part, cut, write_parts
from underhoist.browser.worker import worker_script

LIST = "offline/files.json"
"""A line for each bundle."""

LINES = "offline/lines.json"
"""The hash of each of the list's lines."""

_BUNDLES = "offline/bundles"

BUNDLE = 1_500_000
"""Bytes of pages in one bundle: about 300 kB packed, two seconds on a slow line."""

_QUICKLY = 6
"""How well a large file is packed as a whole: it is another in each build, and 3 % larger so."""

_LEFT_OUT = (
    LIST, LINES, f"{_BUNDLES}/*", f"{FOLDER}/*", "sw.js", "sitemap.xml*", "robots.txt", "*.map",
    "runtime/*/*",  # the second stage; its list is part of the first
    "changes/record.json", "changes/data/*",  # no reader asks for them
)  # fmt: skip


class Listed(NamedTuple):
    """One file: address below the site's root, size in bytes, hash."""

    path: str
    size: int
    sha: str


class Bundle(TypedDict):
    """One packed file: its files' contents, one after the other, in gzip."""

    url: str
    sha: str
    files: list[Listed]
    parts: NotRequired[list[Part]]
    """Of the one file in it, where that is large."""


@frozen
class Precached:
    """How many files the phone stores for reading offline, and how many bytes they are."""

    files: int
    size: int


def write_service_worker(
    site: Path, cache: Path | None = None, hashes: Hashes | None = None
) -> Precached:
    """Write `sw.js`, its list, and the bundles; `cache` keeps what is packed.

    `hashes` may know files that need not be read again.
    """
    packer = Packer(cache)
    hashes = hashes or Hashes(site)
    for folder in (site / _BUNDLES, site / FOLDER):
        folder.mkdir(parents=True, exist_ok=True)
        for old in folder.iterdir():
            old.unlink()
    with ThreadPoolExecutor() as pool:
        bundles = list(pool.map(partial(_bundle, site, packer, hashes), _groups(site, hashes)))
    listed = [file for bundle in bundles for file in bundle["files"]]
    stored = Precached(files=len(listed), size=sum(file.size for file in listed))
    text = _write_list(site, stored, bundles)
    packer.drop_unused()
    script = worker_script(tools.node_modules(site), cache)
    values = {"VERSION": sha(text), "FILES": stored.files, "SIZE": stored.size}
    for name, value in values.items():
        script = script.replace(f"__{name}__", str(value))
    (site / "sw.js").write_text(script, encoding="utf-8", newline="\n")
    return stored


def _write_list(site: Path, stored: Precached, bundles: list[Bundle]) -> bytes:
    """Write the list, each of its lines as a part, and which lines these are."""
    head = json.dumps({"files": stored.files, "size": stored.size})[:-1]
    lines = ",\n".join(json.dumps(bundle, separators=(",", ":")) for bundle in bundles)
    text = f'{head}, "bundles": [\n{lines}\n]}}\n'.encode()
    (site / LIST).write_bytes(text)
    hashes = [part.sha for part in write_parts(site, text.splitlines(keepends=True), Packer())]
    (site / LINES).write_text(json.dumps(hashes) + "\n", encoding="utf-8", newline="\n")
    return text


def _groups(site: Path, hashes: Hashes) -> Iterator[list[str]]:
    """Part the files into bundles, neighbours together: they are most alike."""
    group: list[str] = []
    size = 0
    for file in sorted(_wanted(site), key=lambda path: path.split("/")):
        length = hashes.size(file)
        if length >= LARGE:
            yield [file]
            continue
        group.append(file)
        size += length
        if _is_full(size, file):
            yield group
            group, size = [], 0
    if group:
        yield group


def _is_full(size: int, last: str) -> bool:
    """Whether a bundle ends here: after the same pages as before, though one has grown."""
    return size >= 2 * BUNDLE or (size >= BUNDLE / 2 and crc32(last.encode()) % 16 == 0)


def _wanted(site: Path) -> Iterator[str]:
    left_out = re.compile("|".join(map(translate, _LEFT_OUT)))
    return (path for path in paths_in(site) if not left_out.match(path))


def _bundle(site: Path, packer: Packer, hashes: Hashes, paths: list[str]) -> Bundle:
    listed = [Listed(_address(path), *_known(hashes, path)) for path in paths]
    held = sha("".join(file.sha for file in listed).encode())
    is_large = listed[0].size >= LARGE
    packed = packer.packed_of(
        held,
        lambda: b"".join((site / path).read_bytes() for path in paths),
        _QUICKLY if is_large else 9,
    )
    hashed = sha(packed)
    url = f"{_BUNDLES}/{hashed[:12]}.bin"  # not .gz: some hosts would unpack that
    (site / url).write_bytes(packed)
    bundle = Bundle(url=url, sha=hashed, files=listed)
    if is_large:
        bundle["parts"] = write_parts(site, hashes.parts(paths[0], cut), packer)
    return bundle


def _known(hashes: Hashes, path: str) -> tuple[int, str]:
    found = hashes.of(path)
    return found.size, found.sha


def _address(path: str) -> str:
    """Write a path as browsers write it in an address."""
    return quote(path, safe="/!$&'()*+,;=:@~")
