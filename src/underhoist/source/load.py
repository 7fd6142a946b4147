"""Loads a manual's folder: every page that can be read, and every fault of those that cannot."""

from collections import defaultdict
from collections.abc import Iterable
from pathlib import Path, PurePosixPath

from attrs import frozen

from underhoist.finding import Finding
from underhoist.model import (
    Draft,
    Fault,
    Hazard,
    Manual,
    Page,
    PlainPage,
    Procedure,
    Tool,
    UnitFamily,
)
from underhoist.project import Unusable
from underhoist.source.read import Read, read_file
from underhoist.source.walk import Files, walk


@frozen
class Loaded:
    """The manual as far as it could be read, and what kept the rest from being read."""

    manual: Manual
    findings: tuple[Finding, ...]


def load(folder: Path) -> Loaded:
    """Read every page of the folder. Raises Unusable where there is no such folder or no page."""
    files = files_of(folder)
    reads = [read_file(folder, file) for file in files.pages()]
    found = (*files.findings, *(finding for each in reads for finding in each.findings))
    return Loaded(manual_of(reads, files.names), found)


def files_of(folder: Path) -> Files:
    """List the folder's files. Raises Unusable where there is no such folder or no page in it."""
    try:
        files = walk(folder)
    except OSError as error:
        raise Unusable(f"{folder}: the folder cannot be read ({error.strerror}).") from None
    if next(files.pages(), None) is None:
        raise Unusable(f"{folder}: there is no page (a file ending in .md) in this folder.")
    return files


def manual_of(reads: Iterable[Read], names: Iterable[str]) -> Manual:
    """Put the pages together, in the order given; `names` are all files of the folder."""
    unread: dict[str, str] = {}
    drafts: list[Draft] = []
    pages: list[Page] = []
    for each in reads:
        if each.page is not None:
            pages.append(each.page)
            continue
        unread[PurePosixPath(each.file).stem] = each.file
        if each.draft is not None:
            drafts.append(each.draft)
    return _manual(pages, unread, drafts, frozenset(names))


def _manual(
    pages: list[Page], unread: dict[str, str], drafts: list[Draft], names: frozenset[str]
) -> Manual:
    by_kind: defaultdict[type[Page], dict[str, Page]] = defaultdict(dict)
    repeated: list[Page] = []
    for page in pages:
        if by_kind[type(page)].setdefault(page.id, page) is not page:
            repeated.append(page)

    def of[P: Page](kind: type[P]) -> dict[str, P]:
        return {key: page for key, page in by_kind[kind].items() if isinstance(page, kind)}

    return Manual(
        families=of(UnitFamily),
        procedures=of(Procedure),
        faults=of(Fault),
        tools=of(Tool),
        hazards=of(Hazard),
        plain=of(PlainPage),
        repeated=tuple(repeated),
        unread=unread,
        drafts=tuple(drafts),
        files=names,
    )
