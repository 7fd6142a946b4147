"""Every page of the site as HTML for the theme; knows nothing of who builds the site."""

from underhoist.pages.every import sheets
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Known, Site, make_site

__all__ = ["Known", "Sheet", "Site", "make_site", "sheets"]
