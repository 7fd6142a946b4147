"""What a build takes over from the one before, so that it makes anew only what changed.

Files are known by the hash of what they hold, never by their times. What comes out is to the byte
what a build that keeps nothing would make.
"""

import shutil
from collections.abc import Callable, Iterable, Iterator, Mapping
from pathlib import Path

from attrs import evolve

from underhoist.browser import BrowserReport
from underhoist.browser.hashes import sha
from underhoist.finding import Finding
from underhoist.history import Earlier, earlier, record
from underhoist.model import Manual
from underhoist.pages import Known, Sheet, Site
from underhoist.pages.card_data import Card
from underhoist.pages.every import check_addresses
from underhoist.rebuild.kept_manual import KeptManual, differing
from underhoist.rebuild.kept_record import renew_lines, with_pages
from underhoist.rebuild.left import INDEX, PhoneSide
from underhoist.rebuild.making import Making
from underhoist.rebuild.old_site import OldSite
from underhoist.rebuild.parted import Parted
from underhoist.rebuild.state import Memory, State
from underhoist.source import Read, is_page


class KeptBuild:
    """The build at work: what it takes over, and what it leaves to the next."""

    def __init__(
        self, project: Path, site: Path, *, afresh: bool = False, phone: bool = False
    ) -> None:
        """Look at what is kept of the builds into this site; `afresh` leaves it alone.

        `phone` says whether the site is to have the phone's side as it is published. Everything
        here raises DamagedError where what is kept turns out to be damaged.
        """
        self._site = site
        self._memory = Memory(project, site)
        old = State() if afresh else self._memory.load()
        self.lines: Parted[tuple[record.Kept, str]] = self._memory.opened(old.record)
        """The lines of the record as the old site has it, each with its page."""
        self._old = evolve(old, history=with_pages(old.history, self.lines))
        self._manual = KeptManual(self._old.files, self._memory.opened(self._old.reads))
        self._making = Making(self._memory, self._old, lambda: self._manual.old)
        self._new = State()
        self._phone = PhoneSide(self._old.left, site, wanted=phone)
        self._has_phone = phone
        self._pages: dict[str, str] = {}
        self._record = ""
        self._searched: dict[str, tuple[int, str, str]] = {}
        self._of_pages: set[str] = set()
        self._taken: OldSite | None = None
        self.taken_over = 0
        """Pages that are as the build before wrote them."""

    def read(self, file: str, data: bytes) -> Read:
        """Read a page, if it is another than before."""
        return self._manual.read(file, data)

    def findings(self, manual: Manual) -> Iterable[Finding]:
        """Apply the rules to the manual that was read."""
        return self._making.findings(manual, self._manual.touched)

    def known(self, manual: Manual, folder: Path, before: Earlier | None) -> Known:
        """Return what the pages name and say; they are compared with the record `before`."""
        self._new = evolve(self._new, files=self._manual.files(manual, folder))
        old = self._old.history
        same = old is not None and before is not None and before.record is old.record
        return self._making.known(manual, folder, self._touched, same_record=same)

    def sheets(self, site: Site) -> Mapping[str, Sheet]:
        """Make the pages that would come out otherwise; return all by their address, in order.

        Raises Unusable where two pages would stand in one place.
        """
        check_addresses(site.manual)
        self._new = evolve(self._new, name=site.name, demo=site.demo, history=site.history)
        return self._making.sheets(site, self._touched)

    def cards(self, site: Site, made: Mapping[str, Sheet]) -> Mapping[str, Card]:
        """Make the cards that would come out otherwise; return all by their address, in order.

        `made` are the pages that `sheets` gave.
        """
        return self._making.cards(site, self._touched, made)

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
            and _others(old.files) == _others(self._manual.files(manual, folder))
        )  # fmt: skip
        site = OldSite(self._site, left.files, into)
        if not is_same or (self._has_phone and not site.holds(INDEX)):
            return None
        if not all(map(site.holds, left.fixed)):
            return None
        site.begin_with(self._memory.spare)
        for path in sorted(left.fixed):
            site.take(path)
        self._taken = site
        return site

    def took(self, address: str, old: OldSite) -> bool:
        """Take a page over as the old site has it, if it would come out the same."""
        hashed = self._as_written(address)
        if not hashed or not old.take(f"{address}index.html", hashed):
            return False
        self._pages[address] = hashed
        self.taken_over += 1
        return True

    def took_card(self, address: str, old: OldSite) -> bool:
        """Take a card over as the old site has it, if it would come out the same."""
        self._of_pages.add(address)
        return self._making.is_as_before(address) and old.take(address)

    def number(self, address: str, note: str, said: str) -> int | None:
        """Return the number in the old index of a page that is there as it is, and is searched.

        Only a site that is taken over has the old index.
        """
        before = self._old.left.searched.get(address)
        can_tell = self._taken and self._has_phone and before and before[1:] == (note, said)
        if not before or not can_tell or not self._as_written(address):
            return None
        return before[0]

    def is_unsearched(self, address: str) -> bool:
        """Whether the page is as before and was not searched then."""
        return bool(self._as_written(address)) and address not in self._old.left.searched

    def searched(self, address: str, note: str, said: str) -> None:
        """Note a page that is searched."""
        self._searched[address] = len(self._searched), note, said

    def generated(self, files: Iterable[tuple[str, str]]) -> Iterator[tuple[str, str]]:
        """Note the files that follow from the pages, and pass them on."""
        for path, text in files:
            self._of_pages.add(path)
            if path == record.FILE:
                self._record = text
            yield path, text

    def html(self, sheet: Sheet, settings: str) -> str | None:
        """Return the whole page as the old site has it, if it would come out the same.

        `settings` is all else that it is made from; "" where that cannot be told.
        """
        self._new = evolve(self._new, settings=settings)
        hashed = self._as_written(sheet.address)
        if not settings or settings != self._old.settings or not hashed:
            return None
        try:
            data = (self._site / sheet.address / "index.html").read_bytes()
        except OSError:
            return None
        if sha(data) != hashed:
            return None
        self.taken_over += 1
        return data.decode()

    def wrote(self, address: str, html: str) -> bytes:
        """Note what is written as a page, and return it."""
        data = html.encode("utf-8", errors="xmlcharrefreplace")
        self._pages[address] = sha(data)
        return data

    def add_phone_side(self, new: Path, tell: Callable[[str], None]) -> BrowserReport:
        """Add the phone's side as it is published. Raises BrowserError."""
        return self._phone.add(new, tell, self._taken)

    @property
    def spare(self) -> Path | None:
        """Where the old site is to be kept once it is replaced; None where that helps nobody."""
        return self._memory.spare if self._taken else None

    def keep(self) -> None:
        """Keep this build for the next, now that its site stands."""
        of_pages = {*self._of_pages, *(f"{address}index.html" for address in self._pages)}
        left = self._phone.left(self._searched, of_pages, self._taken)
        if not self._taken:
            shutil.rmtree(self._memory.spare, ignore_errors=True)
        new = evolve(self._new, pages=self._pages, left=left)
        if new.history is not None:
            renew_lines(self.lines, record.lines(new.history.record, self._record))
            new = evolve(new, history=with_pages(new.history, {}))

        def kept(parts: Path) -> State:
            reads, lines = self._manual.keep(parts), self.lines.keep(parts)
            return self._making.shelved(evolve(new, reads=reads, record=lines), parts)

        self._memory.keep(kept)

    @property
    def made_anew(self) -> int:
        """Pages that were made anew."""
        return len(self._pages) - self.taken_over

    @property
    def _touched(self) -> frozenset[str]:
        return differing(self._old.files, self._new.files)

    def _as_written(self, address: str) -> str:
        """Return the hash of the page's old file if it would come out the same, otherwise ""."""
        is_same = self._making.is_as_before(address)
        return self._old.pages.get(address, "") if is_same else ""

    def _holds(self, path: str) -> bool:
        return OldSite(self._site, self._old.left.files, self._site).holds(path)


def _others(files: Mapping[str, str]) -> dict[str, str]:
    return {file: hashed for file, hashed in files.items() if not is_page(file)}
