"""What a changed page makes of a project, built whole but for the runtime."""

from collections.abc import Callable
from pathlib import Path

from underhoist.build import build


class Silent:
    """Hears how far a build is and says nothing."""

    def stage(self, words: str, steps: int | None = None) -> None:
        """Let it pass."""

    def step(self) -> None:
        """Let it pass."""


def no_phone_side(site: Path, tell: Callable[[str], None]) -> None:
    """Leave the runtime out: no page of a manual changes it."""


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
