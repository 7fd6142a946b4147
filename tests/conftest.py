"""The Chromium that every test with a browser takes, whichever folder it is in."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parent / "browser"))
sys.path.insert(0, str(Path(__file__).parent / "shared"))

from chromium import CHROMIUM, QUIET


@pytest.fixture(scope="session")
def base_url():
    """None: every test writes whole addresses. (The plugin's own fixture warns under pytest 9.)"""


@pytest.fixture(scope="session")
def browser_type_launch_args(browser_type_launch_args):
    """Debian's Chromium where it is installed, otherwise the one that Playwright brought."""
    found = {"executable_path": CHROMIUM} if CHROMIUM else {}
    return {**browser_type_launch_args, **found, "args": QUIET}


@pytest.fixture(scope="session")
def browser_context_args(browser_context_args):
    """A window as wide as a phone's."""
    return {**browser_context_args, "viewport": {"width": 390, "height": 844}}
