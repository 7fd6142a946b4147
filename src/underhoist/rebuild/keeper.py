"""Keeps what was made of a site, and makes anew what the next site would show otherwise."""

from collections.abc import Callable, Iterable, Iterator, Mapping, MutableMapping
from typing import Protocol, override

from attrs import evolve, frozen

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


class Maker[S, T: Placed](Protocol):
    """Makes things that belong together, known by a name."""

    @property
    def name(self) -> str:
        """What it is known by, from site to site."""
        ...

    @property
    def make(self) -> Callable[[S], Iterable[T]]:
        """Make the things."""
        ...


@frozen
class Single[S, T]:
    """Makes something of one page, known by the page's file."""

    name: str
    make: Callable[[S], Iterable[T]]


@frozen
class Batch[T: Placed]:
    """What came out otherwise than before, and the addresses at which nothing is any more."""

    made: tuple[T, ...]
    gone: tuple[str, ...]


@frozen
class Kept:
    """Where the things stand that a maker made last, and what it read.

    `failed` where its last attempt came to nothing.
    """

    addresses: tuple[str, ...]
    reads: frozenset[Read]
    failed: bool = False


class Keeper[S, T: Placed]:
    """Everything made of a site so far, by its address.

    Of two makers for one address the first has it. A maker that raises leaves what it made before,
    if `forgiving`; then its name is in `failed`. Otherwise the exception is passed on.
    """

    def __init__(
        self, makers: Callable[[S], Iterable[Maker[S, T]]], *, forgiving: bool = False
    ) -> None:
        self._makers = makers
        self._forgiving = forgiving
        self._notes = Notes()
        self._site: S | None = None
        self._kept: dict[str, Kept] = {}
        self._made: MutableMapping[str, tuple[T, ...]] = {}
        self._owners: dict[str, str] = {}
        self._stale: set[str] = set()
        self._replaced: dict[str, tuple[T, ...]] = {}

    @property
    def kept(self) -> Mapping[str, Kept]:
        """What each maker made and read, by its name."""
        return self._kept

    @property
    def made(self) -> MutableMapping[str, tuple[T, ...]]:
        """The things of each maker, by its name."""
        return self._made

    @property
    def things(self) -> Mapping[str, T]:
        """Everything by its address, in the order of the makers."""
        return _Things(self._made, self._owners)

    def restore(
        self, site: S, kept: Mapping[str, Kept], made: MutableMapping[str, tuple[T, ...]]
    ) -> None:
        """Begin with what another keeper kept of this site; `made` are the things by maker."""
        self._site, self._kept, self._made = site, dict(kept), made
        self._owners = _owned(kept)

    @property
    def failed(self) -> frozenset[str]:
        """The makers whose last attempt came to nothing."""
        return frozenset(name for name, kept in self._kept.items() if kept.failed)

    def renew(self, site: S, touched: frozenset[str] = frozenset()) -> Iterator[Batch[T]]:
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

    def _mark(self, site: S, names: Iterable[str], touched: frozenset[str]) -> None:
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

    def _make(self, maker: Maker[S, T], site: S) -> None:
        name, before = maker.name, self._kept.get(maker.name)
        self._notes.take()
        try:
            things = tuple(maker.make(site))
        except Exception:
            if not self._forgiving:
                raise
            kept = before or Kept((), frozenset())
            self._kept[name] = evolve(kept, reads=self._notes.take(), failed=True)
            self._made.setdefault(name, ())
        else:
            addresses = tuple(thing.address for thing in things)
            self._kept[name] = Kept(addresses, self._notes.take())
            self._replaced[name] = self._made.get(name, ())
            self._made[name] = things

    def _settled(self, makers: Iterable[str]) -> Batch[T]:
        """Put everything at its address and tell what is another than before."""
        for name in self._kept.keys() - set(makers):
            del self._kept[name]
            self._replaced[name] = self._made.pop(name)
        self._kept = {name: self._kept[name] for name in makers if name in self._kept}
        before, self._owners = self._owners, _owned(self._kept)
        things = self.things
        made = tuple(
            things[address]
            for address, name in self._owners.items()
            if (name in self._replaced or before.get(address) != name)
            and self._was(address, before) != things[address]
        )
        self._replaced.clear()
        return Batch(made, tuple(before.keys() - self._owners.keys()))

    def _was(self, address: str, owners: Mapping[str, str]) -> T | None:
        """Return what stood at the address before, None where nothing did."""
        owner = owners.get(address)
        if owner is None:
            return None
        things = self._replaced[owner] if owner in self._replaced else self._made[owner]
        return next(thing for thing in things if thing.address == address)


class _Things[T: Placed](Mapping[str, T]):
    """Things by their address, each taken from where its maker's things are when it is wanted."""

    def __init__(self, made: Mapping[str, tuple[T, ...]], owners: Mapping[str, str]) -> None:
        self._made, self._owners = made, owners
        self._taken: dict[str, dict[str, T]] = {}

    @override
    def __getitem__(self, address: str) -> T:
        owner = self._owners[address]
        if owner not in self._taken:
            self._taken[owner] = {thing.address: thing for thing in reversed(self._made[owner])}
        return self._taken[owner][address]

    @override
    def __iter__(self) -> Iterator[str]:
        return iter(self._owners)

    @override
    def __len__(self) -> int:
        return len(self._owners)

    @override
    def __contains__(self, address: object) -> bool:
        return address in self._owners


def _owned(kept: Mapping[str, Kept]) -> dict[str, str]:
    """Return whose thing stands at each address: of two makers the first has it."""
    owners: dict[str, str] = {}
    for name, each in kept.items():
        for address in each.addresses:
            owners.setdefault(address, name)
    return owners
