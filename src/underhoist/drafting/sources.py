"""The manual's texts as the drafting page carries them, so that a draft is checked among them."""

import json
from collections.abc import Mapping
from pathlib import Path

from attrs import frozen

from underhoist.drafting.blank import Blank, blanks
from underhoist.model import Manual
from underhoist.pages import drawings
from underhoist.source import is_page
from underhoist.source.faults import Faults
from underhoist.source.split import decoded, read_bytes

Size = tuple[int, int]


@frozen(kw_only=True)
class Sources:
    """Every page's text, every drawing's name and size, and what a new page begins with."""

    name: str
    """What the manual is called."""
    demo: bool
    pages: Mapping[str, str]
    """Text by file, line ends made plain."""
    drawings: Mapping[str, Size | None]
    """Width and height by file; None where the file is no SVG drawing."""
    blanks: tuple[Blank, ...]


def gather(manual: Manual, folder: Path, *, name: str, demo: bool) -> Sources:
    """Read the texts of a manual's folder; a page that is no text is left out."""
    files = sorted(manual.files)
    texts = {file: _text(folder, file) for file in files if is_page(file)}
    return Sources(
        name=name,
        demo=demo,
        pages={file: text for file, text in texts.items() if text is not None},
        drawings={file: drawings.size(folder / file) for file in files if not is_page(file)},
        blanks=blanks(manual),
    )


def _text(folder: Path, file: str) -> str | None:
    try:
        return decoded(read_bytes(folder / file, file), file)
    except Faults:
        return None


def to_json(sources: Sources) -> str:
    """Write the sources as the page reads them."""
    made = {
        "name": sources.name,
        "demo": sources.demo,
        "pages": dict(sources.pages),
        "drawings": dict(sources.drawings),
        "kinds": [
            {"kind": each.kind, "title": each.title, "folder": each.folder, "text": each.text}
            for each in sources.blanks
        ],
    }
    return json.dumps(made, ensure_ascii=False, separators=(",", ":"))


def from_json(text: str) -> Sources:
    """Read what `to_json` wrote."""
    made = json.loads(text)
    return Sources(
        name=made["name"],
        demo=made["demo"],
        pages=made["pages"],
        drawings={file: tuple(size) if size else None for file, size in made["drawings"].items()},
        blanks=tuple(Blank(**each) for each in made["kinds"]),
    )
