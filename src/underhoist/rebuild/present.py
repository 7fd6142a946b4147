"""The pages as they are now, each looked at when it is asked for."""

from collections.abc import Iterator, Mapping
from typing import override

from underhoist.history import Present, key_of, present_as
from underhoist.model import Manual
from underhoist.rebuild.page_notes import Painted


class Now(Mapping[str, Present]):
    """Every page by its key, in the order of the manual."""

    def __init__(self, manual: Manual, painted: Mapping[str, Painted]) -> None:
        """Take the manual, and the portraits by the file of their page."""
        self._pages = {key_of(page): page for page in manual.pages()}
        self._painted = painted

    @override
    def __getitem__(self, key: str) -> Present:
        page = self._pages[key]
        return present_as(page, self._painted[page.file].portrait)

    @override
    def __contains__(self, key: object) -> bool:
        return key in self._pages

    @override
    def __iter__(self) -> Iterator[str]:
        return iter(self._pages)

    @override
    def __len__(self) -> int:
        return len(self._pages)
