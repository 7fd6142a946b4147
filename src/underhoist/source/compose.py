"""Reads the front matter's YAML by its events: every node has a place and nothing expands."""

# ruff: noqa: ANN401  (PyYAML's events have no types)

from collections.abc import Iterator
from typing import Any, cast

import yaml

from underhoist.finding import Edit, Finding
from underhoist.place import Place
from underhoist.source.commas import parted_by_comma
from underhoist.source.faults import FIRST_LINE, Faults, fault
from underhoist.source.malformed import complaint
from underhoist.source.marks import Marks
from underhoist.source.nodes import Listed, Mapped, Node, Scalar, written

DEEPEST = 12
"""Levels of nesting; the deepest value of the model, a part's measure, stands on the seventh."""

LOADER: Any = getattr(yaml, "CBaseLoader", yaml.BaseLoader)
"""libyaml's parser where there is one: ten times as fast, same events. The browser has none."""


def compose(text: str, file: str) -> tuple[Mapped, list[Finding]]:
    """Return the front matter's keys and values, and the faults that leave the rest readable.

    Raises Faults where nothing can be read: malformed, empty, not keys and values, anchors,
    aliases or tags, nested too deeply.
    """
    composer = _Composer(text, file)
    try:
        return composer.page(), composer.findings
    except yaml.YAMLError as error:
        raise Faults(complaint(error, text, file)) from None


class _Composer:
    """Turns the stream of events into nodes, one page at a time."""

    def __init__(self, text: str, file: str) -> None:
        self.file = file
        self.marks = Marks(text)
        self.findings: list[Finding] = []
        self.events: Iterator[Any] = cast("Any", yaml).parse(text, Loader=LOADER)

    def page(self) -> Mapped:
        event = next(self.events)
        while isinstance(event, yaml.StreamStartEvent | yaml.DocumentStartEvent):
            event = next(self.events)
        start = Place(self.file, 1, 1)
        if isinstance(event, yaml.StreamEndEvent):
            wrong = "The front matter is empty."
            raise Faults(fault("front-matter", start, "", wrong, "Write kind: and title: first."))
        node = self.node(event, "", 1)
        if not isinstance(node, Mapped):
            raise _no_keys(node.at, written(node))
        next(self.events)
        if not isinstance(next(self.events), yaml.StreamEndEvent):
            wrong, mend = "The front matter is two documents.", "Take the line of dots out."
            raise Faults(fault("front-matter", start, "...", wrong, mend))
        return node

    def node(self, event: Any, key: str, depth: int, within: str = ":") -> Node:
        at = self._place(event)
        self._refuse(event, at, depth)
        if isinstance(event, yaml.ScalarEvent):
            return Scalar(event.value, at, key, self._until(event), within)
        if isinstance(event, yaml.SequenceStartEvent):
            inside = "[" if event.flow_style else "-"
            return Listed(tuple(self._items(key, depth, inside)), at, key)
        return self._mapped(at, key, depth, "{" if event.flow_style else ":")

    def _items(self, key: str, depth: int, within: str) -> Iterator[Node]:
        while not isinstance(event := next(self.events), yaml.SequenceEndEvent):
            yield self.node(event, key, depth + 1, within)

    def _mapped(self, at: Place, key: str, depth: int, within: str) -> Mapped:
        entries: dict[str, Node] = {}
        names: dict[str, Place] = {}
        quoted: set[str] = set()
        latest = ""
        while not isinstance(event := next(self.events), yaml.MappingEndEvent):
            name = self.node(event, key, depth + 1, within)
            if not isinstance(name, Scalar):
                raise _no_name(name)
            value = self.node(next(self.events), name.text, depth + 1, within)
            if whole := parted_by_comma(entries.get(latest), name, value):
                entries[latest] = whole
                continue
            if name.text in names:
                self.findings.append(_twice(name, names[name.text], entries[name.text], value))
                continue
            latest = name.text
            entries[latest], names[latest] = value, name.at
            if not name.until:
                quoted.add(latest)
        return Mapped(entries, names, at, key, frozenset(quoted))

    def _until(self, event: Any) -> int:
        plain = event.style in {None, ""} and event.start_mark.line == event.end_mark.line
        return self.marks.place(event.end_mark)[1] + 1 if plain and event.value else 0

    def _place(self, event: Any) -> Place:
        row, column = self.marks.place(event.start_mark)
        return Place(self.file, row + FIRST_LINE, column + 1)

    def _refuse(self, event: Any, at: Place, depth: int) -> None:
        """Raise Faults at an alias, an anchor, a tag or a level too deep."""
        if isinstance(event, yaml.AliasEvent):
            raise Faults(_sharing(at, f"*{event.anchor}", "An alias repeats another value."))
        if event.anchor is not None:
            raise Faults(_sharing(at, f"&{event.anchor}", "An anchor names a value to repeat."))
        if event.tag is not None:
            tag = event.tag.replace("tag:yaml.org,2002:", "!!")
            raise Faults(_sharing(at, tag, "A tag gives a value another type."))
        if depth > DEEPEST:
            wrong = f"The front matter is nested more than {DEEPEST} levels deep."
            mend = "Take the extra brackets or indentation out."
            bracket = "{" if isinstance(event, yaml.MappingStartEvent) else "["
            raise Faults(fault("front-matter", at, getattr(event, "value", bracket), wrong, mend))


def _twice(name: Scalar, first: Place, before: Node, value: Node) -> Finding:
    """Refuse the second of two keys; where it says the same on a line of its own it can go."""
    wrong = f"{name.text} stands on line {first.line} already."
    if not _says_the_same(name, before, value):
        return fault("duplicate-key", name.at, name.text, wrong, "Keep one of the two.")
    edit = Edit(name.at.file, name.at.line, 1, name.at.line + 1, 1, "")
    mend = "Take this line out: it says the same."
    return fault("duplicate-key", name.at, name.text, wrong, mend, edit)


def _says_the_same(name: Scalar, before: Node, value: Node) -> bool:
    """Whether key and value repeat the ones before, on a line of their own at the left."""
    if not (isinstance(before, Scalar) and isinstance(value, Scalar) and before.text == value.text):
        return False
    on_one_line = value.until > 0 and value.at.line == name.at.line
    return on_one_line and value.within == ":" and name.at.column == 1


def _no_keys(at: Place, written: str) -> Faults:
    wrong = "The front matter is not a set of keys with values."
    mend = "Write a key, a colon and a value, such as title: Set the band."
    return Faults(fault("front-matter", at, written, wrong, mend))


def _no_name(name: Node) -> Faults:
    wrong = "A key is one plain text, not a list or a set of keys."
    mend = "Write the key as a word before the colon; put text in braces in quotes."
    return Faults(fault("front-matter", name.at, written(name), wrong, mend))


def _sharing(at: Place, text: str, wrong: str) -> Finding:
    mend = "Write the value itself, in quotes if it begins with * & or !."
    return fault("yaml-alias", at, text, wrong, mend)
