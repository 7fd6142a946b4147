"""Reads the front matter's YAML by its events: every node has a place and nothing expands."""

# ruff: noqa: ANN401  (PyYAML's events have no types)

from collections.abc import Iterator
from typing import Any, cast

import yaml

from underhoist.finding import Finding
from underhoist.place import Place
from underhoist.source.faults import Faults, fault
from underhoist.source.nodes import Listed, Mapped, Node, Scalar

DEEPEST = 12
"""Levels of nesting; the deepest value of the model, a part's measure, stands on the seventh."""

LOADER: Any = getattr(yaml, "CBaseLoader", yaml.BaseLoader)
"""libyaml's parser where there is one: ten times as fast, same events. The browser has none."""

FIRST_LINE = 2
"""The front matter starts below the opening dashes."""


def compose(text: str, file: str) -> tuple[Mapped, list[Finding]]:
    """Return the front matter's keys and values, and the faults that leave the rest readable.

    Raises Faults where nothing can be read: malformed, empty, not keys and values, anchors,
    aliases or tags, nested too deeply.
    """
    composer = _Composer(text, file)
    try:
        return composer.page(), composer.findings
    except yaml.YAMLError as error:
        raise Faults(_malformed(error, text, file)) from None


class _Composer:
    """Turns the stream of events into nodes, one page at a time."""

    def __init__(self, text: str, file: str) -> None:
        self.file = file
        self.findings: list[Finding] = []
        self.events: Iterator[Any] = cast("Any", yaml).parse(text, Loader=LOADER)

    def page(self) -> Mapped:
        event = next(self.events)
        while isinstance(event, yaml.StreamStartEvent | yaml.DocumentStartEvent):
            event = next(self.events)
        start = Place(self.file, 1, 1)
        if isinstance(event, yaml.StreamEndEvent):
            raise Faults(
                fault(
                    "front-matter",
                    start,
                    "",
                    "The front matter is empty.",
                    "Write kind: and title: first.",
                )
            )
        node = self.node(event, "", 1)
        if not isinstance(node, Mapped):
            raise Faults(self._not_a_mapping(node))
        next(self.events)
        if not isinstance(next(self.events), yaml.StreamEndEvent):
            raise Faults(self._two_documents())
        return node

    def node(self, event: Any, key: str, depth: int) -> Node:
        at = self._place(event)
        self._refuse(event, at, depth)
        if isinstance(event, yaml.ScalarEvent):
            return Scalar(event.value, at, key)
        if isinstance(event, yaml.SequenceStartEvent):
            return Listed(tuple(self._items(key, depth)), at, key)
        return self._mapped(at, key, depth)

    def _items(self, key: str, depth: int) -> Iterator[Node]:
        while not isinstance(event := next(self.events), yaml.SequenceEndEvent):
            yield self.node(event, key, depth + 1)

    def _mapped(self, at: Place, key: str, depth: int) -> Mapped:
        entries: dict[str, Node] = {}
        names: dict[str, Place] = {}
        while not isinstance(event := next(self.events), yaml.MappingEndEvent):
            name = self.node(event, key, depth + 1)
            if not isinstance(name, Scalar):
                raise Faults(self._not_a_name(name))
            value = self.node(next(self.events), name.text, depth + 1)
            if name.text in names:
                self.findings.append(self._twice(name, names[name.text]))
            else:
                entries[name.text], names[name.text] = value, name.at
        return Mapped(entries, names, at, key)

    def _place(self, event: Any) -> Place:
        mark = event.start_mark
        return Place(self.file, mark.line + FIRST_LINE, mark.column + 1)

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
            written = getattr(event, "value", bracket)
            raise Faults(fault("front-matter", at, written, wrong, mend))

    def _not_a_mapping(self, node: Node) -> Finding:
        text = node.text if isinstance(node, Scalar) else "a list"
        wrong = "The front matter is not a set of keys with values."
        return fault(
            "front-matter",
            node.at,
            text,
            wrong,
            "Write a key, a colon and a value, such as title: Set the band.",
        )

    def _not_a_name(self, node: Node) -> Finding:
        wrong = "A key is one plain text, not a list or a set of keys."
        return fault(
            "front-matter",
            node.at,
            "",
            wrong,
            "Write the key as a word before the colon; put text in braces in quotes.",
        )

    def _two_documents(self) -> Finding:
        wrong = "The front matter holds a second document."
        return fault(
            "front-matter", Place(self.file, 1, 1), "...", wrong, "Take the line of three dots out."
        )

    def _twice(self, name: Scalar, first: Place) -> Finding:
        wrong = f"{name.text} stands on line {first.line} already."
        return fault("duplicate-key", name.at, name.text, wrong, "Keep one of the two.")


def _sharing(at: Place, text: str, wrong: str) -> Finding:
    mend = "Write the value itself, in quotes if it begins with * & or !."
    return fault("yaml-alias", at, text, wrong, mend)


UNCLOSED = {
    "while scanning a quoted scalar": "Close the quotes that open here.",
    "while parsing a flow sequence": "Close the bracket that opens here with ].",
    "while parsing a flow mapping": "Close the brace that opens here with }.",
}
"""The parser sees what was left open only where the next key begins; the author wants its start."""


def _malformed(error: yaml.YAMLError, text: str, file: str) -> Finding:
    """Put the parser's complaint at its line, with the mend for the usual slips."""
    problem = getattr(error, "problem", None) or getattr(error, "reason", None) or str(error)
    unclosed = UNCLOSED.get(getattr(error, "context", None) or "")
    lines = text.split("\n")
    row, column = _where(error, text, "context_mark" if unclosed else "problem_mark")
    row = min(row, len(lines) - 1)
    at = Place(file, row + FIRST_LINE, column + 1)
    line = lines[row]
    wrong = f"The YAML cannot be read here: {problem}."
    return fault("front-matter", at, line, wrong, unclosed or _usual_mend(problem, line))


def _where(error: yaml.YAMLError, text: str, mark_name: str) -> tuple[int, int]:
    """Return row and column of the complaint, from 0."""
    mark = getattr(error, mark_name, None)
    if mark is not None:
        return mark.line, mark.column
    sign = yaml.reader.Reader.NON_PRINTABLE.search(text)  # a reader's complaint has no mark
    before = text[: sign.start()] if sign else ""
    return before.count("\n"), len(before) - before.rfind("\n") - 1


def _usual_mend(problem: str, line: str) -> str:
    if "control characters" in problem or "special characters" in problem:
        return "Take out the sign that cannot be printed."
    if "\t" in line:
        return "Indent with spaces, not with tabs."
    if "mapping values" in problem:
        return "Put the text after the first colon in quotes: it holds a colon of its own."
    return "Look at the indentation, quotes and brackets of this line and the one above."
