"""A decimal comma between braces: YAML takes it for the beginning of a new key."""

from attrs import evolve

from underhoist.source.nodes import Node, Scalar


def parted_by_comma(before: Node | None, name: Scalar, value: Node) -> Scalar | None:
    """Put a number together that its own comma parted: {limits: 6,2 to 6,5 mm}.

    None where the comma parts two keys, as it should: then a space follows it or no digit.
    """
    if not isinstance(before, Scalar) or before.within != "{" or not before.until:
        return None
    follows = name.at.line == before.at.line and name.at.column == before.until + 1
    empty = isinstance(value, Scalar) and not value.text
    if not (follows and empty and before.text[-1:].isdigit() and name.text[:1].isdigit()):
        return None
    return evolve(before, text=f"{before.text},{name.text}", until=name.until)
