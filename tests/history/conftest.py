"""Two states of a small manual and what is told of their difference."""

import shutil
from pathlib import Path

import pytest

from underhoist.check import check
from underhoist.history import compare, key_of
from underhoist.links import weave
from underhoist.pages.portraits import painter

MANUAL = Path(__file__).parents[1] / "pages" / "manual"


def portraits(folder):
    """Every page's portrait by its key."""
    manual = check(folder).manual
    assert not manual.unread, manual.unread
    paint = painter(manual, weave(manual), folder)
    return {key_of(page): paint.portrait(page) for page in manual.pages()}


class Edited:
    """A copy of the small manual that a test changes."""

    def __init__(self, folder):
        self.folder = Path(shutil.copytree(MANUAL, folder))

    def replace(self, file, *replacements):
        path = self.folder / file
        text = path.read_text(encoding="utf-8")
        for old, new in replacements:
            assert old in text, old
            text = text.replace(old, new, 1)
        path.write_text(text, encoding="utf-8")

    def changes(self, key):
        return compare(portraits(MANUAL)[key], portraits(self.folder)[key])

    def words(self, key):
        return [change.words for change in self.changes(key)]


@pytest.fixture
def edited(tmp_path):
    return Edited(tmp_path / "manual")
