"""A preview of a small manual, without the phone side, and a server that shows it."""

import urllib.error
import urllib.request
from io import StringIO
from pathlib import Path
from threading import Thread

import pytest
from small_project import make_project

from underhoist.preview import run
from underhoist.preview.server import server


class Previewed:
    """A project, its preview, and what a browser would get from it."""

    def __init__(self, folder: Path) -> None:
        self.pages = folder / "pages"
        self.out = StringIO()
        make_project(folder)
        self.folder = folder
        self.preview: run.Preview
        self.port = 0

    def start(self) -> None:
        into = self.folder / "preview"
        into.mkdir()
        self.preview = run.Preview(self.folder, into, self.out)
        self.running = server(self.preview.board, 0)
        self.port = self.running.server_port
        Thread(target=self.running.serve_forever, daemon=True).start()

    def stop(self) -> None:
        self.running.shutdown()
        self.running.server_close()

    @property
    def root(self) -> Path:
        return self.preview.board.now.root

    def write(self, file: str, text: str) -> None:
        path = self.pages / file
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
        assert self.preview.look()

    def replace(self, file: str, old: str, new: str) -> None:
        text = (self.pages / file).read_text(encoding="utf-8")
        assert old in text
        self.write(file, text.replace(old, new, 1))

    def get(self, address: str) -> str:
        try:
            with urllib.request.urlopen(f"http://127.0.0.1:{self.port}/{address}") as answer:
                return answer.read().decode()
        except urllib.error.HTTPError as error:
            return f"{error.code} {error.read().decode()}"

    def files(self) -> dict[str, tuple[int, bytes]]:
        """When each page was written, and what it holds."""
        pages = sorted(self.root.rglob("*.html"))
        return {
            path.relative_to(self.root).as_posix(): (path.stat().st_mtime_ns, path.read_bytes())
            for path in pages
        }


@pytest.fixture
def previewed(tmp_path, monkeypatch):
    monkeypatch.setattr(run, "install", lambda *_, **__: None)
    project = Previewed(tmp_path)
    project.start()
    yield project
    project.stop()
