"""From nodes to the model's classes: cattrs walks the types, every fault on the way is kept."""

# ruff: noqa: ANN401  (types are the values here)

from collections.abc import Callable, Mapping
from typing import Any, get_args, get_origin

from attrs import NOTHING, Attribute, fields, has
from cattrs import ClassValidationError, Converter
from cattrs.gen import make_dict_structure_fn

from underhoist.finding import Edit, Finding
from underhoist.model import Body, Page
from underhoist.place import Placed
from underhoist.source.faults import Faults, fault
from underhoist.source.nodes import Listed, Mapped, Node, Scalar, written
from underhoist.source.scalars import placed_reader
from underhoist.words import listing, meant, nearest, sure

GIVEN = ("id", "file", "body")
"""What a page has besides its front matter."""

type Hook = Callable[[Any, Any], Any]


def structure_page[P: Page](kind: type[P], node: Mapped, page_id: str, file: str, body: Body) -> P:
    """Make a page of this kind. Raises Faults with every fault of its front matter."""
    entries = {name: value for name, value in node.entries.items() if name not in GIVEN}
    findings = [_given(name, node) for name in GIVEN if name in node.entries]
    names = {**node.names, **dict.fromkeys(GIVEN, node.at)}
    whole: Any = {**entries, "id": page_id, "file": file, "body": body}
    try:
        page = _CONVERTER.structure(Mapped(whole, names, node.at, node.key), kind)
    except Faults as faults:
        raise Faults(*findings, *faults.findings) from None
    if findings:
        raise Faults(*findings)
    return page


def readable(node: Node, kind: type) -> bool:
    """Say whether a part of the front matter, such as one cause, has no fault of its own."""
    try:
        _CONVERTER.structure(node, kind)
    except Faults:
        return False
    return True


def _given(name: str, node: Mapped) -> Finding:
    wrong = f"{name} is not written in the front matter; the page's file says it."
    return fault("unknown-key", node.names[name], name, wrong, "Take the line out.")


def _class_hook(kind: Any, converter: Converter) -> Hook:
    """Make the hook for one class: unknown and missing keys, then each value by its own hook."""
    attributes: tuple[Attribute[Any], ...] = fields(kind)
    known = [each.name for each in attributes if each.name not in GIVEN]
    allowed = {*known, "kind", *GIVEN} if issubclass(kind, Page) else set(known)
    needed = {each.name: each for each in attributes if each.default is NOTHING}
    fill: Hook = make_dict_structure_fn(kind, converter)

    def structure(node: Node, _: Any) -> Any:
        if not isinstance(node, Mapped):
            raise Faults(_wants_keys(node, known))
        strange = [name for name in node.entries if name not in allowed]
        misspelt = {nearest(name, known) for name in strange}
        findings = [_unknown(name, node, known) for name in strange]
        if missing := needed.keys() - node.entries.keys() - misspelt:
            findings += [_missing(each, node) for name, each in needed.items() if name in missing]
        made, faults = _fill(fill, node, kind)
        if findings or faults:
            raise Faults(*findings, *faults)
        return made

    return structure


def _fill(fill: Hook, node: Mapped, kind: Any) -> tuple[Any, list[Finding]]:
    """Return the instance, or the faults of its values; missing keys are the caller's to report."""
    try:
        return fill(node.entries, kind), []
    except ClassValidationError as group:
        findings: list[Finding] = []
        for each in group.exceptions:
            if isinstance(each, Faults):
                findings += each.findings
            elif not isinstance(each, KeyError):
                raise
        return None, findings


def _unknown(name: str, node: Mapped, known: list[str]) -> Finding:
    here = f"under {node.key}" if node.key else "on this kind of page"
    wrong = f"There is no key {name} {here}."
    mend = meant(name, known, f"The keys here are {listing(known)}.")
    if name[:1].isdigit():
        wrong = f"A comma between braces begins a new key, and {name} is none."
        mend = "Write decimals with a point, such as 6.2; put a text with commas in quotes."
    return fault("unknown-key", node.names[name], name, wrong, mend, _renamed(name, node, known))


def _renamed(name: str, node: Mapped, known: list[str]) -> Edit | None:
    """Write the known key in place of a misspelt one that stands without quotes."""
    near = sure(name, known)
    if near is None or near in node.entries or name in node.quoted or " " in near:
        return None
    at = node.names[name]
    return Edit(at.file, at.line, at.column, at.line, at.column + len(name), near)


def _missing(attribute: "Attribute[Any]", node: Mapped) -> Finding:
    where = f"{node.key} needs" if node.key else "This kind of page needs"
    mend = f"Add {attribute.name}: {attribute.metadata['help']}"
    return fault("missing-key", node.at, "", f"{where} the key {attribute.name}.", mend)


def _wants_keys(node: Node, known: list[str]) -> Finding:
    what = "a list" if isinstance(node, Listed) else "one text"
    wrong = f"{node.key} is a set of keys with values, not {what}."
    mend = f"Write {listing(known)} indented below it, each with a colon and its value."
    return fault("wrong-value", node.at, written(node), wrong, mend)


def _tuple_hook(kind: Any, converter: Converter) -> Hook:
    """Make the hook for a list; one text alone counts as a list of one."""
    item_type = get_args(kind)[0]
    item: Hook = converter.get_structure_hook(item_type)

    def structure(node: Node, _: Any) -> tuple[Any, ...]:
        if isinstance(node, Mapped):
            wrong = f"{node.key} is a list, not a set of keys."
            raise Faults(
                fault("wrong-value", node.at, written(node), wrong, "Begin each item with a dash.")
            )
        nodes = node.items if isinstance(node, Listed) else (node,)
        return tuple(_each(item, item_type, enumerate(nodes)).values())

    return structure


def _mapping_hook(kind: Any, converter: Converter) -> Hook:
    """Make the hook for values by name."""
    name_type, item_type = get_args(kind)
    item: Hook = converter.get_structure_hook(item_type)
    read_name = placed_reader(name_type)

    def structure(node: Node, _: Any) -> Mapping[str, Any]:
        if not isinstance(node, Mapped):
            raise Faults(_wants_names(node))
        findings: list[Finding] = []
        for name, at in node.names.items():
            try:
                read_name(Scalar(name, at, "An id"), None)
            except Faults as faults:
                findings += faults.findings
        return _each(item, item_type, node.entries.items(), findings)

    return structure


def _wants_names(node: Node) -> Finding:
    what = "a list" if isinstance(node, Listed) else "one text"
    wrong = f"{node.key} is a set of names with values, not {what}."
    mend = "Write them indented below it, one a line, each with a colon and its value."
    return fault("wrong-value", node.at, written(node), wrong, mend)


def _each(
    item: Hook, item_type: Any, nodes: Any, found: list[Finding] | None = None
) -> dict[Any, Any]:
    """Every item by its key. Raises Faults with those of all items."""
    made: dict[Any, Any] = {}
    findings: list[Finding] = list(found or ())
    for key, node in nodes:
        try:
            made[key] = item(node, item_type)
        except Faults as faults:
            findings += faults.findings
    if findings:
        raise Faults(*findings)
    return made


def _placed_hook(kind: Any, _: Converter) -> Hook:
    return placed_reader(get_args(kind)[0])


def _converter() -> Converter:
    converter = Converter()
    converter.register_structure_hook_factory(
        lambda kind: has(get_origin(kind) or kind), _class_hook
    )
    converter.register_structure_hook_factory(lambda kind: get_origin(kind) is tuple, _tuple_hook)
    converter.register_structure_hook_factory(
        lambda kind: get_origin(kind) is Mapping, _mapping_hook
    )
    converter.register_structure_hook_factory(lambda kind: get_origin(kind) is Placed, _placed_hook)
    converter.register_structure_hook_func(lambda kind: kind is Body, lambda body, _: body)
    return converter


_CONVERTER = _converter()
