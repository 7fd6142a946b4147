"""Each folder here is a manual in which nothing is to be found; so is the demo manual."""

from pathlib import Path

import pytest

from underhoist.check import check
from underhoist.project import pages_folder

HERE = Path(__file__).parent
FOLDERS = sorted(path for path in HERE.iterdir() if path.is_dir() and path.name != "__pycache__")
DEMO = HERE.parents[1] / "procedures"


def test_there_are_as_many_folders_as_expected():
    assert len(FOLDERS) >= 2


@pytest.mark.parametrize("folder", FOLDERS, ids=lambda folder: folder.name)
def test_nothing_is_found(folder):
    checked = check(pages_folder(folder))
    assert checked.findings == ()
    assert checked.pages >= 8


def test_nothing_stops_the_demo_manual():
    checked = check(DEMO)
    stops = [f"{each.at} {each.code}: {each.wrong}" for each in checked.findings]
    assert checked.stops == 0, "\n".join(stops)
    assert len(checked.manual.procedures) >= 14
