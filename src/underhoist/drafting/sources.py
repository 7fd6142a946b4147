"""The manual's texts as the drafting page carries them, so that a draft is checked among them."""

import json
from collections.abc import Mapping

from attrs import asdict, frozen

from underhoist.prose import STEP_WORDS

Size = tuple[int, int]


@frozen
class Blank:
    """What a new page of one kind begins with."""

    kind: str
    title: str
    """The kind as a person says it."""
    folder: str
    """Where most pages of the kind are; "" is the manual's own folder."""
    text: str


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


def to_json(sources: Sources) -> str:
    """Write the sources as the page reads them."""
    made = {
        "name": sources.name,
        "demo": sources.demo,
        "pages": dict(sources.pages),
        "drawings": dict(sources.drawings),
        "paragraphs": list(STEP_WORDS),
        "kinds": [asdict(each) for each in sources.blanks],
    }
    return json.dumps(made, ensure_ascii=False, separators=(",", ":"))


def from_json(text: str) -> Sources:
    """Read what `to_json` wrote."""
    made = json.loads(text)
    return Sources(
        name=made["name"],
        demo=made["demo"],
        pages=made["pages"],
        drawings={
            file: (size[0], size[1]) if size else None for file, size in made["drawings"].items()
        },
        blanks=tuple(Blank(**each) for each in made["kinds"]),
    )
