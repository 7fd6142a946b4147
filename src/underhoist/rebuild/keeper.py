"""Keeps what was made of a site, and makes anew what the next site would show otherwise."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import Protocol

from attrs import evolve, frozen

from underhoist.pages import Site
from underhoist.rebuild.reads import EVERY, FILES, Notes, Read, changes, noted
from underhoist.source import is_page

AT_ONCE = 40
"""Makers between two looks at whether something else is wanted by now."""


class Placed(Protocol):
    """Something that stands at an address of the site."""

    @property
    def address(self) -> str:
        """Where it stands."""
        ...


class Maker[T: Placed](Protocol):
    """Makes things that belong together, known by a name."""

    @property
    def name(self) -> str:
        """What it is known by, from site to site."""
        ...

    @property
    def make(self) -> Callable[[Site], Iterable[T]]:
        """Make the things."""
        ...


@frozen
class Batch[T: Placed]:
    """What came out otherwise than before, and the addresses at which nothing is any more."""

    made: tuple[T, ...]
    gone: tuple[str, ...]


@frozen
class Kept[T: Placed]:
    """What a maker made last and what it read; `failed` where its last attempt came to nothing."""

    things: tuple[T, ...]
    reads: frozenset[Read]
    failed: bool = False


class Keeper[T: Placed]:
    """Everything made of a site so far, by its address.

    Of two makers for one address the first has it. A maker that raises leaves what it made before,
    if `forgiving`; then its name is in `failed`. Otherwise the exception is passed on.
    """

    def __init__(
        self, makers: Callable[[Site], Iterable[Maker[T]]], *, forgiving: bool = False
    ) -> None:
        self._makers = makers
        self._forgiving = forgiving
        self._notes = Notes()
        self._site: Site | None = None
        self._kept: dict[str, Kept[T]] = {}
        self._stale: set[str] = set()
        self.things: dict[str, T] = {}

    @property
    def kept(self) -> Mapping[str, Kept[T]]:
        """What each maker made and read, by its name."""
        return self._kept

    def restore(self, site: Site, kept: Mapping[str, Kept[T]]) -> None:
        """Begin with what another keeper kept of this site."""
        self._site, self._kept = site, dict(kept)

    @property
    def failed(self) -> frozenset[str]:
        """The makers whose last attempt came to nothing."""
        return frozenset(name for name, kept in self._kept.items() if kept.failed)

    def renew(self, site: Site, touched: frozenset[str] = frozenset()) -> Iterator[Batch[T]]:
        """Make anew what is stale, in batches: first what the touched files are about.

        `touched` are files that changed on the disk, as paths in the manual's folder. Whoever stops
        half way and comes again with a newer site loses nothing.
        """
        makers = {maker.name: maker for maker in self._makers(site)}
        self._mark(site, makers.keys(), touched)
        watched = noted(site, self._notes)
        first = [name for name in makers if name in self._stale and name in touched]
        rest = [name for name in makers if name in self._stale and name not in touched]
        chunks = [rest[at : at + AT_ONCE] for at in range(0, len(rest), AT_ONCE)]
        for names in (first, *chunks):
            for name in names:
                self._make(makers[name], watched)
                self._stale.discard(name)
            yield self._settled(makers)

    def _mark(self, site: Site, names: Iterable[str], touched: frozenset[str]) -> None:
        """Note which makers are stale on the new site."""
        changed = changes(self._site, site) if self._site else None
        self._site = site
        known = frozenset(names)
        self._stale &= known
        if changed is None:
            self._stale |= known
            return
        changed |= {(FILES, file) for file in touched if not is_page(file)}
        changed |= {(FILES, EVERY)} if touched else frozenset()
        self._stale |= {
            name
            for name in known
            if name in touched
            or (kept := self._kept.get(name)) is None
            or not changed.isdisjoint(kept.reads)
        }

    def _make(self, maker: Maker[T], site: Site) -> None:
        before = self._kept.get(maker.name)
        self._notes.take()
        try:
            things = tuple(maker.make(site))
        except Exception:
            if not self._forgiving:
                raise
            kept = before or Kept[T]((), frozenset())
            self._kept[maker.name] = evolve(kept, reads=self._notes.take(), failed=True)
        else:
            self._kept[maker.name] = Kept(things, self._notes.take())

    def _settled(self, makers: Iterable[str]) -> Batch[T]:
        """Put everything at its address and tell what is another than before."""
        names = list(makers)
        for name in self._kept.keys() - set(names):
            del self._kept[name]
        before, self.things = self.things, {}
        for name in names:
            for thing in self._kept[name].things if name in self._kept else ():
                self.things.setdefault(thing.address, thing)
        made = (
            thing
            for address, thing in self.things.items()
            if (old := before.get(address)) is not thing and old != thing
        )
        return Batch(tuple(made), tuple(before.keys() - self.things.keys()))
