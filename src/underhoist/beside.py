"""The files beside the pages: what cards, faults, the drafting page and the search start from."""

from collections.abc import Iterable, Iterator, Mapping

from underhoist.drafting.gather import drafting_files
from underhoist.history.record import Lines
from underhoist.pages import Sheet, Site
from underhoist.pages.card_data import Card, card_files, cards_of
from underhoist.pages.changes import change_files
from underhoist.pages.complaint_data import complaint_files
from underhoist.search import Before, search_files


def beside(
    site: Site,
    made: Mapping[str, Sheet],
    cards: Iterable[Card] | None = None,
    before: Before | None = None,
) -> Iterator[tuple[str, str]]:
    """Yield path and text of each file; `made` are the finished pages by their address.

    `cards` are the procedures' cards where they are there already; `before` knows the words of
    pages that the old search has as they are.
    """
    yield from card_files(site, cards_of(site, made) if cards is None else cards)
    yield from without_cards(site, made, before)


def without_cards(
    site: Site,
    made: Mapping[str, Sheet],
    before: Before | None = None,
    lines: Lines | None = None,
) -> Iterator[tuple[str, str]]:
    """Yield all but the cards; `lines` are what is known of the record of the builds."""
    yield from complaint_files(site, made)
    yield from change_files(site, lines)
    yield from drafting_files(site)
    yield from search_files(site, made, before)
