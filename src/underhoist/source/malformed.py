"""What the YAML parser complains about, put where the author can mend it and in plain words.

The parser's own English is for programmers, and its two makes word it differently. Here each
complaint is known by a piece of either wording.
"""

import re

import yaml

from underhoist.finding import Edit, Finding
from underhoist.place import Place
from underhoist.source.faults import FIRST_LINE, fault
from underhoist.source.marks import Marks
from underhoist.words import NOT_WRITTEN

OPENED = {
    "while scanning a quoted scalar": (
        "The quotes that open here are not closed.", "Close them at the end of the text."
    ),
    "while parsing a flow sequence": (
        "The bracket that opens here is not closed.", "Close it with ]; part items by commas."
    ),
    "while parsing a flow mapping": (
        "The brace that opens here is not closed.", "Close it with }; part keys by commas."
    ),
    "while scanning a simple key": (
        "This line is no key with a value.", "Write a colon and a space after the key."
    ),
}  # fmt: skip
"""The parser sees what was left open only where the next key begins; the author wants its start."""

SAID = {
    "control characters": (
        "A sign that cannot be printed stands here.", "Take it out."
    ),
    "special characters": (
        "A sign that cannot be printed stands here.", "Take it out."
    ),
    "escape": (
        "After a backslash in double quotes only certain letters can stand.",
        "Write the text in single quotes.",
    ),
    "sequence entries": (
        "A list cannot begin on the line of its key.",
        "Write it in brackets, or each item on a line of its own, with a dash.",
    ),
    "node content": (
        "A bracket or a comma stands here that belongs to nothing.",
        "Take it out, or put the text in quotes.",
    ),
    "alphabetic or numeric": (
        "A text cannot begin with this sign.", "Put the text in quotes."
    ),
    "line break": (
        "After | or > the text begins on the next line.",
        "Put it there, indented; or put the text in quotes.",
    ),
    "indentation indicators": (
        "After | or > the text begins on the next line.",
        "Put it there, indented; or put the text in quotes.",
    ),
    "document start": (
        "The front matter is two documents.", "Take the line of dots out."
    ),
}  # fmt: skip
"""What is wrong and how to mend it, by a piece of the parser's wording."""

_UNKNOWN = (
    "The front matter cannot be read here.",
    "Look at the indentation, quotes and brackets of this line and the one above.",
)
_COLON_IN_TEXT = re.compile(
    r"( *(?:- )?[\w-]+: +)([^\s\"'\[\]{}&*!|>%@`#,?-][^\"\\#]*?:(?: [^\"\\#]*?|)) *"
)
"""A key and a text with a colon of its own that is followed by a space or by nothing."""


def complaint(error: yaml.YAMLError, text: str, file: str) -> Finding:
    """Put the parser's complaint at its line, with the mend for the usual slips."""
    problem = str(getattr(error, "problem", None) or getattr(error, "reason", None) or error)
    opened = OPENED.get(getattr(error, "context", None) or "")
    lines = text.split("\n")
    row, column = _where(error, text, "context_mark" if opened else "problem_mark")
    row = min(row, len(lines) - 1)
    line = lines[row]
    at = Place(file, row + FIRST_LINE, column + 1)
    wrong, mend = opened or _said(problem, line, column)
    mend = _unquoted_mark(line) or mend
    edit = _quotes(line, at) if "mapping values" in problem else None
    return fault("front-matter", at, line, wrong, mend, edit)


def _where(error: yaml.YAMLError, text: str, mark_name: str) -> tuple[int, int]:
    """Return row and column of the complaint, from 0."""
    mark = getattr(error, mark_name, None)
    if mark is not None:
        return Marks(text).place(mark)
    sign = yaml.reader.Reader.NON_PRINTABLE.search(text)  # a reader's complaint has no mark
    return Marks(text).at(sign.start() if sign else 0)


def _said(problem: str, line: str, column: int) -> tuple[str, str]:
    """Say what is wrong and how to mend it."""
    before = line[:column].rstrip()
    if "\t" in line and ("tab" in problem or "token" in problem):
        return "A tab stands where only spaces may.", "Indent with spaces, not with tabs."
    if "token" in problem:
        sign = line[column : column + 1]
        return (
            f"A text cannot begin with the sign {sign} unless it is in quotes.",
            "Put the text in quotes.",
        )
    if "mapping values" in problem:
        return _second_colon() if ": " in f"{before} " else _misplaced_key()
    if "expected key" in problem or "block end" in problem or "'-' indicator" in problem:
        return _after_the_end(before) if before else _misplaced_key()
    return next((said for piece, said in SAID.items() if piece in problem), _UNKNOWN)


def _second_colon() -> tuple[str, str]:
    return (
        "The text holds a colon of its own.",
        "Put the text after the first colon in quotes.",
    )


def _misplaced_key() -> tuple[str, str]:
    return (
        "A key cannot stand here: its indentation or the line above is wrong.",
        "Begin it below the keys it belongs with, and see that the line above has a colon.",
    )


def _after_the_end(before: str) -> tuple[str, str]:
    """Say what follows a closed text; an apostrophe in single quotes closes it by mistake."""
    if before.endswith("'"):
        return (
            "The text goes on after the single quote that closes it.",
            "Put the whole text in double quotes.",
        )
    return (
        "Something follows after the end of the value.",
        "Take it out, or put the whole text in quotes.",
    )


def _unquoted_mark(line: str) -> str | None:
    """Advise quotes for the mark between braces or brackets, where it begins a key."""
    if f'"{NOT_WRITTEN}"' in line or NOT_WRITTEN not in line:
        return None
    return f'Put {NOT_WRITTEN} in quotes between braces or brackets: "{NOT_WRITTEN}".'


def _quotes(line: str, at: Place) -> Edit | None:
    """Put quotes round a text with a colon in it, where nothing else in it means anything."""
    found = _COLON_IN_TEXT.fullmatch(line)
    if found is None:
        return None
    start, end = found.start(2) + 1, found.end(2) + 1
    text = found[2].strip("“”„‘’«» ")
    return Edit(at.file, at.line, start, at.line, end, f'"{text}"')
