"""No page is made from another page's text: an edit of a text makes no other page stale."""

from pathlib import Path

import pytest
from attrs import evolve

from underhoist import rules
from underhoist.check import check
from underhoist.links import uses_of, weave, words_said
from underhoist.model import Page
from underhoist.pages import make_site
from underhoist.pages.every import GENERATED, makers
from underhoist.pages.portraits import painter

MANUAL = Path(__file__).parents[1] / "pages" / "manual"
WHOLE = check(MANUAL).manual
SITE = make_site(WHOLE, MANUAL, name="A manual")
FILES = [page.file for page in WHOLE.pages()]


class Unread:
    """A text that nobody may look at."""

    first_line = 1

    @property
    def text(self):
        raise AssertionError("the text of another page was read")


def blind(page, but):
    return page if page.file == but else evolve(page, body=Unread())


def manual_but(file):
    """The manual with the text of one page alone."""
    groups = ("families", "procedures", "faults", "tools", "hazards", "plain")
    return evolve(
        WHOLE,
        **{
            group: {id_: blind(page, file) for id_, page in getattr(WHOLE, group).items()}
            for group in groups
        },
    )


def links_of(manual, file):
    """The links, which were woven while all texts could be read."""
    uses = {
        page.file: tuple(
            evolve(each, thing=blind(each.thing, file)) if isinstance(each.thing, Page) else each
            for each in uses_of(WHOLE, page)
        )
        for page in WHOLE.pages()
    }
    return weave(manual, uses, {page.file: words_said(WHOLE, page) for page in WHOLE.pages()})


def site_but(file):
    manual = manual_but(file)
    links = links_of(manual, file)
    return evolve(SITE, manual=manual, links=links)


def shown(sheet):
    """All of a page but the things behind its steps, which have texts of their own."""
    steps = [evolve(step, hazards=()) for step in sheet.steps]
    return evolve(sheet, steps=tuple(steps))


@pytest.mark.parametrize("name", [*FILES, *GENERATED])
def test_a_page_is_made_from_no_other_pages_text(name):
    site = site_but(name)
    [maker] = [each for each in makers(site.manual) if each.name == name]
    assert [*map(shown, maker.make(site))] == [*map(shown, maker.make(SITE))]


@pytest.mark.parametrize("file", FILES)
def test_what_a_page_comes_to_follows_from_its_own_text(file):
    manual = manual_but(file)
    [page] = [each for each in manual.pages() if each.file == file]
    assert rules.of_page(manual, page) == rules.of_page(WHOLE, page)
    assert len(uses_of(manual, page)) == len(uses_of(WHOLE, page))
    assert words_said(manual, page) == words_said(WHOLE, page)
    painted = painter(manual, links_of(manual, file), MANUAL).portrait(page)
    assert painted == painter(WHOLE, weave(WHOLE), MANUAL).portrait(page)
