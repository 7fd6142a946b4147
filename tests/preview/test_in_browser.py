"""The previewed page in a browser: it follows the file, stays at its spot, leaves others alone."""

import os
import shutil

import pytest

pytestmark = pytest.mark.browser
CHROMIUM = (
    os.environ.get("UNDERHOIST_CHROMIUM")
    or shutil.which("chromium-headless-shell")
    or shutil.which("chromium")
)
QUIET = ["--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking"]


@pytest.fixture(scope="session")
def base_url():
    """None: every test writes whole addresses."""


@pytest.fixture(scope="session")
def browser_type_launch_args(browser_type_launch_args):
    found = {"executable_path": CHROMIUM} if CHROMIUM else {}
    return {**browser_type_launch_args, **found, "args": QUIET}


@pytest.fixture(scope="session")
def browser_context_args(browser_context_args):
    return {**browser_context_args, "viewport": {"width": 390, "height": 844}}


def test_it_follows_and_stays_at_its_spot(previewed, page):
    page.goto(f"http://127.0.0.1:{previewed.port}/jobs/set-band/")
    page.wait_for_timeout(300)
    page.evaluate("scrollTo(0, 500)")
    previewed.replace("jobs/set-band.md", "Judge it on the road.", "Judge it on a quiet road.")
    page.wait_for_selector("text=Judge it on a quiet road.")
    page.wait_for_function("() => Math.abs(scrollY - 500) < 2")


def test_a_page_that_reads_as_before_is_not_loaded_again(previewed, page):
    page.goto(f"http://127.0.0.1:{previewed.port}/tools/lamp/")
    page.wait_for_timeout(300)
    page.evaluate("window.stays = true")
    previewed.replace("jobs/set-band.md", "Wipe the case.", "Polish the case.")
    page.wait_for_timeout(700)
    assert page.evaluate("window.stays") is True
    previewed.replace("jobs/set-band.md", "<torque:band-seat>", "<torque:band-set>")
    page.wait_for_selector("text=in the manual")
    assert page.evaluate("window.stays === undefined")
