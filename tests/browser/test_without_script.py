"""Every kind of page can be read before, and without, any script."""

import json
from pathlib import Path

import pytest

pytestmark = pytest.mark.browser

KINDS = json.loads(Path(__file__).with_name("kinds.json").read_text(encoding="utf-8"))


@pytest.fixture(scope="module")
def plain(browser, browser_context_args):
    """A page in a browser that runs no script."""
    context = browser.new_context(**browser_context_args, java_script_enabled=False)
    yield context.new_page()
    context.close()


@pytest.mark.parametrize("kind", KINDS)
def test_the_text_stands_there_without_a_script(plain, site_url, kind):
    plain.goto(site_url + KINDS[kind])
    assert plain.locator("h1").is_visible()
    assert len(plain.locator("main").inner_text()) > 150
