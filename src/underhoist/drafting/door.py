"""The one door between the page and the desk: a question and its answer, both as JSON."""

import json
from pathlib import Path
from tempfile import mkdtemp
from typing import Any

from underhoist.drafting.desk import Desk
from underhoist.drafting.difference import difference
from underhoist.drafting.sources import from_json

_desk: Desk | None = None


def open_desk(sources: str) -> str:
    """Lay the manual out, as `sources.to_json` wrote it; return an empty answer."""
    global _desk  # noqa: PLW0603 - one browser page, one manual
    _desk = Desk(from_json(sources), Path(mkdtemp()))
    return "null"


def ask(question: str) -> str:
    """Answer `look` (with file and text), `page`, `names` or `difference` (with old and new).

    Raises RuntimeError before `open_desk`, ValueError for another question.
    """
    if _desk is None:
        msg = "The manual is not laid out yet."
        raise RuntimeError(msg)
    asked: dict[str, Any] = json.loads(question)
    match asked["ask"]:
        case "look":
            answer: object = _desk.look(asked["file"], asked["text"])
        case "page":
            answer = _desk.page()
        case "names":
            answer = _desk.names()
        case "difference":
            answer = difference(asked["old"], asked["new"])
        case other:
            msg = f"Nothing is known of {other}."
            raise ValueError(msg)
    return json.dumps(answer)
