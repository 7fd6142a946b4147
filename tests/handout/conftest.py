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
    """The demo, for the tests that ask for it; its pages are made once, whatever is chosen."""
    site = source(ROOT).site
    assert site is not None, "the demo manual has a finding that stops"
    made = tuple(sheets(site))  # they cannot be changed
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(choice, "sheets", lambda asked: made if asked is site else sheets(asked))
        yield site


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
