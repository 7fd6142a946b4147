"""The phone side of a built manual: calculators, fonts, offline store, home-screen icon."""

from underhoist.browser.browser_error import BrowserError
from underhoist.browser.install import BrowserReport, install

__all__ = ["BrowserError", "BrowserReport", "install"]
