"""YAML as placed nodes: nothing is guessed from a scalar, every node knows its line and column."""

from collections.abc import Mapping

from attrs import field, frozen

from underhoist.place import Place


@frozen
class Scalar:
    """A text, with the key it hangs on.

    `until` is the column behind its last sign where it stands on one line without quotes, else 0.
    `within` is the sign of what holds it: [ and { between brackets, - and : on lines of their own.
    """

    text: str
    at: Place
    key: str
    until: int = field(default=0, eq=False)
    within: str = field(default="", eq=False)


@frozen
class Listed:
    """A list, with the key it hangs on."""

    items: "tuple[Node, ...]"
    at: Place
    key: str


@frozen
class Mapped:
    """Names with values, with the key they hang on and the place of each name."""

    entries: "Mapping[str, Node]"
    names: Mapping[str, Place]
    at: Place
    key: str
    quoted: frozenset[str] = frozenset()
    """Those of the names that are written in quotes."""


type Node = Scalar | Listed | Mapped


def written(node: Node) -> str:
    """Return what the author typed, as one line."""
    match node:
        case Scalar():
            return node.text
        case Listed():
            return f"[{', '.join(written(item) for item in node.items)}]"
        case Mapped():
            pairs = (f"{name}: {written(value)}" for name, value in node.entries.items())
            return f"{{{', '.join(pairs)}}}"
