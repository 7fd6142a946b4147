"""A preview of a small manual, without the phone side, and a server that shows it."""

import urllib.error
import urllib.request
from io import StringIO
from pathlib import Path
from threading import Thread

import pytest
from small_project import MANUAL, SETTINGS, make_project

from underhoist.preview import run
from underhoist.preview.server import server


def texts_of(folder: Path) -> dict[str, bytes]:
    """What each file of a folder holds."""
    files = (path for path in folder.rglob("*") if path.is_file())
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in files}


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
        Thread(target=self.running.serve_forever, args=(0.05,), daemon=True).start()

    def stop(self) -> None:
        self.running.shutdown()
        self.running.server_close()

    def put_back(self) -> None:
        """Make the project again what it was, which the preview follows like any other change."""
        settings = self.folder / "mkdocs.yml"
        if settings.read_text(encoding="utf-8") != SETTINGS:
            settings.write_text(SETTINGS, encoding="utf-8")
        wanted = texts_of(MANUAL)
        for file in texts_of(self.pages).keys() - wanted.keys():
            (self.pages / file).unlink()
        for file, text in wanted.items():
            path = self.pages / file
            if not path.is_file() or path.read_bytes() != text:
                path.write_bytes(text)
        self.preview.look()

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

    def pages_held(self) -> dict[str, bytes]:
        """What each page holds, whenever it was written."""
        return {file: text for file, (_, text) in self.files().items()}


@pytest.fixture(scope="module")
def started(tmp_path_factory):
    """A preview for the tests of a file, and what its pages held at first."""
    project = Previewed(tmp_path_factory.mktemp("previewed"))
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(run, "install", lambda *_, **__: None)
        project.start()
        yield project, project.pages_held()
        project.stop()


@pytest.fixture
def previewed(started):
    """The preview as it began: what a test before this one left must be gone from every page."""
    project, first = started
    project.put_back()
    assert project.pages_held() == first
    return project
