"""The demo site, a server that can be stopped, and a browser the size of a phone."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parent))

from empty_phone import EmptyPhone
from lean_site import make_lean
from offline_hands import STORED, WAIT, state, store_all
from playwright.sync_api import expect
from static_server import LASTS, StaticServer

expect.set_options(timeout=30_000)  # A busy machine is slow; a page that is wrong stays wrong.


@pytest.fixture(scope="session")
def site(demo_site):
    """The folder of the built demo site."""
    return demo_site


@pytest.fixture(scope="session")
def lean_site(demo_site, tmp_path_factory):
    """The folder of the demo site with little to store; nobody changes it.

    For a file of tests that store it anew each time, and start no Python: it is their `site`.
    """
    folder = tmp_path_factory.mktemp("lean") / "site"
    make_lean(folder, demo_site)
    return folder


@pytest.fixture(scope="session")
def site_url(site):
    """Address of the demo site's front page, served for as long as the tests run."""
    server = StaticServer(site, LASTS)
    yield server.url
    server.stop()


@pytest.fixture
def server(site):
    """A server of its own for one test, which may stop it."""
    server = StaticServer(site)
    yield server
    server.stop()


@pytest.fixture(scope="session")
def browser_context_args(browser_context_args):
    """A phone. Nothing is stored on it: a test of the offline store asks for `phone`.

    Its screen has one dot a pixel. Sizes are measured in pixels of the style and no test looks at
    the dots, but twice as many each way cost a tenth of all the work.
    """
    return {
        **browser_context_args,
        "viewport": {"width": 390, "height": 844},
        "has_touch": True,
        "is_mobile": True,
        "service_workers": "block",
    }


@pytest.fixture(scope="session")
def open_page(browser, browser_context_args):
    """The one page behind `same_page`."""
    context = browser.new_context(**browser_context_args)
    yield context.new_page()
    context.close()


@pytest.fixture
def same_page(open_page, browser_context_args):
    """A page that tests share which change nothing but what is put back here.

    A new one costs four times what it costs to load a page.
    """
    yield open_page
    open_page.emulate_media(media="null", color_scheme="null")
    open_page.set_viewport_size(browser_context_args["viewport"])
    open_page.evaluate("location.origin === 'null' || localStorage.clear()")


@pytest.fixture(scope="module")
def own_page(browser, browser_context_args):
    """A page for the tests of one file: what stands on it goes on from test to test."""
    context = browser.new_context(**browser_context_args)
    yield context.new_page()
    context.close()


@pytest.fixture(scope="session")
def empty_phones(browser, browser_context_args):
    """The two behind `empty_page` and `other_empty_page`."""
    phones = [EmptyPhone(browser, browser_context_args) for _ in range(2)]
    yield phones
    for phone in phones:
        phone.close()


@pytest.fixture
def empty_page(empty_phones, site_url):
    """A page of a phone on which nothing is stored; tests share it, since a new one costs more."""
    return empty_phones[0].emptied(site_url)


@pytest.fixture
def page(empty_page):
    """A test begins with an empty phone; one with a `new_page` leaves something behind."""
    return empty_page


@pytest.fixture
def other_empty_page(empty_phones, site_url):
    """The same on a second phone, which has nothing in common with the first."""
    return empty_phones[1].emptied(site_url)


@pytest.fixture
def new_page(context):
    """A page of a new phone, for a test that changes what `empty_page` cannot put back."""
    return context.new_page()


@pytest.fixture
def small_phone(page):
    """The smallest phone that the shop works with."""
    page.set_viewport_size({"width": 360, "height": 640})
    return page


@pytest.fixture
def phone(browser, browser_context_args):
    """A phone that stores the manual as a reader's does."""
    context = browser.new_context(**{**browser_context_args, "service_workers": "allow"})
    yield context
    context.close()


@pytest.fixture(scope="module")
def shop(site):
    """The server that stored the manual on the phone of this module."""
    server = StaticServer(site)
    yield server
    server.stop()


@pytest.fixture(scope="module")
def stored(browser, browser_context_args, shop):
    """A phone on which everything is stored, for the tests of one file."""
    context = browser.new_context(**{**browser_context_args, "service_workers": "allow"})
    page = context.new_page()
    store_all(page, shop)
    page.close()
    yield context
    context.close()


@pytest.fixture(scope="module")
def stored_page(stored):
    """One page on that phone, for the tests of one file."""
    return stored.new_page()


@pytest.fixture
def at_front(stored_page, shop):
    """That page at the front, all stored, its server there and its requests counted anew."""
    stored_page.goto(shop.url)
    expect(state(stored_page)).to_have_text(STORED, timeout=WAIT)
    shop.requests.clear()
    yield stored_page
    shop.stop()
    shop.start()
