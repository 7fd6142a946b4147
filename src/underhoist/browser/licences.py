"""`licences.txt`: the licence texts of everything of others that a built site serves."""

from __future__ import annotations

import json
import sysconfig
from collections.abc import Iterator
from importlib.metadata import Distribution
from pathlib import Path

from underhoist.browser.browser_error import BrowserError
from underhoist.browser.distributions import CALCULATORS, DRAFTING, needed

_NOTICES = Path(__file__).with_name("notices")
_NPM = {
    "idb": "LICENSE",
    "minisearch": "LICENSE.txt",
    "workbox-window": "LICENSE",
    "@fontsource-variable/atkinson-hyperlegible-next": "LICENSE",
}
"""The file with the licence text by the name of the package."""
_TEXTS = ("LICENSE", "LICENCE", "COPYING", "AUTHORS")


def write_licences(site: Path, modules: Path) -> None:
    """Write the licence texts into the site; BrowserError where a part has none."""
    parts = [
        "This site serves work of others, each part under the licence that follows its name.\n",
        *(f"{'=' * 78}\n{name}\n\n{text.strip()}\n" for name, text in _all(modules)),
    ]
    (site / "licences.txt").write_text("\n".join(parts), encoding="utf-8")


def _all(modules: Path) -> Iterator[tuple[str, str]]:
    """Yield the name and licence text of each part."""
    yield f"Pyodide {_npm_version(modules / 'pyodide')}", _notice("pyodide")
    yield "CPython, its standard library", _cpython()
    for name, dist in _libraries().items():
        if name != CALCULATORS:
            yield f"{dist.name} {dist.version}", _of_distribution(dist)
    for name, file in _NPM.items():
        text = (modules / name / file).read_text(encoding="utf-8")
        yield f"{name} {_npm_version(modules / name)}", text


def _libraries() -> dict[str, Distribution]:
    """Return what the calculators and the drafting page bring along, each once."""
    more = {key: dist for name in DRAFTING for key, dist in needed(name).items()}
    return {**needed(), **more}


def _of_distribution(dist: Distribution) -> str:
    """Return what a distribution's metadata folder holds of licences and authors."""
    texts = [
        Path(str(dist.locate_file(file))).read_text(encoding="utf-8")
        for file in sorted(dist.files or [], key=str)
        if ".dist-info" in file.parts[0] and file.name.upper().startswith(_TEXTS)
    ]
    if not texts:
        raise BrowserError(f"{dist.name} is installed without its licence: install it again.")
    return "\n\n".join(texts)


def _cpython() -> str:
    """Return the licence of Python: the text beside its library, else where it is to be read."""
    text = Path(sysconfig.get_path("stdlib")) / "LICENSE.txt"
    if text.is_file():
        return text.read_text(encoding="utf-8")
    return "Python Software Foundation License 2, https://docs.python.org/3.13/license.html"


def _notice(name: str) -> str:
    return (_NOTICES / f"{name}.txt").read_text(encoding="utf-8")


def _npm_version(folder: Path) -> str:
    return json.loads((folder / "package.json").read_text(encoding="utf-8"))["version"]
