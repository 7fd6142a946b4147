"""Refuses what a browser would run from the manual's folder: live drawings, and web pages.

A drawing on a page is only shown; opened by itself it is a page of the site that no policy covers.
So it may hold what draws, and nothing that runs, opens or fetches anything else.
"""

import re
from pathlib import PurePosixPath
from typing import NoReturn
from xml.parsers import expat

from underhoist.finding import Finding
from underhoist.place import Place
from underhoist.source.faults import Faults, fault

DRAWING = ".svg"
WEB_PAGES = frozenset({
    ".html", ".htm", ".xhtml", ".xht", ".shtml", ".mht", ".mhtml", ".xml", ".xsl", ".xslt", ".svgz",
})  # fmt: skip
"""Endings of files that a browser opens as pages, with whatever they run."""

_XHTML = "http://www.w3.org/1999/xhtml"
_XLINK = "http://www.w3.org/1999/xlink"
_LIVE = frozenset({
    "script", "foreignObject", "handler", "listener", "iframe", "embed", "object", "audio", "video",
    "canvas", "set", "animate", "animateTransform", "animateMotion", "animateColor", "discard",
})  # fmt: skip
"""Elements of SVG that run, move or hold something else."""

_INSIDE = re.compile(r"\s*(?:#|data:image/(?:png|jpeg|gif|webp);base64,)")
_FETCHES = re.compile(r"url\(\s*+[\"']?+\s*+(?!#)|@import|image-set|\\", re.IGNORECASE)
"""Words of a style that lead elsewhere; a backslash could hide them."""

_MEND = "Take it out, and save the drawing as plain SVG."


def is_live(file: str) -> bool:
    """Say whether a file with this name has to be looked into, or refused."""
    return PurePosixPath(file.lower()).suffix in {DRAWING, *WEB_PAGES}


def live_file(file: str, data: bytes) -> Finding | None:
    """Return what is wrong with a drawing, or that the file is a web page; None for any other."""
    ending = PurePosixPath(file.lower()).suffix
    if ending in WEB_PAGES:
        wrong = f"A file that ends in {ending} opens as a page of its own, outside the manual."
        mend = "Write it as a page in Markdown, or keep it elsewhere."
        return fault("outside-manual", Place(file, 1, 1), file, wrong, mend)
    if ending != DRAWING:
        return None
    try:
        _Drawing(file).read(data)
    except Faults as faults:
        return faults.findings[0]
    except expat.ExpatError as error:
        wrong = f"The drawing is no sound SVG: {expat.ErrorString(error.code)}."
        at = Place(file, error.lineno, error.offset + 1)
        return fault("unreadable-page", at, file, wrong, "Save it as plain SVG once more.")
    return None


class _Drawing:
    """Reads one drawing, and raises Faults at the first thing in it that does not draw."""

    def __init__(self, file: str) -> None:
        self.file = file
        self.style: list[str] | None = None
        self.parser = expat.ParserCreate(namespace_separator=" ")
        self.parser.StartDoctypeDeclHandler = self._document_type
        self.parser.ProcessingInstructionHandler = self._instruction
        self.parser.StartElementHandler = self._element
        self.parser.EndElementHandler = self._end
        self.parser.CharacterDataHandler = self._words

    def read(self, data: bytes) -> None:
        self.parser.Parse(data, True)

    def _refuse(self, written: str, wrong: str) -> NoReturn:
        column = self.parser.CurrentColumnNumber + 1
        at = Place(self.file, self.parser.CurrentLineNumber, column)
        raise Faults(fault("outside-manual", at, written, wrong, _MEND))

    def _document_type(self, name: str, _: str | None, __: str | None, inner: bool) -> None:
        if inner:
            self._refuse(f"<!DOCTYPE {name} [", "A drawing declares no entities.")

    def _instruction(self, name: str, _: str) -> None:
        self._refuse(f"<?{name}", "A drawing gives no instructions to a browser.")

    def _element(self, name: str, attributes: dict[str, str]) -> None:
        space, _, local = name.rpartition(" ")
        if local in _LIVE or space == _XHTML:
            self._refuse(f"<{local}", f"<{local}> does not draw: it runs, moves or holds a page.")
        for key, value in attributes.items():
            space, _, name = key.rpartition(" ")
            if space in {"", _XLINK}:
                self._attribute(name, value)
        if local == "style":
            self.style = []

    def _attribute(self, name: str, value: str) -> None:
        if name.lower().startswith("on"):
            self._refuse(f"{name}={value}", f"{name} would run a script.")
        if name in {"href", "src"} and not _INSIDE.match(value):
            self._refuse(f"{name}={value}", f"{name} leads out of the drawing.")
        if _FETCHES.search(value) and name != "href":
            self._refuse(f"{name}={value}", f"{name} leads out of the drawing.")

    def _end(self, _: str) -> None:
        style, self.style = "".join(self.style or ()), None
        if found := _FETCHES.search(style):
            self._refuse(style[found.start() :], "The drawing's style leads out of the drawing.")

    def _words(self, text: str) -> None:
        if self.style is not None:
            self.style.append(text)
