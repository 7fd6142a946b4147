"""A fault whose front matter has faults: as much of it as its order of checks can stand on."""

from collections.abc import Iterable, Mapping
from pathlib import PurePosixPath

from underhoist.model import Body, Cause, Check, Fault
from underhoist.place import Place
from underhoist.source.faults import Faults
from underhoist.source.nodes import Mapped, Node, Scalar
from underhoist.source.structure import readable, structure_page

UNWRITTEN = "Not written yet"
"""What stands on the page for a text that is not there."""

_WORDS = ("title", "summary", "complaint")
_TABLES = {"causes": Cause, "checks": Check}


def partial_fault(node: Mapped, file: str, body: Body) -> Fault | None:
    """Read the tables and drop what in them has faults; None where too little is left of them."""
    entries: dict[str, Node] = {name: _word(node, name) for name in _WORDS}
    for name, kind in _TABLES.items():
        table = node.entries.get(name)
        if not isinstance(table, Mapped):
            return None
        good = {id_: each for id_, each in table.entries.items() if readable(each, kind)}
        entries[name] = _only(table, good)
    if "unit_family" in node.entries:
        entries["unit_family"] = node.entries["unit_family"]
    try:
        return structure_page(Fault, _only(node, entries), PurePosixPath(file).stem, file, body)
    except Faults:
        return None


def _word(node: Mapped, name: str) -> Node:
    """Return what is written under a key, and a mark where it is no text."""
    found = node.entries.get(name)
    if isinstance(found, Scalar) and found.text.strip():
        return found
    return Scalar(UNWRITTEN, node.at, name)


def _only(node: Mapped, entries: Mapping[str, Node]) -> Mapped:
    """Give the node with these entries alone."""
    return Mapped(entries, _names(node, entries), node.at, node.key)


def _names(node: Mapped, entries: Iterable[str]) -> dict[str, Place]:
    return {name: node.names.get(name, node.at) for name in entries}
