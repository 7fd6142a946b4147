"""What a build takes over from the one before, so that it makes anew only what changed.

Files are known by the hash of what they hold, never by their times. What comes out is to the byte
what a build that keeps nothing would make.
"""

import hashlib
from collections.abc import Callable, Iterable, Iterator, Mapping
from functools import cached_property, partial
from pathlib import Path

from attrs import evolve, field, frozen

from underhoist.history import History
from underhoist.links import page_address, weave
from underhoist.model import Manual, Procedure
from underhoist.pages import Sheet, Site
from underhoist.pages.card_data import Card, card_of
from underhoist.pages.every import check_addresses, makers
from underhoist.rebuild import store
from underhoist.rebuild.keeper import Keeper, Kept, Maker, Placed
from underhoist.source import Read, manual_of
from underhoist.source import read as read_page


@frozen
class _Build:
    """A build as it is kept."""

    reads: Mapping[str, tuple[str, Read]] = field(factory=dict[str, tuple[str, Read]])
    """Each page's hash and what was read of it."""
    files: Mapping[str, str] = field(factory=dict[str, str])
    """The hash of each file of the manual."""
    name: str = ""
    demo: bool = False
    history: History | None = None
    sheets: Mapping[str, Kept[Sheet]] = field(factory=dict[str, Kept[Sheet]])
    cards: Mapping[str, Kept[Card]] = field(factory=dict[str, Kept[Card]])
    settings: str = ""
    pages: Mapping[str, tuple[Sheet, str]] = field(factory=dict[str, tuple[Sheet, str]])
    """What each page was written from and the hash of its file."""


class KeptBuild:
    """The build at work: what it takes over, and what it leaves to the next."""

    def __init__(self, project: Path, site: Path, *, afresh: bool = False) -> None:
        """Look at what is kept of the builds into this site; `afresh` leaves it alone."""
        self._site = site
        self._place = store.place_of(project, site)
        self._builder = store.builder()
        found = None if afresh else store.load(self._place, self._builder)
        self._old = found if isinstance(found, _Build) else _Build()
        self._reads: dict[str, tuple[str, Read]] = {}
        self._pages: dict[str, tuple[Sheet, str]] = {}
        self._new = _Build()
        self._touched: frozenset[str] = frozenset()
        self.taken_over = 0
        """Pages that are as the build before wrote them."""

    def read(self, file: str, data: bytes) -> Read:
        """Read a page, if it is another than before."""
        digest = _hash(data)
        known = self._old.reads.get(file)
        made = known[1] if known and known[0] == digest else read_page(file, data)
        self._reads[file] = digest, made
        return made

    def sheets(self, site: Site) -> Iterable[Sheet]:
        """Make the pages that would come out otherwise; return all in their order.

        Raises Unusable where two pages would stand in one place.
        """
        check_addresses(site.manual)
        files = self._hashes(site)
        self._touched = _differing(self._old.files, files)
        made = self._renewed(self._old.sheets, _page_makers, site, self._touched)
        self._new = evolve(
            self._new, files=files, name=site.name, demo=site.demo, history=site.history,
            sheets=made.kept,
        )  # fmt: skip
        return made.things.values()

    def cards(self, site: Site, made: Mapping[str, Sheet]) -> Iterable[Card]:
        """Make the cards that would come out otherwise; return all in their order.

        `made` are the pages that `sheets` gave, by their address.
        """
        pages = {each.file: made[page_address(each.file)] for each in _procedures(site)}
        others = {file for file, sheet in pages.items() if not self._is_as_before(sheet)}

        def card_makers(site: Site) -> Iterator[Maker[Card]]:
            for each in _procedures(site):
                yield _CardMaker(each.file, partial(_card, each.id, pages[each.file]))

        cards = self._renewed(self._old.cards, card_makers, site, self._touched | others)
        self._new = evolve(self._new, cards=cards.kept)
        return cards.things.values()

    def html(self, sheet: Sheet, settings: str) -> str | None:
        """Return the whole page as the old site has it, if it would come out the same.

        `settings` is all else that it is made from; "" where that cannot be told.
        """
        self._new = evolve(self._new, settings=settings)
        if not settings or settings != self._old.settings or not self._is_as_before(sheet):
            return None
        try:
            data = (self._site / sheet.address / "index.html").read_bytes()
        except OSError:
            return None
        if _hash(data) != self._old.pages[sheet.address][1]:
            return None
        self.taken_over += 1
        return data.decode()

    def wrote(self, sheet: Sheet, html: str) -> None:
        """Note what was written as a page."""
        data = html.encode("utf-8", errors="xmlcharrefreplace")
        self._pages[sheet.address] = sheet, _hash(data)

    def keep(self) -> None:
        """Keep this build for the next, now that its site stands."""
        store.save(
            self._place, self._builder, evolve(self._new, reads=self._reads, pages=self._pages)
        )

    @property
    def made_anew(self) -> int:
        """Pages that were made anew."""
        return len(self._pages) - self.taken_over

    def _is_as_before(self, sheet: Sheet) -> bool:
        before = self._old.pages.get(sheet.address)
        return before is not None and (before[0] is sheet or before[0] == sheet)

    def _renewed[T: Placed](
        self,
        kept: Mapping[str, Kept[T]],
        makers_of: Callable[[Site], Iterable[Maker[T]]],
        site: Site,
        touched: frozenset[str],
    ) -> Keeper[T]:
        """Make what is not kept or would come out otherwise."""
        keeper = Keeper[T](makers_of)
        if kept:
            keeper.restore(self._before(site), kept)
        for _ in keeper.renew(site, touched):
            pass
        return keeper

    def _before(self, site: Site) -> Site:
        """Return what the old pages were made from."""
        old = self._old
        return evolve(
            site, manual=self._old_manual, links=weave(self._old_manual), name=old.name,
            demo=old.demo, history=old.history,
        )  # fmt: skip

    @cached_property
    def _old_manual(self) -> Manual:
        reads = (self._old.reads[file][1] for file in sorted(self._old.reads))
        return manual_of(reads, self._old.files)

    def _hashes(self, site: Site) -> dict[str, str]:
        """Return the hash of each file: of a page as it was read, of others as they are now."""
        return {
            file: self._reads[file][0]
            if file in self._reads
            else _hash((site.folder / file).read_bytes())
            for file in site.manual.files
        }


@frozen
class _CardMaker:
    """Makes the card of one procedure, known by the file of its page."""

    name: str
    make: Callable[[Site], Iterable[Card]]


def _page_makers(site: Site) -> Iterable[Maker[Sheet]]:
    return makers(site.manual)


def _card(id_: str, sheet: Sheet, site: Site) -> Iterable[Card]:
    return (card_of(site, site.manual.procedures[id_], sheet),)


def _procedures(site: Site) -> Iterable[Procedure]:
    return site.manual.procedures.values()


def _differing(old: Mapping[str, str], new: Mapping[str, str]) -> frozenset[str]:
    """Name the files that are new, other or gone."""
    return frozenset(file for file in old.keys() | new.keys() if old.get(file) != new.get(file))


def _hash(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()
