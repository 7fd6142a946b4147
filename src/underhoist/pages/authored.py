"""What all pages that somebody wrote have in common."""

from markupsafe import Markup

from underhoist.links import page_address
from underhoist.markdown import Section
from underhoist.model import Page
from underhoist.pages.closing import closing
from underhoist.pages.here import Here
from underhoist.pages.html import join
from underhoist.pages.kinds import kind_of, list_of
from underhoist.pages.revisions import changes_section, revision_of, since_of
from underhoist.pages.sheet import Sheet


def sheet(here: Here, page: Page, *parts: str) -> Sheet:
    """Make the finished page: its purpose, its parts, the closing lines."""
    site = here.site
    above = list_of(page)
    return Sheet(
        address=page_address(page.file),
        kind=kind_of(page),
        title=page.title.value,
        summary=page.summary.value,
        html=join(
            (purpose(page.summary.value), *parts, changes_section(here, page), closing(site))
        ),
        trail=(above,) if above else (),
        revision=revision_of(site, page),
        since=since_of(site, page),
        author=page.author.value if page.author else None,
    )


def purpose(words: str) -> Markup:
    """Write what the page is for, in one sentence."""
    return Markup('<p class="uh-purpose">{}</p>').format(words)


def prose(here: Here, *, without: tuple[str, ...] = ()) -> Markup:
    """Write the page's own text, the named sections left out."""
    left_out = {name.casefold() for name in without}
    return join(
        _written(section)
        for section in here.sections
        if (section.heading or "").casefold() not in left_out
    )


def words_of(here: Here, heading: str) -> Markup:
    """Write the text of one section without its heading; nothing where there is no such section."""
    return join(
        Markup(section.html)  # noqa: S704 - made by our own reader, which lets no raw HTML in
        for section in here.sections
        if (section.heading or "").casefold() == heading.casefold()
    )


def _written(section: Section) -> Markup:
    html = Markup(section.html)  # noqa: S704 - likewise
    if section.heading is None:
        return html
    title = Markup('<h2 id="{}">{}</h2>').format(section.id, section.heading)
    return Markup('<section class="uh-prose">\n{}\n{}\n</section>').format(title, html)
