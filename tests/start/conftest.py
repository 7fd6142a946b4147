"""A new manual in a folder of its own, and the command line."""

import pytest
from click.testing import CliRunner

from underhoist.cli import main


class Made:
    """A new manual."""

    def __init__(self, folder):
        self.folder = folder
        self.pages = folder / "procedures"

    def run(self, *words, **more):
        return CliRunner().invoke(main, [words[0], str(self.folder), *words[1:]], **more)

    def draft(self, *pairs):
        return self.run("draft", *(word for pair in pairs for word in ("--answer", pair)))

    def files(self):
        return {
            path.relative_to(self.folder).as_posix(): path.read_bytes()
            for path in self.folder.rglob("*")
            if path.is_file()
        }


@pytest.fixture
def made(tmp_path):
    new = Made(tmp_path / "my manual")
    result = new.run("init")
    assert result.exit_code == 0, result.output
    return new
