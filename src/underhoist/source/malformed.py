"""What the YAML parser complains about, put where the author can mend it and in plain words."""

import yaml

from underhoist.finding import Finding
from underhoist.place import Place
from underhoist.source.faults import FIRST_LINE, fault
from underhoist.words import NOT_WRITTEN

UNCLOSED = {
    "while scanning a quoted scalar": "Close the quotes that open here.",
    "while parsing a flow sequence": "Close the bracket that opens here with ].",
    "while parsing a flow mapping": "Close the brace that opens here with }.",
    "while scanning a simple key": "Write a colon and a space after the key.",
}
"""The parser sees what was left open only where the next key begins; the author wants its start."""


def complaint(error: yaml.YAMLError, text: str, file: str) -> Finding:
    """Put the parser's complaint at its line, with the mend for the usual slips."""
    problem = getattr(error, "problem", None) or getattr(error, "reason", None) or str(error)
    unclosed = UNCLOSED.get(getattr(error, "context", None) or "")
    lines = text.split("\n")
    row, column = _where(error, text, "context_mark" if unclosed else "problem_mark")
    row = min(row, len(lines) - 1)
    at = Place(file, row + FIRST_LINE, column + 1)
    line = lines[row]
    wrong = f"The YAML cannot be read here: {problem}."
    mend = _unquoted_mark(line) or unclosed or _usual_mend(problem, line)
    return fault("front-matter", at, line, wrong, mend)


def _where(error: yaml.YAMLError, text: str, mark_name: str) -> tuple[int, int]:
    """Return row and column of the complaint, from 0."""
    mark = getattr(error, mark_name, None)
    if mark is not None:
        return mark.line, mark.column
    sign = yaml.reader.Reader.NON_PRINTABLE.search(text)  # a reader's complaint has no mark
    before = text[: sign.start()] if sign else ""
    return before.count("\n"), len(before) - before.rfind("\n") - 1


def _unquoted_mark(line: str) -> str | None:
    """Advise quotes for the mark between braces or brackets, where it begins a key."""
    if f'"{NOT_WRITTEN}"' in line or NOT_WRITTEN not in line:
        return None
    return f'Put {NOT_WRITTEN} in quotes between braces or brackets: "{NOT_WRITTEN}".'


def _usual_mend(problem: str, line: str) -> str:
    if "control characters" in problem or "special characters" in problem:
        return "Take out the sign that cannot be printed."
    if "\t" in line:
        return "Indent with spaces, not with tabs."
    if "mapping values" in problem:
        return "Put the text after the first colon in quotes: it holds a colon of its own."
    return "Look at the indentation, quotes and brackets of this line and the one above."
