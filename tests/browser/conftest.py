"""The demo site built once, a server that can be stopped, and a browser the size of a phone."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(Path(__file__).parent))

from static_server import StaticServer  # noqa: E402

CHROMIUM = os.environ.get("UNDERHOIST_CHROMIUM") or shutil.which("chromium")
QUIET = [
    "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync",
]  # fmt: skip


@pytest.fixture(scope="session")
def site(tmp_path_factory):
    """The folder of the built demo site. UNDERHOIST_TEST_SITE names one that is built already."""
    given = os.environ.get("UNDERHOIST_TEST_SITE")
    if given:
        return Path(given)
    folder = tmp_path_factory.mktemp("built") / "site"
    command = [sys.executable, "-m", "underhoist", "build", str(ROOT), "--site", str(folder)]
    built = subprocess.run(command, capture_output=True, text=True, check=False)
    assert built.returncode == 0, built.stdout + built.stderr
    return folder


@pytest.fixture(scope="session")
def site_url(site):
    """Address of the demo site's front page, served for as long as the tests run."""
    server = StaticServer(site)
    yield server.url
    server.stop()


@pytest.fixture
def server(site):
    """A server of its own for one test, which may stop it."""
    server = StaticServer(site)
    yield server
    server.stop()


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
    """A phone. Nothing is stored on it: a test of the offline store asks for `phone`."""
    return {
        **browser_context_args,
        "viewport": {"width": 390, "height": 844},
        "device_scale_factor": 2,
        "has_touch": True,
        "is_mobile": True,
        "service_workers": "block",
    }


@pytest.fixture
def phone(browser, browser_context_args):
    """A phone that stores the manual as a reader's does."""
    context = browser.new_context(**{**browser_context_args, "service_workers": "allow"})
    yield context
    context.close()
