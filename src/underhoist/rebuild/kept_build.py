"""What a build takes over from the one before, so that it makes anew only what changed.

Files are known by the hash of what they hold, never by their times. What comes out is to the byte
what a build that keeps nothing would make.
"""

import hashlib
from collections.abc import Callable, Iterable, Iterator, Mapping
from functools import cached_property, partial
from pathlib import Path

from attrs import evolve, field, frozen

from underhoist.browser import BrowserReport
from underhoist.browser.hashes import sha
from underhoist.history import Earlier, History, earlier, record
from underhoist.links import page_address, weave
from underhoist.model import Manual, Procedure
from underhoist.pages import Sheet, Site
from underhoist.pages.card_data import Card, card_of
from underhoist.pages.every import check_addresses, makers
from underhoist.rebuild import store
from underhoist.rebuild.keeper import Keeper, Kept, Maker, Placed
from underhoist.rebuild.left import INDEX, Left, PhoneSide
from underhoist.rebuild.old_site import OldSite
from underhoist.source import Read, is_page, manual_of
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
    left: Left = field(factory=Left)


class KeptBuild:
    """The build at work: what it takes over, and what it leaves to the next."""

    def __init__(
        self, project: Path, site: Path, *, afresh: bool = False, phone: bool = False
    ) -> None:
        """Look at what is kept of the builds into this site; `afresh` leaves it alone.

        `phone` says whether the site is to have the phone's side as it is published.
        """
        self._site = site
        self._place = store.place_of(project, site)
        self._builder = store.builder()
        found = None if afresh else store.load(self._place, self._builder)
        self._old = found if isinstance(found, _Build) else _Build()
        self._reads: dict[str, tuple[str, Read]] = {}
        self._pages: dict[str, tuple[Sheet, str]] = {}
        self._new = _Build()
        self._touched: frozenset[str] = frozenset()
        self._phone = PhoneSide(self._old.left, site, wanted=phone)
        self._has_phone = phone
        self._searched: dict[str, tuple[int, str, str]] = {}
        self._of_pages: set[str] = set()
        self._again = False
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
        files = self._hashes(site.manual, site.folder)
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

    def earlier(self) -> Earlier:
        """Return the record that the old site holds: what is kept is the same and read already."""
        history = self._old.history
        if history is not None and self._holds(record.FILE):
            return Earlier(record=history.record)
        return earlier(self._site)

    def old_site(self, settings: str, manual: Manual, folder: Path, into: Path) -> OldSite | None:
        """Take over all of the old site that follows from no page; None where that is not the same.

        `settings` is all else that a page is made from; "" where that cannot be told.
        """
        old, left = self._old, self._old.left
        self._new = evolve(self._new, settings=settings)
        is_same = (
            settings and settings == old.settings and left.fixed
            and left.outside == self._phone.outside and bool(left.outside) == self._has_phone
            and _others(old.files) == _others(self._hashes(manual, folder))
        )  # fmt: skip
        site = OldSite(self._site, left.files, into)
        if not is_same or (self._has_phone and not site.holds(INDEX)):
            return None
        self._again = all(site.take(path) for path in sorted(left.fixed))
        return site if self._again else None

    def took(self, sheet: Sheet, old: OldSite) -> bool:
        """Take a page over as the old site has it, if it would come out the same."""
        if not self._is_as_before(sheet):
            return False
        before = self._old.pages[sheet.address]
        if not old.take(f"{sheet.address}index.html", before[1]):
            return False
        self._pages[sheet.address] = sheet, before[1]
        self.taken_over += 1
        return True

    def searched(self, sheet: Sheet, note: str, said: str) -> int | None:
        """Note a page that is searched; return its number in the old index if it is there as it is.

        Only a site that is taken over has the old index.
        """
        self._searched[sheet.address] = len(self._searched), note, said
        before = self._old.left.searched.get(sheet.address)
        can_tell = self._again and self._has_phone and before and before[1:] == (note, said)
        return before[0] if before and can_tell and self._is_as_before(sheet) else None

    def generated(self, files: Iterable[tuple[str, str]]) -> Iterator[tuple[str, str]]:
        """Note the files that follow from the pages, and pass them on."""
        for path, text in files:
            self._of_pages.add(path)
            yield path, text

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
        if sha(data) != self._old.pages[sheet.address][1]:
            return None
        self.taken_over += 1
        return data.decode()

    def wrote(self, sheet: Sheet, html: str) -> bytes:
        """Note what is written as a page, and return it."""
        data = html.encode("utf-8", errors="xmlcharrefreplace")
        self._pages[sheet.address] = sheet, sha(data)
        return data

    def add_phone_side(self, new: Path, tell: Callable[[str], None]) -> BrowserReport:
        """Add the phone's side as it is published. Raises BrowserError."""
        return self._phone.add(new, tell, again=self._again)

    def keep(self) -> None:
        """Keep this build for the next, now that its site stands."""
        of_pages = {*self._of_pages, *(f"{address}index.html" for address in self._pages)}
        left = self._phone.left(self._searched, of_pages, again=self._again)
        made = evolve(self._new, reads=self._reads, pages=self._pages, left=left)
        store.save(self._place, self._builder, made)

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

    def _holds(self, path: str) -> bool:
        return OldSite(self._site, self._old.left.files, self._site).holds(path)

    def _hashes(self, manual: Manual, folder: Path) -> dict[str, str]:
        """Return the hash of each file: of a page as it was read, of others as they are now."""
        return {
            file: self._reads[file][0]
            if file in self._reads
            else _hash((folder / file).read_bytes())
            for file in manual.files
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


def _others(files: Mapping[str, str]) -> dict[str, str]:
    return {file: hashed for file, hashed in files.items() if not is_page(file)}


def _hash(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()
