"""Each folder here is a manual with faults and, in expected.txt, exactly what the check says."""

import io
from pathlib import Path

import pytest

from underhoist.check import check
from underhoist.report import write

FOLDERS = sorted(path.parent for path in Path(__file__).parent.glob("*/expected.txt"))


def test_there_are_as_many_folders_as_expected():
    assert len(FOLDERS) >= 8
    folders = {path for path in Path(__file__).parent.iterdir() if path.is_dir()}
    assert {path for path in folders if path.name != "__pycache__"} == set(FOLDERS)


@pytest.mark.parametrize("folder", FOLDERS, ids=lambda folder: folder.name)
def test_the_check_says_what_is_expected(folder, monkeypatch):
    monkeypatch.chdir(folder)
    out = io.StringIO()
    checked = check(Path())
    write("text", checked, Path(), out)
    assert out.getvalue() == (folder / "expected.txt").read_text(encoding="utf-8")
    assert checked.stops
