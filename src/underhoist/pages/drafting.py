"""The page on which a page is written."""

from markupsafe import Markup

from underhoist.pages.authored import purpose
from underhoist.pages.closing import closing
from underhoist.pages.html import join
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site

ADDRESS = "drafting/"

_PLACE = Markup(
    '<div id="drafts"></div>\n<noscript><p>Writing here needs JavaScript: drafts are kept on this '
    "device. Without it a page is a text file, and <code>underhoist check</code> reads it.</p>"
    "</noscript>"
)


def drafting_sheet(site: Site) -> Sheet:
    """Make the page, empty but for what it says without script."""
    summary = (
        "Write a page of this manual, or change one: what is wrong with it is said at once, and "
        "the finished page stands beside it. No signal is needed."
    )
    return Sheet(
        address=ADDRESS,
        kind="drafting",
        title="Write a page",
        summary=summary,
        html=join((purpose(summary), _PLACE, closing(site))),
    )
