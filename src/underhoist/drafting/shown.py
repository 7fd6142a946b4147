"""A draft as the page that the build would make of it, as far as it has come."""

from markupsafe import Markup

from underhoist.model import Page
from underhoist.pages.authored import prose
from underhoist.pages.here import Here
from underhoist.pages.html import join
from underhoist.pages.one import page_sheet
from underhoist.pages.site import Site

UNFINISHED = (
    "Only the text is shown: the rest of the page follows when the facts on top have no finding."
)
PART = "Some facts on top cannot be read. What can be is shown, and the order that comes of it."
HIDDEN = "The page cannot be shown yet. Mend what the findings name first."


def shown(site: Site, page: Page) -> Markup:
    """Write the page; where its facts do not suffice for it, its text and a line that says so.

    Pages are made for a manual without a fault. A draft may have any, so what goes wrong in the
    making is no error of the program: the findings say what is the matter.
    """
    try:
        sheet = page_sheet(site, page)
    except Exception:
        sheet = None
    if sheet is None:
        return _text(site, page)
    return join((Markup("<h1>{}</h1>").format(sheet.title), sheet.html))


def _text(site: Site, page: Page) -> Markup:
    try:
        words = join((prose(Here.on(site, page), without=("Steps",)), _steps(site, page)))
    except Exception:
        return Markup("<p>{}</p>").format(HIDDEN)
    return join((Markup("<p>{}</p>").format(UNFINISHED), words))


def _steps(site: Site, page: Page) -> Markup:
    """Write the steps without what they take from the facts."""
    steps = [step for section in Here.on(site, page).sections for step in section.steps]
    items = join(
        Markup(
            '<li class="uh-step"><div class="uh-step__number">{}</div>\n'
            '<div class="uh-step__body">\n{}\n{}\n</div></li>'
        ).format(number, Markup(step.do_html), Markup(step.more_html))  # noqa: S704 - our own reader's
        for number, step in enumerate(steps, 1)
    )
    return (
        Markup('<h2>Steps</h2>\n<ol class="uh-steps">\n{}\n</ol>').format(items)
        if items
        else Markup()
    )
