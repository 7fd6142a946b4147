"""Reads one page: the page itself, or every fault that keeps it from being one."""

import re
from collections.abc import Callable
from pathlib import Path, PurePosixPath

from attrs import frozen

from underhoist.finding import Finding
from underhoist.model import Draft, Fault, Hazard, Page, PlainPage, Procedure, Tool, UnitFamily
from underhoist.model.values import Id
from underhoist.place import Place, Placed
from underhoist.source.compose import compose
from underhoist.source.faults import Faults, fault
from underhoist.source.nodes import Mapped, Scalar, written
from underhoist.source.partial import partial_fault
from underhoist.source.retyped import retyped
from underhoist.source.scalars import placed_reader
from underhoist.source.split import Parts, decoded, read_bytes, split
from underhoist.source.structure import structure_page
from underhoist.words import listing, meant, quote, sure

KINDS: dict[str, type[Page]] = {
    "unit-family": UnitFamily,
    "procedure": Procedure,
    "fault": Fault,
    "tool": Tool,
    "hazard": Hazard,
    "page": PlainPage,
}
"""The kinds of page by what `kind:` says."""

_READ_ID = placed_reader(Id)
_NAME = re.compile(r"\w[\w -]*")
"""What a file or a folder may be called: its name becomes part of an address."""


@frozen
class Read:
    """What a file came to: its page, or what is wrong with it and its text if that can be read."""

    file: str
    page: Page | None
    draft: Draft | None
    findings: tuple[Finding, ...]


def read(file: str, data: bytes) -> Read:
    """Read a page from what its file holds."""
    return _tried(file, lambda: data)


def read_file(folder: Path, file: str) -> Read:
    """Read a page from its file; one that cannot be opened has a finding that says so."""
    return _tried(file, lambda: read_bytes(folder / file, file))


def _tried(file: str, hold: Callable[[], bytes]) -> Read:
    parts = None
    try:
        parts = split(decoded(hold(), file), file)
        return Read(file, read_page(parts, file), None, ())
    except Faults as faults:
        return Read(file, None, _draft(parts, file) if parts else None, faults.findings)


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
        kind=kind[1] if kind else "", partial=_partial(parts, file, kind[1] if kind else ""),
    )  # fmt: skip


def _partial(parts: Parts, file: str, kind: str) -> Page | None:
    """Read what can be read of a fault: its author wants to see the order while writing."""
    if KINDS.get(kind) is not Fault:
        return None
    try:
        node, _ = compose(parts.front, file)
    except Faults:
        return None
    return partial_fault(node, file, parts.body)


def _kind(node: Mapped) -> type[Page]:
    found = node.entries.get("kind")
    if found is None:
        mend = f"Add kind: {listing(KINDS, 'or')}."
        raise Faults(fault("missing-key", node.at, "", "A page needs the key kind.", mend))
    if isinstance(found, Scalar) and found.text in KINDS:
        return KINDS[found.text]
    text = written(found)
    mend = meant(text, KINDS, f"The kinds are {listing(KINDS)}.")
    near = sure(text, KINDS)
    edit = retyped(found, near) if near and isinstance(found, Scalar) else None
    wrong = f"There is no kind of page {text}."
    raise Faults(fault("unknown-key", found.at, text, wrong, mend, edit))


def _page_id(kind: type[Page], file: str) -> str:
    """Return the file name without its ending; for plain pages the path: folders have an index."""
    path = str(PurePosixPath(file).with_suffix(""))
    parts = path.split("/")
    _refuse_name(parts, file)
    if kind is PlainPage:
        return path
    _READ_ID(Scalar(parts[-1], Place(file, 1, 1), "The file name"), None)
    return parts[-1]


def _refuse_name(parts: list[str], file: str) -> None:
    """Raise Faults where the name means something else in an address: a scheme, a query, a file."""
    odd = next((part for part in parts if not _NAME.fullmatch(part)), None)
    if odd is not None:
        wrong = f"The name {quote(odd)} holds signs that mean something else in an address."
        mend = "Name files and folders with letters, digits and hyphens."
        raise Faults(fault("unreadable-page", Place(file, 1, 1), odd, wrong, mend))
