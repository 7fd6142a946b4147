"""A build that a test lets a process of its own do, and kills."""

from contextlib import suppress
from multiprocessing.connection import Connection
from pathlib import Path

from underhoist.build import build


class Aloud:
    """Says what the build is at."""

    def __init__(self, said: Connection) -> None:
        self.said = said

    def stage(self, words: str, steps: int | None = None) -> None:
        """Say it, whether somebody still listens or not."""
        del steps
        with suppress(OSError):
            self.said.send(words)

    def step(self) -> None:
        """Let it pass."""


def build_aloud(folder: Path, said: Connection) -> None:
    """Build the project's site without the phone side."""
    build(folder, folder / "site", Aloud(said), lambda site, tell: None)
