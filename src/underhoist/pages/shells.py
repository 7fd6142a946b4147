"""The pages that the phone fills: job cards, and what is stored."""

from collections.abc import Iterator

from markupsafe import Markup

from underhoist.pages.authored import purpose
from underhoist.pages.closing import closing
from underhoist.pages.html import join
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site


def shell_sheets(site: Site) -> Iterator[Sheet]:
    """The job-card page and the offline page."""
    yield _shell(
        site,
        "cards",
        "Job cards",
        "One list for one vehicle: what to fetch, the steps, the readings, what was found.",
        "cards",
        "Job cards need JavaScript: they are kept on this phone. Every procedure prints with "
        "squares to tick.",
    )
    yield _shell(
        site,
        "offline",
        "On this phone",
        "What is stored on this phone, and can be read and computed without a signal.",
        "stored",
        "Storing pages needs JavaScript. Without it the manual is read with a signal.",
    )


def _shell(  # noqa: PLR0913 - the two calls above read like a table
    site: Site, kind: str, title: str, summary: str, place: str, without_script: str
) -> Sheet:
    body = Markup('<div id="{}"></div>\n<noscript><p>{}</p></noscript>').format(place, without_script)
    return Sheet(
        address=f"{kind}/",
        kind=kind,
        title=title,
        summary=summary,
        html=join((purpose(summary), body, closing(site))),
    )
