"""The runtime folder of a site: Pyodide, the compiled wheels, and the list that names them."""

from __future__ import annotations

import gzip
import hashlib
import json
import shutil
from pathlib import Path
from struct import iter_unpack, unpack_from
from typing import Any, NotRequired, TypedDict

from attrs import frozen

from underhoist.browser.packer import Packer

PROGRAM = "pyodide.asm.wasm"

CORE = ("pyodide.mjs", "pyodide.asm.js", PROGRAM, "python_stdlib.zip")


class StoredFile(TypedDict):
    """One file that the phone stores: address from the site's root, size in bytes, hash in hex.

    `stored_sha256` is there for a file that arrives compressed (gzip) and is stored unpacked, and
    `stored_url` where it is stored at an address of its own.
    """

    url: str
    size: int
    sha256: str
    stored_sha256: NotRequired[str]
    stored_url: NotRequired[str]


class Memory(TypedDict):
    """The memory that an image gives back: size in bytes, hash in hex."""

    size: int
    sha256: str


class Manifest(TypedDict):
    """What `runtime/manifest.json` holds."""

    pyodide: str
    core: str
    lock: dict[str, Any]
    wheels: list[str]
    drafting: list[str]
    image: str
    memory: Memory
    files: list[StoredFile]


@frozen
class Sources:
    """What a runtime is made of: Pyodide's package, files that were made of the calculators.

    `drafting` are the wheels that only the drafting page adds to the calculators'.
    """

    pyodide: Path
    wheels: list[Path]
    drafting: list[Path]
    image: Path


def write_runtime(site: Path, sources: Sources, packer: Packer) -> Manifest:
    """Put Pyodide, the wheels and the memory image under `site/runtime` and write their list.

    Every address holds a hash of what it serves: a file that did not change keeps its address, so
    a phone fetches only what is new.
    """
    core = _write_core(site, sources.pyodide, packer)
    wheel_urls = [_write_hashed(site, "wheel", wheel) for wheel in sources.wheels]
    image = gzip.decompress(sources.image.read_bytes())
    image_url = _write_image(site, sources.image, image)
    drafting_urls = [_write_hashed(site, "wheel", wheel) for wheel in sources.drafting]
    plain = (name for name in CORE if name != PROGRAM)
    urls = [*(core + name for name in plain), *wheel_urls, *drafting_urls]
    program: StoredFile = {
        **_unpacked_file(site, f"{core}{PROGRAM}.bin"),
        "stored_url": f"{core}{PROGRAM}",
    }
    manifest = Manifest(
        pyodide=_json(sources.pyodide / "package.json")["version"],
        core=core,
        lock=bare_lock(sources.pyodide),
        wheels=wheel_urls,
        drafting=drafting_urls,
        image=image_url,
        memory=_memory_of(image),
        files=[
            *(stored_file(site, url) for url in urls),
            program,
            _unpacked_file(site, image_url),
        ],
    )
    text = json.dumps(manifest, indent=1) + "\n"
    (site / "runtime" / "manifest.json").write_text(text, encoding="utf-8")
    return manifest


def stored_file(site: Path, url: str) -> StoredFile:
    """Describe the file at `url`, an address from the site's root."""
    content = (site / url).read_bytes()
    return StoredFile(url=url, size=len(content), sha256=hashlib.sha256(content).hexdigest())


def _unpacked_file(site: Path, url: str) -> StoredFile:
    """Describe the compressed file at `url`, which the phone unpacks once, when it stores it."""
    content = gzip.decompress((site / url).read_bytes())
    return {**stored_file(site, url), "stored_sha256": hashlib.sha256(content).hexdigest()}


def _write_core(site: Path, pyodide: Path, packer: Packer) -> str:
    """Copy the interpreter and return its folder's address.

    Its program is packed: many hosts pack no WebAssembly, and none packs the rest of a file that a
    phone goes on with where the line broke.
    """
    digest = hashlib.sha256()
    for name in CORE:
        digest.update(hashlib.sha256((pyodide / name).read_bytes()).digest())
    core = f"runtime/core-{digest.hexdigest()[:12]}/"
    (site / core).mkdir(parents=True)
    for name in CORE:
        if name == PROGRAM:
            packed = packer.packed((pyodide / name).read_bytes())
            place = site / core / f"{name}.bin"  # not .gz: some hosts would unpack that
            place.write_bytes(packed)
        else:
            shutil.copyfile(pyodide / name, site / core / name)
    return core


def bare_lock(pyodide: Path) -> dict[str, Any]:
    """Return Pyodide's list of packages, emptied: none is served, so nothing must ask for one."""
    lock = _json(pyodide / "pyodide-lock.json")
    return {"info": lock["info"], "packages": {}}


def _write_hashed(site: Path, kind: str, file: Path) -> str:
    """Copy one file and return its address. The hash is in the folder: a wheel's name is fixed."""
    digest = hashlib.sha256(file.read_bytes()).hexdigest()[:12]
    url = f"runtime/{kind}-{digest}/{file.name}"
    (site / url).parent.mkdir(parents=True, exist_ok=True)
    shutil.copyfile(file, site / url)
    return url


def _write_image(site: Path, file: Path, image: bytes) -> str:
    """Copy the image; its address follows from the memory alone, however it was compressed."""
    digest = hashlib.sha256(image).hexdigest()[:12]
    url = f"runtime/image-{digest}/python.bin"
    (site / url).parent.mkdir(parents=True)
    shutil.copyfile(file, site / url)
    return url


def _memory_of(image: bytes) -> Memory:
    """Describe what an image comes to: its pages as `sparse.mjs` lists them, noughts between."""
    size, count = unpack_from("<2I", image)
    at = 8 + 8 * count
    memory = bytearray(size)
    for start, end in iter_unpack("<2I", image[8:at]):
        memory[start:end] = image[at : at + end - start]
        at += end - start
    return Memory(size=size, sha256=hashlib.sha256(memory).hexdigest())


def _json(place: Path) -> dict[str, Any]:
    return json.loads(place.read_text(encoding="utf-8"))
