"""The pages that the phone fills: job cards, and what is stored."""

from collections.abc import Iterator
from pathlib import PurePosixPath

from markupsafe import Markup

from underhoist.links import page_address, relative
from underhoist.pages.authored import purpose
from underhoist.pages.closing import closing
from underhoist.pages.html import join
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site

SHOP_GUIDE = "shop-sync"
"""Name of the page that tells a shop how to set up the exchange of cards."""


def shell_sheets(site: Site) -> Iterator[Sheet]:
    """Make the job-card page and the offline page."""
    yield _shell(
        site,
        Markup(
            '<div id="cards"{}></div>\n<noscript><p>Job cards need JavaScript: they are kept on '
            "this phone. Every procedure prints with squares to tick.</p></noscript>"
        ).format(_shop_guide(site)),
        kind="cards",
        title="Job cards",
        summary="One list for one vehicle: what to fetch, the steps, the readings, the findings.",
    )
    yield _shell(
        site,
        Markup(
            '<div id="stored"></div>\n<noscript><p>Storing pages needs JavaScript. Without it the '
            "manual is read with a signal.</p></noscript>"
        ),
        kind="offline",
        title="On this phone",
        summary="What is stored here, and can be read and computed without a signal.",
    )


def _shop_guide(site: Site) -> Markup:
    """Where the manual tells how its phones exchange cards, if it has such a page."""
    plain = site.manual.plain.values()
    guide = next((page for page in plain if PurePosixPath(page.file).stem == SHOP_GUIDE), None)
    if guide is None:
        return Markup()
    address = relative(page_address(guide.file), "cards/")
    return Markup(' data-shop-guide="{}"').format(address)


def _shell(site: Site, body: Markup, *, kind: str, title: str, summary: str) -> Sheet:
    return Sheet(
        address=f"{kind}/",
        kind=kind,
        title=title,
        summary=summary,
        searched=False,
        html=join((purpose(summary), body, closing(site))),
    )
