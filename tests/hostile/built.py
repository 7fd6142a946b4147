"""The small manual as a project on the disk, to build what a changed page makes of it."""

import shutil
from collections.abc import Callable
from pathlib import Path

from underhoist.build import build

MANUAL = Path(__file__).parents[1] / "pages" / "manual"
SETTINGS = """site_name: A small manual
docs_dir: pages
theme:
  name: material
plugins:
  - underhoist
"""


class Silent:
    """Hears how far a build is and says nothing."""

    def stage(self, words: str, steps: int | None = None) -> None:
        """Let it pass."""

    def step(self) -> None:
        """Let it pass."""


def no_phone_side(site: Path, tell: Callable[[str], None]) -> None:
    """Leave the runtime out: no page of a manual changes it."""


def make_project(folder: Path) -> Path:
    """Put the small manual and its settings into this folder, which is empty or not there."""
    shutil.copytree(MANUAL, folder / "pages")
    (folder / "mkdocs.yml").write_text(SETTINGS, encoding="utf-8")
    return folder


def pages_built(project: Path, file: str, data: bytes) -> int:
    """Build the project with this page changed, and put the page back; 0 pages: it was stopped."""
    page = project / "pages" / file
    before = page.read_bytes()
    page.write_bytes(data)
    try:
        built = build(project, project / "site", Silent(), no_phone_side)
        return sum(1 for _ in built.site.rglob("*.html")) if built.site else 0
    finally:
        page.write_bytes(before)
