"""What is kept of a build, and where: a signed list, and the things in parts beside it."""

from collections.abc import Callable, Iterator, Mapping
from contextlib import suppress
from pathlib import Path
from typing import Any

from attrs import field, frozen

from underhoist.history import History
from underhoist.pages import Sheet
from underhoist.pages.card_data import Card
from underhoist.rebuild import builder, store
from underhoist.rebuild.keeper import Kept
from underhoist.rebuild.left import Left
from underhoist.rebuild.page_notes import PageNotes, Painted
from underhoist.rebuild.parted import DamagedError, Index, Parted, drop_unused


@frozen
class Shelf[T]:
    """What a keeper kept: of each maker what it read, and in which part its things are."""

    kept: Mapping[str, Kept] = field(factory=dict[str, Kept])
    made: Index = field(factory=Index)


@frozen
class State:
    """A build as it is kept."""

    files: Mapping[str, str] = field(factory=dict[str, str])
    """The hash of each file of the manual."""
    reads: Index = field(factory=Index)
    """What was read of each page."""
    notes: Shelf[PageNotes] = field(factory=Shelf[PageNotes])
    portraits: Shelf[Painted] = field(factory=Shelf[Painted])
    sheets: Shelf[Sheet] = field(factory=Shelf[Sheet])
    cards: Shelf[Card] = field(factory=Shelf[Card])
    name: str = ""
    demo: bool = False
    history: History | None = None
    """What is known of the builds, without the pages of the record."""
    record: Index = field(factory=Index)
    """The pages of the record, each with its line."""
    settings: str = ""
    pages: Mapping[str, str] = field(factory=dict[str, str])
    """The hash of each page's file, by its address."""
    left: Left = field(factory=Left)


class Memory:
    """The folder in which builds of one project into one site are kept."""

    def __init__(self, project: Path, site: Path) -> None:
        """Take the project and the folder of its site."""
        self._place = store.place_of(project, site)
        self._parts = self._place.with_suffix(".parts")
        self.spare = self._place.with_suffix(".spare")
        """Where the site before the last is kept."""
        self._builder = builder.builder()

    def load(self) -> State:
        """Return what was kept last, nothing where that is not to be believed."""
        found = store.load(self._place, self._builder)
        return found if isinstance(found, State) else State()

    def opened(self, index: Index) -> Parted[Any]:
        """Return things by their names."""
        return Parted[Any](self._parts, index)

    def keep(self, made: Callable[[Path], State]) -> None:
        """Keep a build; `made` writes its parts into a folder and returns the rest.

        A build does not fail where it cannot be kept: then the next makes everything anew.
        """
        try:
            self._parts.mkdir(parents=True, exist_ok=True)
            state = made(self._parts)
            store.save(self._place, self._builder, state)
            drop_unused(self._parts, set(_parts(state)))
        except (OSError, DamagedError):
            with suppress(OSError):
                self._place.unlink(missing_ok=True)


def _parts(state: State) -> Iterator[str]:
    shelves = (state.notes, state.portraits, state.sheets, state.cards)
    for index in (state.reads, state.record, *(shelf.made for shelf in shelves)):
        yield from index.parts.values()
