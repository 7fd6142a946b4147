"""Each kind of page, loaded once for all that is asked of it: weight, frame, width, thumb, axe.

A calculator's or a complaint's page is looked at with its answer, which the desk's Python gives.
"""

import json
from pathlib import Path

import pytest
from attrs import frozen
from axe_core import findings, settle
from desk_answers import answered_at_the_desk
from page_weight import weight
from playwright.sync_api import Page

pytestmark = pytest.mark.browser

KINDS: dict[str, str] = json.loads(Path(__file__).with_name("kinds.json").read_text())
ANSWERED = ("fault", "torque-units", "staged-fill", "shift-check", "shift-map", "band-set")
"""Kinds that Python answers on; the first answer is waited for."""
WITH_ENTRIES = ("torque-units", "staged-fill", "shift-check", "search")
BUDGET = 110_000
"""Bytes of HTML, CSS and JS of one page, compressed, without the calculators' runtime."""
HIGH = """all => all.map(e => e.getBoundingClientRect()).filter(({ width }) => width > 0)
    .map(({ height }) => height)"""


@frozen
class Kind:
    """A kind's page, open, and what it weighed on its way."""

    name: str
    page: Page
    weighed: dict[str, int]


@pytest.fixture(scope="module", params=KINDS)
def kind(request, own_page, site, site_url):
    """Each kind in turn; pytest runs all tests of one before it goes on to the next."""
    name = request.param
    if name in ANSWERED:
        answered_at_the_desk(own_page)
    weighed = weight(own_page, site, site_url, KINDS[name])
    if name in ANSWERED:
        own_page.wait_for_selector("[data-answered=yes]")
    settle(own_page)
    yield Kind(name, own_page, weighed)
    own_page.unroute_all()


def test_a_page_keeps_to_its_weight(kind):
    assert len(kind.weighed) >= 3, "page, styles and scripts were not all seen"
    assert sum(kind.weighed.values()) <= BUDGET, kind.weighed


def test_one_heading_and_a_handful_of_links_in_head_and_foot(kind):
    """However many procedures there are."""
    page = kind.page
    assert page.locator("h1").count() == 1
    assert page.locator("header a, footer.uh-foot a").count() == 8
    assert page.locator("nav.uh-trail a").count() <= 4
    links = page.locator("header nav a").all_text_contents()
    assert links == ["Manual", "Faults", "Calculators", "Job cards", "Search"]
    assert page.locator("p#offline-state[role=status]").count() == 1


@pytest.fixture
def width_put_back(own_page, browser_context_args):
    yield
    own_page.set_viewport_size(browser_context_args["viewport"])


@pytest.mark.usefixtures("width_put_back")
def test_a_page_is_no_wider_than_a_phone(kind):
    for width in (320, 360, 390):
        kind.page.set_viewport_size({"width": width, "height": 640})
        assert kind.page.evaluate("document.documentElement.scrollWidth") <= width


@pytest.mark.parametrize("kind", WITH_ENTRIES, indirect=True)
def test_entries_and_buttons_fit_a_thumb(kind):
    inside = "main button, main input, main select, main summary"
    found = kind.page.eval_on_selector_all(inside, HIGH)
    assert len(found) >= 2
    assert all(high >= 48 for high in found), found


def test_axe_finds_nothing(kind):
    assert findings(kind.page) == []
