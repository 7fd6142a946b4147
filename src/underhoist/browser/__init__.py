"""The phone side of a built manual: calculators, fonts, offline store, home-screen icon."""

from underhoist.browser.browser_error import BrowserError
from underhoist.browser.install import Before, BrowserReport, install, install_again
from underhoist.browser.search_index import renew_search

__all__ = ["Before", "BrowserError", "BrowserReport", "install", "install_again", "renew_search"]
