"""Loads a manual's folder: every page that can be read, and every fault of those that cannot."""

import re
from collections import defaultdict
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
from underhoist.model.values import Id
from underhoist.place import Place, Placed
from underhoist.project import Unusable
from underhoist.source.compose import compose
from underhoist.source.faults import Faults, fault
from underhoist.source.nodes import Mapped, Scalar, written
from underhoist.source.scalars import placed_reader
from underhoist.source.split import Parts, read_text, split
from underhoist.source.structure import structure_page
from underhoist.source.walk import walk
from underhoist.words import listing, meant

KINDS: dict[str, type[Page]] = {
    "unit-family": UnitFamily,
    "procedure": Procedure,
    "fault": Fault,
    "tool": Tool,
    "hazard": Hazard,
    "page": PlainPage,
}
"""The kinds of page by what `kind:` says."""


@frozen
class Loaded:
    """The manual as far as it could be read, and what kept the rest from being read."""

    manual: Manual
    findings: tuple[Finding, ...]


def load(folder: Path) -> Loaded:
    """Read every page of the folder. Raises Unusable where there is no such folder or no page."""
    try:
        files = walk(folder)
    except OSError as error:
        raise Unusable(f"{folder}: the folder cannot be read ({error.strerror}).") from None
    findings = list(files.findings)
    pages: list[Page] = []
    unread: dict[str, str] = {}
    drafts: list[Draft] = []
    for file in files.pages():
        parts = None
        try:
            parts = split(read_text(folder / file, file), file)
            pages.append(read_page(parts, file))
        except Faults as faults:
            findings += faults.findings
            unread[PurePosixPath(file).stem] = file
            if parts:
                drafts.append(_draft(parts, file))
    if not pages and not unread:
        raise Unusable(f"{folder}: there is no page (a file ending in .md) in this folder.")
    return Loaded(_manual(pages, unread, drafts, files.names), tuple(findings))


def read_page(parts: Parts, file: str) -> Page:
    """Read the page of this file. Raises Faults with everything wrong in its front matter."""
    node, findings = compose(parts.front, file)
    try:
        kind = _kind(node)
        page = structure_page(kind, node, _page_id(kind, file), file, parts.body)
    except Faults as faults:
        raise Faults(*findings, *faults.findings) from None
    if findings:
        raise Faults(*findings)
    return page


def _draft(parts: Parts, file: str) -> Draft:
    """Keep the text of a page whose front matter has faults."""
    kind = re.search(r"^kind: *([a-z-]+) *$", parts.front, re.MULTILINE)
    nothing = Placed("", Place(file, 1, 1), "")
    return Draft(
        id=PurePosixPath(file).stem, file=file, body=parts.body, title=nothing, summary=nothing,
        kind=kind[1] if kind else "",
    )  # fmt: skip


def _kind(node: Mapped) -> type[Page]:
    found = node.entries.get("kind")
    if found is None:
        mend = f"Add kind: {listing(KINDS, 'or')}."
        raise Faults(fault("missing-key", node.at, "", "A page needs the key kind.", mend))
    if isinstance(found, Scalar) and found.text in KINDS:
        return KINDS[found.text]
    text = written(found)
    mend = meant(text, KINDS, f"The kinds are {listing(KINDS)}.")
    raise Faults(fault("unknown-key", found.at, text, f"There is no kind of page {text}.", mend))


def _page_id(kind: type[Page], file: str) -> str:
    """Return the file name without its ending; for plain pages the path: folders have an index."""
    path = PurePosixPath(file)
    if kind is PlainPage:
        return str(path.with_suffix(""))
    placed_reader(Id)(Scalar(path.stem, Place(file, 1, 1), "The file name"), None)
    return path.stem


def _manual(
    pages: list[Page], unread: dict[str, str], drafts: list[Draft], names: tuple[str, ...]
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
        files=frozenset(names),
    )
