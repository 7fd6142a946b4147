"""The phone side of a built manual: calculators, fonts, offline store, home-screen icon."""

from underhoist.browser.browser_error import BrowserError
from underhoist.browser.install import BrowserReport, install
from underhoist.browser.search_index import renew_search

__all__ = ["BrowserError", "BrowserReport", "install", "renew_search"]
