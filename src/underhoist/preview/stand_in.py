"""A page that cannot be read is shown all the same: what it last said, with its newest text."""

from collections.abc import Iterable, Mapping
from pathlib import PurePosixPath

from attrs import evolve, frozen

from underhoist.model import Draft, Manual, Page, PlainPage
from underhoist.place import Place, Placed
from underhoist.source import Read, manual_of

FACTS = "The facts on top cannot be read. The last good ones are shown, and the new text."
WHOLE = "The file cannot be read. Below is the page as it last could be."
PART = "Some facts on top cannot be read. What can be is shown, and the order that comes of it."
TEXT = "The facts on top cannot be read yet. Below is the text alone."


@frozen
class Shown:
    """The manual as it is shown, and what to say of a page that is not shown as its file is."""

    manual: Manual
    said: Mapping[str, str]


class StandIns:
    """Remembers each page as it could last be read."""

    def __init__(self) -> None:
        self._good: dict[str, Page] = {}

    def shown(self, reads: Iterable[Read], files: Iterable[str]) -> Shown:
        """Put the manual together from what can be read now and what could be read before."""
        said: dict[str, str] = {}
        shown: list[Read] = []
        for read in reads:
            page, words = self._page(read)
            if words:
                said[read.file] = words
            shown.append(evolve(read, page=page))
        return Shown(manual_of(shown, files), said)

    def _page(self, read: Read) -> tuple[Page | None, str]:
        if read.page is not None:
            self._good[read.file] = read.page
            return read.page, ""
        if read.draft is not None and read.draft.partial is not None:
            return read.draft.partial, PART
        good = self._good.get(read.file)
        if good is not None and read.draft is not None:
            return evolve(good, body=read.draft.body), FACTS
        if good is not None:
            return good, WHOLE
        return (_text_alone(read.draft), TEXT) if read.draft is not None else (None, "")


def _text_alone(draft: Draft) -> PlainPage:
    start = Place(draft.file, 1, 1)
    path = PurePosixPath(draft.file).with_suffix("")
    title = path.name.replace("-", " ").capitalize()
    return PlainPage(
        id=str(path),
        file=draft.file,
        body=draft.body,
        title=Placed(title, start, ""),
        summary=Placed("A page that is being written.", start, ""),
    )
