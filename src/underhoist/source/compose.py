"""Reads the front matter's YAML by its events: every node has a place and nothing expands."""

# ruff: noqa: ANN401  (PyYAML's events have no types)

from collections.abc import Callable, Iterator
from typing import Any

import yaml
from yaml.events import (
    AliasEvent,
    DocumentStartEvent,
    MappingEndEvent,
    MappingStartEvent,
    ScalarEvent,
    SequenceEndEvent,
    SequenceStartEvent,
    StreamEndEvent,
    StreamStartEvent,
)

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
    loader = None
    try:
        loader = LOADER(text)
        composer = _Composer(loader.get_event, text, file)
        return composer.page(), composer.findings
    except yaml.YAMLError as error:
        raise Faults(complaint(error, text, file)) from None
    finally:
        if loader is not None:
            loader.dispose()


class _Composer:
    """Turns the stream of events into nodes, one page at a time."""

    def __init__(self, event: Callable[[], Any], text: str, file: str) -> None:
        """Take what gives the next event, and the text that the events are of."""
        self.file = file
        self.event = event
        self.mark = Marks(text).place
        self.findings: list[Finding] = []

    def page(self) -> Mapped:
        event = self.event()
        while isinstance(event, StreamStartEvent | DocumentStartEvent):
            event = self.event()
        start = Place(self.file, 1, 1)
        if isinstance(event, StreamEndEvent):
            wrong = "The front matter is empty."
            raise Faults(fault("front-matter", start, "", wrong, "Write kind: and title: first."))
        node = self.node(event, "", 1)
        if not isinstance(node, Mapped):
            raise _no_keys(node.at, written(node))
        self.event()
        if not isinstance(self.event(), StreamEndEvent):
            wrong, mend = "The front matter is two documents.", "Take the line of dots out."
            raise Faults(fault("front-matter", start, "...", wrong, mend))
        return node

    def node(self, event: Any, key: str, depth: int, within: str = ":") -> Node:
        row, column = self.mark(event.start_mark)
        at = Place(self.file, row + FIRST_LINE, column + 1)
        if event.anchor is not None or event.tag is not None or depth > DEEPEST:
            raise Faults(_refused(event, at))
        if type(event) is ScalarEvent:
            return Scalar(event.value, at, key, self._until(event), within)
        if type(event) is SequenceStartEvent:
            inside = "[" if event.flow_style else "-"
            return Listed(tuple(self._items(key, depth, inside)), at, key)
        return self._mapped(at, key, depth, "{" if event.flow_style else ":")

    def _items(self, key: str, depth: int, within: str) -> Iterator[Node]:
        while type(event := self.event()) is not SequenceEndEvent:
            yield self.node(event, key, depth + 1, within)

    def _mapped(self, at: Place, key: str, depth: int, within: str) -> Mapped:
        entries: dict[str, Node] = {}
        names: dict[str, Place] = {}
        quoted: set[str] = set()
        latest = ""
        while type(event := self.event()) is not MappingEndEvent:
            name = self.node(event, key, depth + 1, within)
            if not isinstance(name, Scalar):
                raise _no_name(name)
            value = self.node(self.event(), name.text, depth + 1, within)
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
        if event.style or not event.value or event.start_mark.line != event.end_mark.line:
            return 0
        return self.mark(event.end_mark)[1] + 1


def _refused(event: Any, at: Place) -> Finding:
    """Refuse an alias, an anchor, a tag or a level too deep."""
    if isinstance(event, AliasEvent):
        return _sharing(at, f"*{event.anchor}", "An alias repeats another value.")
    if event.anchor is not None:
        return _sharing(at, f"&{event.anchor}", "An anchor names a value to repeat.")
    if event.tag is not None:
        tag = event.tag.replace("tag:yaml.org,2002:", "!!")
        return _sharing(at, tag, "A tag gives a value another type.")
    wrong = f"The front matter is nested more than {DEEPEST} levels deep."
    mend = "Take the extra brackets or indentation out."
    bracket = "{" if isinstance(event, MappingStartEvent) else "["
    return fault("front-matter", at, getattr(event, "value", bracket), wrong, mend)


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
