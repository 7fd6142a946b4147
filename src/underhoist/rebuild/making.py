"""Everything that is made of a manual, each of it kept until what it was made from is another."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from functools import partial
from pathlib import Path

from attrs import evolve

from underhoist.finding import Finding
from underhoist.history import key_of
from underhoist.links import Links, Uses, page_address, weave
from underhoist.model import Manual, Procedure
from underhoist.pages import Known, Sheet, Site
from underhoist.pages.card_data import Card, card_of
from underhoist.pages.every import makers
from underhoist.rebuild.keeper import Keeper, Maker, Placed, Single
from underhoist.rebuild.kept_rules import Source, found
from underhoist.rebuild.page_notes import (
    PageNotes,
    Painted,
    Woven,
    named_targets,
    note_makers,
    portrait_makers,
)
from underhoist.rebuild.parted import Parted
from underhoist.rebuild.present import Now
from underhoist.rebuild.state import Memory, Shelf, State
from underhoist.references import Target


class Making:
    """What is made of a manual, step by step: notes, links and portraits, pages, cards."""

    def __init__(self, memory: Memory, old: State, old_manual: Callable[[], Manual]) -> None:
        """Take what is kept of the build before, and what gives its manual."""
        self._memory = memory
        self._old = old
        self._old_manual = old_manual
        self._old_links: Links | None = None
        self._notes = Keeper[Source, PageNotes](note_makers)
        self._portraits = Keeper[Woven, Painted](lambda _: ())
        self._sheets = Keeper[Site, Sheet](lambda site: makers(site.manual))
        self._cards = Keeper[Site, Card](lambda _: ())
        self.anew: set[str] = set()
        """The addresses at which something else stands than before."""

    def findings(self, manual: Manual, touched: frozenset[str]) -> Iterator[Finding]:
        """Return what the rules find; `touched` are the pages that are new, other or gone."""
        old = self._old_manual()
        self._restore(self._notes, self._old.notes, Source(old))
        self._old_links = self._woven(old, {})
        _renew(self._notes, Source(manual), touched)
        return found(manual, {file: notes.said for file, notes in self._notes.things.items()})

    def known(
        self, manual: Manual, folder: Path, touched: frozenset[str], *, same_record: bool
    ) -> Known:
        """Return what the pages name and what they say; `touched` are files, drawings too.

        `same_record` says whether pages are compared with the record of the build before.
        """
        before = self._woven_before
        links = self._woven(manual, before.links.uses)
        self._portraits = Keeper[Woven, Painted](partial(portrait_makers, folder))
        self._restore(self._portraits, self._old.portraits, before)
        others = touched | _renew(self._portraits, Woven(manual, links), touched)
        same = {key_of(page) for page in manual.pages() if page.file not in others}
        return Known(links, Now(manual, self._portraits.things), same if same_record else ())

    def sheets(self, site: Site, touched: frozenset[str]) -> Mapping[str, Sheet]:
        """Make the pages that would come out otherwise; return all by their address."""
        self._restore(self._sheets, self._old.sheets, self._site_before(site))
        self.anew |= _renew(self._sheets, site, touched)
        return self._sheets.things

    def cards(
        self, site: Site, touched: frozenset[str], made: Mapping[str, Sheet]
    ) -> Mapping[str, Card]:
        """Make the cards that would come out otherwise; `made` are the pages by their address."""
        pages = {each.file: page_address(each.file) for each in _procedures(site)}

        def card_makers(site: Site) -> Iterator[Maker[Site, Card]]:
            for each in _procedures(site):
                yield Single(each.file, partial(_card, each.id, made))

        self._cards = Keeper[Site, Card](card_makers)
        self._restore(self._cards, self._old.cards, self._site_before(site))
        others = {file for file, address in pages.items() if not self.is_as_before(address)}
        self.anew |= _renew(self._cards, site, touched | others)
        return self._cards.things

    def is_as_before(self, address: str) -> bool:
        """Whether the same stands there as before."""
        return address not in self.anew

    def shelved(self, state: State, parts: Path) -> State:
        """Write all that was made into the folder of the parts. Raises OSError."""
        return evolve(
            state, notes=_shelved(self._notes, parts), portraits=_shelved(self._portraits, parts),
            sheets=_shelved(self._sheets, parts), cards=_shelved(self._cards, parts),
        )  # fmt: skip

    def _restore[S, T: Placed](self, keeper: Keeper[S, T], shelf: Shelf[T], source: S) -> None:
        keeper.restore(source, shelf.kept, self._memory.opened(shelf.made))

    def _woven(self, manual: Manual, before: Uses) -> Links:
        """Weave the links from the pages' notes: what is the same as before is the very same."""
        notes = self._notes.things
        uses: dict[str, tuple[Target, ...]] = {}
        for page in manual.pages():
            targets, known = named_targets(manual, notes[page.file].named), before.get(page.file)
            uses[page.file] = known if known and _are(known, targets) else targets
        says = {file: notes[file].says for file in uses}
        return weave(manual, uses, says)

    @property
    def _woven_before(self) -> Woven:
        old = self._old_manual()
        return Woven(old, self._old_links or weave(old))

    def _site_before(self, site: Site) -> Site:
        """Return what the old pages were made from."""
        old, woven = self._old, self._woven_before
        before = site.of(woven.manual, woven.links)
        return evolve(before, name=old.name, demo=old.demo, history=old.history)


def _renew[S, T: Placed](
    keeper: Keeper[S, T], source: S, touched: frozenset[str]
) -> frozenset[str]:
    """Make what is not kept or would come out otherwise; return the addresses of what did."""
    batches = keeper.renew(source, touched)
    return frozenset(thing.address for batch in batches for thing in batch.made)


def _shelved[S, T: Placed](keeper: Keeper[S, T], parts: Path) -> Shelf[T]:
    made = keeper.made
    if not isinstance(made, Parted):
        return Shelf[T]()
    return Shelf[T](keeper.kept, made.keep(parts))


def _are(old: tuple[Target, ...], new: tuple[Target, ...]) -> bool:
    """Whether these are the same targets with the very same things."""
    pairs = zip(old, new, strict=False)
    return len(old) == len(new) and all(
        a.thing is b.thing and (a.scheme, a.id, a.title) == (b.scheme, b.id, b.title)
        for a, b in pairs
    )


def _card(id_: str, made: Mapping[str, Sheet], site: Site) -> Iterable[Card]:
    procedure = site.manual.procedures[id_]
    return (card_of(site, procedure, made[page_address(procedure.file)]),)


def _procedures(site: Site) -> Iterable[Procedure]:
    return site.manual.procedures.values()
