"""Named things that are kept in parts, each a file of its own.

A part is read when one of its things is wanted, and written when one of them is another. A part is
known by the hash of what it holds, so that nothing is believed that was not named by who kept it.
"""

import hashlib
import pickle
from collections.abc import Iterable, Iterator, Mapping, MutableMapping
from contextlib import suppress
from pathlib import Path
from typing import override
from zlib import crc32

from attrs import field, frozen

PARTS = 128
"""At most so many: at 1,000 procedures some ten pages are read to get at one."""


class DamagedError(Exception):
    """A part is gone or is not what was kept: everything has to be made anew."""


@frozen
class Index:
    """Which names are in which part, and the hash of each part."""

    names: Mapping[str, int] = field(factory=dict[str, int])
    parts: Mapping[int, str] = field(factory=dict[int, str])


class Parted[T](MutableMapping[str, T]):
    """Things by their names, in the order in which they were put in."""

    def __init__(self, folder: Path, index: Index) -> None:
        """Take the folder of the parts, and what is in which."""
        self._folder = folder
        self._names = dict(index.names)
        self._parts = dict(index.parts)
        self._read: dict[str, T] = {}
        self._changed: set[int] = set()
        self._opened: set[int] = set()

    @override
    def __getitem__(self, name: str) -> T:
        if name not in self._read:
            self._open(self._names[name])
        return self._read[name]

    @override
    def __setitem__(self, name: str, thing: T) -> None:
        self._names[name] = number = crc32(name.encode()) % PARTS
        self._read[name] = thing
        self._changed.add(number)

    @override
    def __delitem__(self, name: str) -> None:
        self._changed.add(self._names.pop(name))
        self._read.pop(name, None)

    @override
    def __iter__(self) -> Iterator[str]:
        return iter(self._names)

    @override
    def __len__(self) -> int:
        return len(self._names)

    @override
    def __contains__(self, name: object) -> bool:
        return name in self._names

    def order(self, names: Iterable[str]) -> None:
        """Bring the names into this order, which holds all of them."""
        self._names = {name: self._names[name] for name in names}

    def keep(self, folder: Path) -> Index:
        """Write the parts that are other than before; raises OSError where that does not work."""
        for number in self._changed:
            self._open(number)
        by_part: dict[int, dict[str, T]] = {number: {} for number in self._changed}
        for name, number in self._names.items():
            if number in by_part:
                by_part[number][name] = self._read[name]
        self._parts |= {number: _written(folder, things) for number, things in by_part.items()}
        self._changed.clear()
        self._parts = {number: self._parts[number] for number in set(self._names.values())}
        return Index(self._names, self._parts)

    def _open(self, number: int) -> None:
        """Read a part; what was put in since stays, what was taken out stays out."""
        if number not in self._parts or number in self._opened:
            return
        self._opened.add(number)
        try:
            data = (self._folder / self._parts[number]).read_bytes()
        except OSError:
            raise DamagedError from None
        if _hash(data) != self._parts[number]:
            raise DamagedError
        for name, thing in pickle.loads(data).items():  # noqa: S301 - by its hash it is our own
            if self._names.get(name) == number:
                self._read.setdefault(name, thing)


def drop_unused(folder: Path, used: set[str]) -> None:
    """Delete the parts that nobody names any more."""
    for file in folder.iterdir():
        if file.name not in used:
            with suppress(OSError):
                file.unlink()


def _written(folder: Path, things: object) -> str:
    data = pickle.dumps(things, pickle.HIGHEST_PROTOCOL)
    name = _hash(data)
    making = folder / f"{name}.new"
    making.write_bytes(data)  # one that is there already may be the damaged one
    making.replace(folder / name)
    return name


def _hash(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()
