"""Front matter as an author would write it: short lists in brackets, no quotes without need."""

import json
import re
from collections.abc import Iterable, Iterator

from underhoist.words import NOT_WRITTEN

_PLAIN = re.compile(r"[^\W_][\w ()/·°%.*+'’;–-]*")
"""What YAML takes as it is, in a list as well."""


def scalar(text: str) -> str:
    """Write one value; nothing becomes the mark for what is still to be written."""
    if not text:
        return NOT_WRITTEN
    return text if _PLAIN.fullmatch(text.replace(", ", " ")) else _quoted(text)


def items(texts: Iterable[str]) -> str:
    """Write a list of values."""
    return f"[{', '.join(_quoted(each) if ',' in each else scalar(each) for each in texts)}]"


def line(key: str, answer: tuple[str, ...], *, needed: bool, many: bool = False) -> Iterator[str]:
    """Yield the line of a key: with the mark where the page needs it, nothing where it does not."""
    if answer:
        yield f"{key}: {items(answer) if many else scalar(answer[0])}"
    elif needed:
        yield f"{key}: {NOT_WRITTEN}"


def _quoted(text: str) -> str:
    return json.dumps(text, ensure_ascii=False)
