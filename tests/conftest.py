"""What tests of more than one folder take: the demo manual's site, Chromium, and the order."""

from __future__ import annotations

import os
import subprocess
import sys
from functools import cache
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parent / "browser"))
sys.path.insert(0, str(Path(__file__).parent / "shared"))

from chromium import CHROMIUM, QUIET
from hypothesis import HealthCheck, settings
from made_once import made_once

# A loaded machine makes a slow draw now and then; that says nothing about what is tested.
settings.register_profile("loaded", deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.load_profile("loaded")

ROOT = Path(__file__).resolve().parent.parent
HERE = Path(__file__).parent
SHORT = (HERE / "calculators", HERE / "rules")
"""Folders of many files that take a second each: they fill up what is left at the end."""


@pytest.hookimpl(tryfirst=True)
def pytest_collection_modifyitems(items):
    """What takes longest goes first, so that no process is left alone with it at the end."""
    items.sort(key=turn)


def turn(item):
    """When a test has its turn: those with a browser first."""
    if item.get_closest_marker("browser"):
        return 0
    return 2 if is_short(item.path) else 1


@cache
def is_short(file):
    """Whether the file is of a folder of short ones: asked once a file, not once a test."""
    return any(file.is_relative_to(folder) for folder in SHORT)


@pytest.fixture(scope="session")
def demo_site(tmp_path_factory):
    """The folder of the built demo manual, of one build for all processes; nobody changes it.

    UNDERHOIST_TEST_SITE names one that is built already, as `make test` builds it.
    """
    own = tmp_path_factory.getbasetemp()
    run = own.parent if "PYTEST_XDIST_WORKER" in os.environ else own
    given = os.environ.get("UNDERHOIST_TEST_SITE")
    folder = Path(given) if given else made_once(run / "demo-site", build_demo)
    before = stamps(folder)
    yield folder
    assert stamps(folder) == before, "a test changed the site that all tests share"


def build_demo(folder):
    """Build the demo manual; what went wrong, or nothing."""
    command = [sys.executable, "-m", "underhoist", "build", ".", "--site", str(folder)]
    built = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    return built.stdout + built.stderr if built.returncode else ""


def stamps(folder):
    """Each file's size and the time when it was written last."""
    found = {path: path.stat() for path in folder.rglob("*") if path.is_file()}
    return {path: (each.st_size, each.st_mtime_ns) for path, each in found.items()}


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
