"""The service worker, and the list of pages and assets that it stores at the first visit.

A first visit fetches bundles, many pages in one packed file: a request a page would take minutes
where each waits a fifth of a second for its answer. A new version fetches only the files that
changed. Either way each file is proven by its hash before it counts as stored.
"""

from __future__ import annotations

import gzip
import hashlib
import json
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from fnmatch import fnmatch
from functools import partial
from pathlib import Path
from typing import NamedTuple, TypedDict
from urllib.parse import quote

from attrs import frozen

LIST = "offline/files.json"

BUNDLE = 1_500_000
"""Bytes of pages in one bundle: about 300 kB packed, two seconds on a slow line."""

_LEFT_OUT = (
    LIST, "offline/bundles/*", "sw.js", "sitemap.xml*", "robots.txt", "*.map",
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


@frozen
class Precached:
    """How many files the phone stores for reading offline, and how many bytes they are."""

    files: int
    size: int


def write_service_worker(site: Path) -> Precached:
    """Write `sw.js`, its list `offline/files.json`, and the bundles."""
    folder = site / "offline" / "bundles"
    folder.mkdir(parents=True, exist_ok=True)
    for old in folder.iterdir():
        old.unlink()
    with ThreadPoolExecutor() as pool:
        bundles = list(pool.map(partial(_bundle, site), _groups(site)))
    listed = [file for bundle in bundles for file in bundle["files"]]
    stored = Precached(files=len(listed), size=sum(file.size for file in listed))
    text = json.dumps({"files": stored.files, "size": stored.size, "bundles": bundles})
    (site / LIST).write_text(text + "\n", encoding="utf-8", newline="\n")
    script = Path(__file__).with_name("service_worker.js").read_text(encoding="utf-8")
    values = {"VERSION": sha(f"{text}\n".encode()), "FILES": stored.files, "SIZE": stored.size}
    for name, value in values.items():
        script = script.replace(f"__{name}__", str(value))
    (site / "sw.js").write_text(script, encoding="utf-8", newline="\n")
    return stored


def sha(content: bytes) -> str:
    """Return half of the SHA-256 in hex: plenty against damage, and half as much to fetch."""
    return hashlib.sha256(content).hexdigest()[:32]


def _groups(site: Path) -> Iterator[list[Path]]:
    """Part the files into bundles, neighbours together: they are most alike."""
    group: list[Path] = []
    size = 0
    for file in sorted(_wanted(site)):
        group.append(file)
        size += file.stat().st_size
        if size >= BUNDLE:
            yield group
            group, size = [], 0
    if group:
        yield group


def _wanted(site: Path) -> Iterator[Path]:
    for file in site.rglob("*"):
        path = file.relative_to(site).as_posix()
        if file.is_file() and not any(fnmatch(path, pattern) for pattern in _LEFT_OUT):
            yield file


def _bundle(site: Path, files: list[Path]) -> Bundle:
    contents = [file.read_bytes() for file in files]
    packed = gzip.compress(b"".join(contents), 9, mtime=0)
    url = f"offline/bundles/{sha(packed)[:12]}.bin"  # not .gz: some hosts would unpack that
    (site / url).write_bytes(packed)
    return Bundle(
        url=url,
        sha=sha(packed),
        files=[
            Listed(_address(file.relative_to(site)), len(content), sha(content))
            for file, content in zip(files, contents, strict=True)
        ],
    )


def _address(path: Path) -> str:
    """Write a path as browsers write it in an address."""
    return quote(path.as_posix(), safe="/!$&'()*+,;=:@~")
