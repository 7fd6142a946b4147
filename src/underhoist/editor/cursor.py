"""Where the cursor stands: under which keys of the front matter, or in which reference."""

import re
from collections.abc import Iterator

from attrs import frozen

_INDENT = re.compile(r" *(?:- +)*")
_KEY = re.compile(r"([^\s:#{}\[\]\"'][^:]*?):(?=\s|$)")
_REFERENCE = re.compile(r"(?:<|\]\()([a-z]+):([a-z0-9/-]*)$")
_WHOLE_REFERENCE = re.compile(r"(?:<|\]\()([a-z]+):([a-z0-9/-]+)")
_WORD = re.compile(r"[\w/-]+")


@frozen
class InKeys:
    """In the front matter: the keys above, the key whose value is typed if one is, what is typed.

    `beside` are the keys that stand at the same level already.
    """

    path: tuple[str, ...]
    key: str | None
    typed: str
    beside: frozenset[str] = frozenset()


@frozen
class InReference:
    """Behind the colon of a reference in the text."""

    scheme: str
    typed: str


def front_lines(lines: list[str]) -> range:
    """Return the numbers of the front matter's lines, from 0; it may not have an end yet."""
    if not lines or lines[0].strip() != "---":
        return range(0)
    ends = (number for number, line in enumerate(lines[1:], 1) if line.strip() == "---")
    return range(1, next(ends, len(lines)))


def kind_of(lines: list[str]) -> str:
    """Return what stands after `kind:`, or nothing."""
    front = front_lines(lines)
    found = (re.match(r"kind:\s*(\S+)", lines[number]) for number in front)
    return next((each[1] for each in found if each), "")


def spot(lines: list[str], line: int, column: int) -> InKeys | InReference | None:
    """Return where the cursor is; None in plain text. Line and column count from 0."""
    before = lines[line][:column] if line < len(lines) else ""
    front = front_lines(lines)
    if line not in front:
        found = _REFERENCE.search(before)
        return InReference(found[1], found[2]) if found else None
    indent = _indent(before)
    key = _KEY.match(before, indent)
    path = _above(lines, line, indent)
    if key is None:
        typed = before[indent:]
        return InKeys(path, None, typed, frozenset(_beside(lines, front, line, indent)))
    return _in_braces(before[key.end() :], path, key[1])


def reference_at(line: str, column: int) -> tuple[str, str] | None:
    """Return scheme and id of the reference that the cursor is in."""
    for found in _WHOLE_REFERENCE.finditer(line):
        if found.start() <= column <= found.end():
            return found[1], found[2]
    return None


def word_at(line: str, column: int) -> tuple[int, str] | None:
    """Return the word under the cursor and where it begins."""
    for found in _WORD.finditer(line):
        if found.start() <= column <= found.end():
            return found.start(), found[0]
    return None


def _indent(line: str) -> int:
    found = _INDENT.match(line)
    return found.end() if found else 0


def _above(lines: list[str], line: int, indent: int) -> tuple[str, ...]:
    """Return the keys that this line stands below."""
    path: list[str] = []
    for number in range(line - 1, 0, -1):
        column = _indent(lines[number])
        key = _KEY.match(lines[number], column)
        if key and column < indent:
            path.insert(0, key[1])
            indent = column
    return tuple(path)


def _beside(lines: list[str], front: range, line: int, indent: int) -> Iterator[str]:
    """Yield the keys at the same level, up and down."""
    for numbers in (range(line - 1, 0, -1), range(line + 1, front.stop)):
        for number in numbers:
            column = _indent(lines[number])
            if lines[number].strip() and column < indent:
                break
            key = _KEY.match(lines[number], column)
            if key and column == indent:
                yield key[1]


def _in_braces(rest: str, path: tuple[str, ...], key: str) -> InKeys:
    """Follow braces and brackets of one line: {name: Hose, minutes: 5}."""
    opened: list[str] = []
    here: str | None = key
    typed = ""
    for at, sign in enumerate(rest):
        inside = opened[-1] if opened else ""
        if sign == "{":
            path, here, typed = (*path, here or ""), None, ""
            opened.append(sign)
        elif sign == "[":
            opened.append(sign)
            typed = ""
        elif sign in "]}" and opened:
            if opened.pop() == "{":
                here, path = path[-1], path[:-1]
            typed = ""
        elif sign == "," and opened:
            here, typed = (None if inside == "{" else here), ""
        elif sign == ":" and inside == "{" and rest[at + 1 : at + 2] in ("", " "):
            here, typed = typed.strip(), ""
        else:
            typed += sign
    return InKeys(path, here, typed.lstrip())
