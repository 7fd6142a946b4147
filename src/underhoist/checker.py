"""The check as a thing that is kept: after a change only the pages that changed are read again.

It knows no folder, so the browser and the preview use it just as `underhoist check` does.
"""

from collections.abc import Callable, Iterable, Mapping
from operator import attrgetter

from attrs import frozen

from underhoist import rules
from underhoist.finding import Finding, Severity
from underhoist.model import Manual
from underhoist.source import Read, is_page, manual_of, read

Reader = Callable[[str, bytes], Read]
"""Reads a page from its file's name and bytes."""

Judge = Callable[[Manual], Iterable[Finding]]
"""Applies the rules to a manual."""

_ORDER = attrgetter("at.file", "at.line", "at.column", "code", "wrong")


@frozen
class Checked:
    """The manual and everything found in it, by file and line, each finding once."""

    manual: Manual
    findings: tuple[Finding, ...]

    @property
    def stops(self) -> int:
        """How many findings keep a site from being built."""
        return sum(finding.severity is Severity.STOP for finding in self.findings)

    @property
    def pages(self) -> int:
        """How many pages were read or tried."""
        return sum(map(is_page, self.manual.files))


class Checker:
    """A manual's files and what the pages among them came to."""

    def __init__(
        self,
        files: Mapping[str, bytes | str],
        others: Iterable[str] = (),
        reader: Reader | None = None,
        judge: Judge | None = None,
    ) -> None:
        """Take the files by their path in the manual; of `others` only that they are there.

        `reader` may remember what it read before, and `judge` what it found.
        """
        self._reader = reader
        self._judge = judge
        self._texts: dict[str, bytes] = {}
        self._reads: dict[str, Read] = {}
        self._others = set(others)
        for file, text in files.items():
            self.put(file, text)

    def put(self, file: str, text: bytes | str) -> bool:
        """Add a file or change it; a page is read again only if its text is another: then True."""
        if not is_page(file):
            self._others.add(file)
            return False
        data = text.encode("utf-8", "surrogatepass") if isinstance(text, str) else text
        if self._texts.get(file) == data:
            return False
        self._texts[file] = data
        self._reads[file] = (self._reader or read)(file, data)
        return True

    def hold(self, made: Read) -> bool:
        """Keep what somebody else made of a page that cannot be opened; return if that is news."""
        self._texts.pop(made.file, None)
        before = self._reads.get(made.file)
        self._reads[made.file] = made
        return made != before

    def remove(self, file: str) -> None:
        """Take a file out; one that is not there is out already."""
        self._others.discard(file)
        self._texts.pop(file, None)
        self._reads.pop(file, None)

    @property
    def files(self) -> tuple[str, ...]:
        """Every file, pages and others."""
        return (*self._reads, *self._others)

    @property
    def reads(self) -> tuple[Read, ...]:
        """What each page came to, in the order of their files."""
        return tuple(self._reads[file] for file in sorted(self._reads))

    def checked(self, besides: Iterable[Finding] = ()) -> Checked:
        """Apply the rules. `besides` are findings about files that are no part of the manual."""
        manual = manual_of(self.reads, self.files)
        found = {*besides, *(self._judge or rules.run)(manual)}
        found.update(finding for each in self.reads for finding in each.findings)
        return Checked(manual, tuple(sorted(found, key=_ORDER)))
