"""The demo manual checked once, and where the packages of the phone side are."""

import os
from pathlib import Path

import pytest

from underhoist.bound import choice, headless, source
from underhoist.pages import sheets
from underhoist.project import Unusable

ROOT = Path(__file__).resolve().parents[2]


@pytest.fixture(scope="session")
def demo():
    found = source(ROOT)
    assert found.site is not None, "the demo manual has a finding that stops"
    return found.site


@pytest.fixture(scope="session", autouse=True)
def made_sheets(demo):
    """The demo's pages are made once, whatever is chosen of them: they cannot be changed."""
    made = tuple(sheets(demo))
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(choice, "sheets", lambda site: made if site is demo else sheets(site))
        yield made


@pytest.fixture(scope="session")
def modules():
    return ROOT / "node_modules"


@pytest.fixture(scope="session")
def printer(playwright):
    """A Chromium to print with: one that is installed, else the one that Playwright brought."""
    try:
        return headless.chromium()
    except Unusable:
        os.environ[headless.VARIABLE] = playwright.chromium.executable_path
        return headless.chromium()
