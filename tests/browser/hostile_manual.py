"""The small manual with everything hostile put into it that the check lets through."""

from __future__ import annotations

import shutil
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import yaml
from small_project import MANUAL, make_project

from underhoist.checker import Checker

sys.path.append(str(Path(__file__).parents[1] / "hostile"))
from test_markdown import ADDRESSES, RAW

RUN = "globalThis.got=1"
"""What each payload would run."""

HTML = (
    f" zzyx \"'></textarea></title><img src=x onerror={RUN}><script>{RUN}</script>"
    f"<svg onload={RUN}><a href=javascript:{RUN}>{{{{ 7*7 }}}} ${{7*7}} &lt;b&gt;"
)
"""Put behind every text; the word in front is what the search is asked for."""

FREE = {
    "title", "summary", "harm", "avoid", "name", "note", "tell", "complaint", "consumables",
    "author", "access", "specification", "words", "area",
}  # fmt: skip
"""Keys that hold whatever somebody writes."""

PLAIN = "---\nkind: page\ntitle: {title}\nsummary: For a test.\n---\n\n{body}\n"
FILES = (
    "__proto__", "hasOwnProperty", "a'b", 'a"b', "<b>", "a&b", "a b", "50%", "%2e%2e",
    "..%2f..%2fx", "javascript:alert(1)", "c:boot", "a#b", "a?b", "{{x}}", "\u0430", "-",
    "index.html", "404",
)  # fmt: skip
"""Names of files: no ids, pieces of a path, look-alikes, names of the site's own."""

CONSTRUCTOR = """---
kind: procedure
title: Constructor
summary: Has the name of something that every object has.
unit_family: any
area: constructor
minutes: 1
who: apprentice
tools: [constructor, foot-wrench]
torques: [constructor]
readings:
  constructor: {name: Constructor, unit: turn, when: both, limits: 1 to 2 turns}
fasteners:
  constructor: {name: Constructor, torque: 20 lbf*ft}
---

## Steps

1. Tighten <torque:constructor> and read <reading:constructor> with the <tool:constructor>.

    Second check: Read it aloud.
"""
TOOL = "---\nkind: tool\ntitle: Constructor\nsummary: Has such a name too.\n---\n"


class Hostile:
    """Pages that are changed one text at a time; what the check stops is put back."""

    def __init__(self) -> None:
        paths = sorted(path for path in MANUAL.rglob("*") if path.is_file())
        names = [path.relative_to(MANUAL).as_posix() for path in paths]
        self.pages = {
            name: path.read_text(encoding="utf-8")
            for name, path in zip(names, paths, strict=True)
            if path.suffix == ".md"
        }
        self._checker = Checker(self.pages, [name for name in names if name not in self.pages])
        self.taken = 0

    def put(self, file: str, text: str) -> bool:
        """Take the text where the check lets it pass; whether it did."""
        self._checker.put(file, text)
        if not self._checker.checked().stops:
            self.pages[file] = text
            self.taken += 1
            return True
        if file in self.pages:
            self._checker.put(file, self.pages[file])
        else:
            self._checker.remove(file)
        return False

    def texts(self) -> None:
        """Put HTML behind every free text of the front matter."""
        for file in list(self.pages):
            _, front, body = self.pages[file].split("---\n", 2)
            data = yaml.load(front, Loader=yaml.BaseLoader)  # noqa: S506 - texts only
            for held, key in list(free_texts(data)):
                before, held[key] = held[key], held[key] + HTML
                dumped = yaml.safe_dump(data, allow_unicode=True, sort_keys=False)
                if not self.put(file, f"---\n{dumped}---\n{body}"):
                    held[key] = before

    def bodies(self) -> None:
        """Write one page of all that the check lets through of raw HTML and odd addresses."""
        links = [f"[zzyx](<{each}>) ![zzyx](<{each}>)" for each in ADDRESSES]
        deep = ("> " * 19 + "deep", "".join("    " * level + "- deep\n" for level in range(18)))
        body = ""
        for piece in (*RAW, *links, *deep, f"{HTML}\n", f"# {HTML}\n", f"| {HTML} |\n|---|\n| a |"):
            longer = f"{body}\n\n{piece}"
            if self.put("raw.md", PLAIN.format(title="Raw", body=longer)):
                body = longer

    def names(self) -> None:
        """Add pages whose names are no ordinary ones, and a title longer than any."""
        for name in FILES:
            self.put(f"{name}.md", PLAIN.format(title=f"'{'x' * 40}'", body="Words."))
        self.put("huge.md", PLAIN.format(title="x" * 5_000, body="Words."))
        self.put("tools/constructor.md", TOOL)
        assert self.put("jobs/constructor.md", CONSTRUCTOR)


def free_texts(data: Any, key: str = "") -> Iterator[tuple[Any, Any]]:
    """Yield each free text as the thing that holds it and its key there."""
    places = data.items() if isinstance(data, dict) else enumerate(data)
    for at, value in list(places):
        name = at if isinstance(data, dict) else key
        if isinstance(value, str) and name in FREE:
            yield data, at
        elif isinstance(value, dict | list):
            yield from free_texts(value, str(name))


def make_hostile(folder: Path) -> Hostile:
    """Write the project into a folder that is not there yet."""
    project = make_project(folder)
    hostile = Hostile()
    hostile.bodies()
    hostile.names()
    hostile.texts()
    shutil.rmtree(project / "pages")
    shutil.copytree(MANUAL, project / "pages", ignore=shutil.ignore_patterns("*.md"))
    for file, text in hostile.pages.items():
        place = project / "pages" / file
        place.parent.mkdir(parents=True, exist_ok=True)
        place.write_text(text, encoding="utf-8")
    return hostile
