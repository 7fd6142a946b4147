"""The service worker's script: one plain file made of the modules under `worker/`."""

from __future__ import annotations

import os
from functools import cache
from pathlib import Path

from underhoist import theme
from underhoist.browser import tools
from underhoist.browser.hashes import sha

_MODULES = Path(__file__).with_name("worker")
_BUNDLER = Path(__file__).with_name("bundle_worker.mjs")


def worker_script(modules: Path, kept: Path | None = None) -> str:
    """Return the script, in which a version's values are still to be filled in.

    `modules` is the `node_modules` folder that holds rollup. `kept` is a folder for what was made:
    equal modules are bundled once. Raises BrowserError where they cannot be bundled.
    """
    if kept is None:
        return _bundled(modules)
    shared = sorted((theme.folder() / "assets" / "phone").glob("*.js"))
    own = sorted(_MODULES.glob("*.js"))
    sources = [*own, *shared, _BUNDLER, modules / "rollup" / "package.json"]
    place = kept / f"worker-{sha(b'\0'.join(each.read_bytes() for each in sources))}.js"
    try:
        script = place.read_text(encoding="utf-8")
    except FileNotFoundError:
        script = _bundled(modules)
        place.parent.mkdir(parents=True, exist_ok=True)
        unfinished = place.with_suffix(f".{os.getpid()}")
        unfinished.write_text(script, encoding="utf-8", newline="\n")
        unfinished.replace(place)
    else:
        place.touch()
    return script


@cache
def _bundled(modules: Path) -> str:
    entry, assets = _MODULES / "main.js", theme.folder() / "assets"
    command = [tools.node(), *map(str, (_BUNDLER, entry, assets, modules))]
    return tools.run("Making one file of the service worker", command)
