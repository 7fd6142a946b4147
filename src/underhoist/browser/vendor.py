"""Libraries and fonts of others that the pages load, copied from the npm packages."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

_FONT = "@fontsource-variable/atkinson-hyperlegible-next"
_UPRIGHT = "atkinson-hyperlegible-next-latin-wght-normal.woff2"

COPIES = {
    "idb/build/index.js": "assets/vendor/idb.js",
    "idb/LICENSE": "assets/vendor/idb.LICENSE.txt",
    "workbox-window/build/workbox-window.prod.mjs": "assets/vendor/workbox-window.js",
    "workbox-window/LICENSE": "assets/vendor/workbox-window.LICENSE.txt",
    "minisearch/dist/es/index.js": "assets/vendor/minisearch.js",
    "minisearch/LICENSE.txt": "assets/vendor/minisearch.LICENSE.txt",
    f"{_FONT}/LICENSE": "assets/fonts/LICENSE.txt",
    f"{_FONT}/files/{_UPRIGHT}": f"assets/fonts/{_UPRIGHT}",
}
"""Path in `node_modules` to path in the site."""

_SOURCE_MAP = re.compile(r"^//# sourceMappingURL=.*$", re.MULTILINE)


def copy_vendored(site: Path, modules: Path) -> None:
    """Copy every library and font into the site, with its licence beside it."""
    for source, target in COPIES.items():
        place = site / target
        place.parent.mkdir(parents=True, exist_ok=True)
        if place.suffix == ".js":
            # The map itself is not served; a browser's inspector would ask for it in vain.
            text = (modules / source).read_text(encoding="utf-8")
            place.write_text(_SOURCE_MAP.sub("", text), encoding="utf-8")
        else:
            shutil.copyfile(modules / source, place)
