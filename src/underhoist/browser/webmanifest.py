"""What a phone needs to put the manual on its home screen."""

from __future__ import annotations

import json
import re
from html import unescape
from pathlib import Path

PAPER = "#FBF8F1"
"""The pages' background: the phone paints it before the first page is there."""

_ICONS = (
    ("assets/icons/icon-192.png", "192x192", "any"),
    ("assets/icons/icon-512.png", "512x512", "any"),
    ("assets/icons/icon-maskable-512.png", "512x512", "maskable"),
)
_TITLE = re.compile(r"<title>(.*?)</title>", re.DOTALL)
_SHORT = 12
"""Longest name, in characters, that phones show whole below an icon."""


def write_webmanifest(site: Path) -> None:
    """Write `manifest.webmanifest`, named after the front page, with the icons that are there."""
    front = site / "index.html"
    found = _TITLE.search(front.read_text(encoding="utf-8"))
    name = unescape(found[1]).strip() if found else "Workshop manual"
    icons = [
        {"src": src, "sizes": sizes, "type": "image/png", "purpose": purpose}
        for src, sizes, purpose in _ICONS
        if (site / src).is_file()
    ]
    content = {
        "name": name,
        "short_name": name if len(name) <= _SHORT else "Manual",
        "start_url": "./",
        "scope": "./",
        "display": "standalone",
        "background_color": PAPER,
        "theme_color": PAPER,
        "icons": icons,
    }
    text = json.dumps(content, indent=1, ensure_ascii=False) + "\n"
    (site / "manifest.webmanifest").write_text(text, encoding="utf-8")
