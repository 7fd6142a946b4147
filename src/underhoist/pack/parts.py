"""What a file holds besides its text, packed: search index, complaints, what calculators run on."""

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
from underhoist.pack.dense import dense
from underhoist.pages import Sheet, Site
from underhoist.pages.complaint_data import complaint_files
from underhoist.search.documents import documents

_TYPES = {".wasm": "application/wasm", ".js": "text/javascript", ".mjs": "text/javascript"}
"""Types that a browser insists on."""
_TERMS = "assets/search/terms.js"


@frozen
class Part:
    """One part: its name and what it holds, packed by gzip."""

    name: str
    content: bytes
    type: str = ""
    """Its media type, where Python asks for it."""


def element(part: Part) -> bytes:
    """Write a part as an element of the page."""
    kind = f' data-type="{part.type}"' if part.type else ""
    start = f'<script type="application/octet-stream" id="part-{part.name}"{kind}>'
    return start.encode("ascii") + dense(part.content) + b"</script>\n"


def _packed(content: bytes) -> bytes:
    """Pack with gzip; what is packed so already is not packed twice."""
    is_packed = content[:2] == b"\x1f\x8b"
    return content if is_packed else gzip.compress(content, 9, mtime=0)


def runtime(modules: Path) -> Iterator[Part]:
    """Yield Python, the calculators and their memory image; BrowserError where one is missing."""
    pyodide, cache = modules / "pyodide", modules.parent / ".cache"
    wheels = compiled(cache / "wheels")
    for name in CORE:
        yield _of_python(name, (pyodide / name).read_bytes())
    yield _of_python("lock.json", json.dumps(bare_lock(pyodide)).encode())
    for wheel in wheels:
        yield _of_python(wheel.name, wheel.read_bytes())
    yield _of_python("image", snapshot(cache / "images", pyodide, wheels).read_bytes())


def _of_python(name: str, content: bytes) -> Part:
    kind = _TYPES.get(Path(name).suffix, "application/octet-stream")
    return Part(name, _packed(content), kind)


def complaints(site: Site, sheets: Iterable[Sheet]) -> Part:
    """Take what the next check is worked out from, of the complaints among these pages."""
    files = complaint_files(site, {each.address: each for each in sheets})
    held = {Path(path).stem: json.loads(text) for path, text in files}
    return Part("faults", _packed(json.dumps(held).encode()))


def search(manual: Manual, sheets: Iterable[Sheet], modules: Path) -> Part:
    """Make the search index of these pages."""
    with TemporaryDirectory() as scratch:
        site = Path(scratch)
        for folder in (DOCUMENTS, _TERMS):
            (site / folder).parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(theme.folder() / _TERMS, site / _TERMS)
        content = documents(manual, {each.address: each for each in sheets})
        (site / DOCUMENTS).write_text(json.dumps(content), encoding="utf-8")
        write_search_index(site, modules)
        return Part("search", _packed((site / "search/index.json").read_bytes()))


def scripts(modules: Path) -> dict[str, str]:
    """Make one script each of the modules behind the file's page and behind its worker."""
    made = tools.run(
        "Putting the scripts of the file together",
        [tools.node(), str(Path(__file__).with_name("bundle.mjs")),
         str(theme.folder() / "assets"), str(modules)],
    )  # fmt: skip
    return json.loads(made)
