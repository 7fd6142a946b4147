"""What a file holds besides its text, packed: the search index, and what calculators run on."""

import base64
import gzip
import json
import shutil
from collections.abc import Iterable, Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

from attrs import frozen

from underhoist import theme
from underhoist.browser import tools
from underhoist.browser.runtime import CORE, bare_lock
from underhoist.browser.search_index import DOCUMENTS, write_search_index
from underhoist.browser.snapshot import snapshot
from underhoist.browser.wheels import compiled
from underhoist.model import Manual
from underhoist.pages import Sheet
from underhoist.search.documents import documents

_TYPES = {".wasm": "application/wasm", ".js": "text/javascript", ".mjs": "text/javascript"}
"""Types that a browser insists on."""
_TERMS = "assets/search/terms.js"


@frozen
class Part:
    """One part as it is written into the file."""

    name: str
    text: str
    """Packed by gzip, then in base64."""
    type: str = "application/octet-stream"


def part(name: str, content: bytes) -> Part:
    """Pack a part; what is packed already is not packed twice."""
    packed = content if content[:2] == b"\x1f\x8b" else gzip.compress(content, 6, mtime=0)
    text = base64.b64encode(packed).decode()
    return Part(name, text, _TYPES.get(Path(name).suffix, "application/octet-stream"))


def runtime(modules: Path) -> Iterator[Part]:
    """Yield Python, the calculators and their memory image; BrowserError where one is missing."""
    pyodide, cache = modules / "pyodide", modules.parent / ".cache"
    wheels = compiled(cache / "wheels")
    for name in CORE:
        yield part(name, (pyodide / name).read_bytes())
    yield part("lock.json", json.dumps(bare_lock(pyodide)).encode())
    for wheel in wheels:
        yield part(wheel.name, wheel.read_bytes())
    yield part("image", snapshot(cache / "images", pyodide, wheels).read_bytes())


def search(manual: Manual, sheets: Iterable[Sheet], modules: Path) -> Part:
    """Make the search index of these pages."""
    with TemporaryDirectory() as scratch:
        site = Path(scratch)
        for folder in (DOCUMENTS, _TERMS):
            (site / folder).parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(theme.folder() / _TERMS, site / _TERMS)
        content = documents(manual, sheets)
        (site / DOCUMENTS).write_text(json.dumps(content), encoding="utf-8")
        write_search_index(site, modules)
        return part("search", (site / "search/index.json").read_bytes())


def scripts(modules: Path) -> dict[str, str]:
    """Make one script each of the modules behind the file's page and behind its worker."""
    made = tools.run(
        "Putting the scripts of the file together",
        [tools.node(), str(Path(__file__).with_name("bundle.mjs")),
         str(theme.folder() / "assets"), str(modules)],
    )  # fmt: skip
    return json.loads(made)
