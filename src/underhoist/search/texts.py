"""The words of a finished page, parted at the places that can be linked to."""

import re
from html import unescape

from attrs import define, field

_LEFT_OUT = frozenset(
    {"uh-used", "uh-first", "uh-follows", "uh-safety", "uh-jumps", "uh-presets", "uh-hazard",
     "uh-step__number", "uh-purpose", "uh-facts", "uh-words__others", "uh-faults", "uh-families",
     "uh-procedures", "uh-calculators", "uh-more", "uh-changes"}
)  # fmt: skip
"""Classes of what repeats other pages or tells of their past, or stands in the summary already."""
_SILENT = frozenset({"script", "style", "svg", "select", "option", "nav", "button"})
_VOID = frozenset({"img", "input", "br", "hr", "wbr", "source", "meta", "link"})
_INLINE = frozenset({"a", "abbr", "b", "code", "em", "i", "mark", "span", "strong", "sub", "sup"})


@define
class Part:
    """A place of a page: what a link to it says, what it tells to do, and the rest of its words."""

    at: str
    """The anchor, empty for the top of the page."""
    label: str = ""
    do: list[str] = field(factory=list[str])
    prose: list[str] = field(factory=list[str])


_PIECE = re.compile(r"<(/?)([a-zA-Z][\w-]*)([^>]*)>|([^<]+)")
"""A tag or text. Pages are made by us: every `<` and `>` of their texts is escaped."""
_ATTRIBUTE = re.compile(r"\b(class|id)=\"([^\"]*)\"")


class _Parts:
    """Hands each piece of text to the place below which it stands."""

    def __init__(self) -> None:
        self.parts = [Part("")]
        self.silent: list[str] = []
        """The open elements whose text is left out, innermost last."""
        self.heading = self.doing = False

    def read(self, html: str) -> None:
        """Take a whole page."""
        for end, tag, attributes, text in _PIECE.findall(html):
            if text:
                self._text(text)
            elif end:
                self._end(tag)
            elif tag not in _VOID:
                self._start(tag, attributes)
                if attributes.endswith("/"):
                    self._end(tag)

    def _start(self, tag: str, attributes: str) -> None:
        named = dict(_ATTRIBUTE.findall(attributes)) if attributes else {}
        classes = set(named.get("class", "").split())
        if self.silent or tag in _SILENT or classes & _LEFT_OUT:
            self.silent.append(tag)
            return
        anchor = unescape(named.get("id", ""))
        if tag == "h2":
            self.heading = True
            self.parts.append(Part(anchor))
        elif "uh-step" in classes:
            self.parts.append(Part(anchor, f"Step {anchor.removeprefix('step-')}"))
        elif tag == "div" and anchor.startswith("word-"):
            self.parts.append(Part(anchor))
        self.doing |= "uh-step__do" in classes
        self._part(tag)

    def _end(self, tag: str) -> None:
        if self.silent:
            if tag == self.silent[-1]:
                self.silent.pop()
            return
        if tag == "h2":
            self.heading = False
        if tag == "p":
            self.doing = False
        self._part(tag)

    def _text(self, escaped: str) -> None:
        if self.silent:
            return
        data = unescape(escaped)
        part = self.parts[-1]
        if self.heading:
            part.label += data
        else:
            (part.do if self.doing else part.prose).append(data)

    def _part(self, tag: str) -> None:
        """Keep the words of two blocks apart."""
        if tag not in _INLINE and not self.heading:
            self.parts[-1].prose.append(" ")


def parts_of(html: str) -> list[Part]:
    """Return the places of a page in order, those without any word left out."""
    reader = _Parts()
    reader.read(str(html))
    return [part for part in reader.parts if part.label or "".join(part.prose + part.do).strip()]


def plain(pieces: list[str]) -> str:
    """Join pieces of text with single spaces."""
    return " ".join("".join(pieces).split())
