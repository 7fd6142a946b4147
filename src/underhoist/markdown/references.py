"""Inline references: `<torque:band-seat>` and `[seat the band](torque:band-seat)`."""

import re
from urllib.parse import urlsplit
from xml.etree.ElementTree import Element, SubElement

from markdown import Markdown
from markdown.inlinepatterns import InlineProcessor
from markdown.treeprocessors import Treeprocessor

from underhoist.markdown.context import SCHEMES, Context, Shown

AUTOLINK = rf"<((?:{'|'.join(SCHEMES)}):[^<>\s]+)>"
BARE = "data-bare"
"""Mark of a reference that brings no words of its own."""
REF = "data-ref"
"""Scheme and full id of a reference that was resolved."""
_WEB = {"http", "https", "mailto", "tel"}


class Autolink(InlineProcessor):
    """`<scheme:id>` becomes a link that still wants its words."""

    def handleMatch(  # noqa: N802 - Python-Markdown's name
        self, m: re.Match[str], data: str
    ) -> tuple[Element, int, int]:
        """Make the link, to be filled in once the whole page is read."""
        del data
        link = Element("a", {"href": m[1], BARE: ""})
        return link, m.start(0), m.end(0)


class Resolve(Treeprocessor):
    """Gives every link and drawing its true address, and every reference its live value."""

    def __init__(self, md: Markdown, context: Context) -> None:
        super().__init__(md)
        self.context = context

    def run(self, root: Element) -> None:
        """Resolve all links and images in place."""
        for link in list(root.iter("a")):
            self._link(link)
        for image in root.iter("img"):
            self._image(image)

    def _link(self, link: Element) -> None:
        href = link.get("href", "")
        scheme, _, id_ = href.partition(":")
        bare = link.attrib.pop(BARE, None) is not None
        if scheme in SCHEMES:
            shown = self.context.shown(scheme, id_)
            if shown is None:
                _unlink(link, href if bare else None)
            else:
                _fill(link, shown, bare=bare)
        elif urlsplit(href).scheme not in _WEB and not href.startswith("#"):
            address = self.context.to_file(href)
            if address is None:
                _unlink(link, None)
            else:
                link.set("href", address)

    def _image(self, image: Element) -> None:
        path = image.get("src", "")
        size = self.context.size(path)
        image.set("src", self.context.to_file(path) or "")
        if size is not None:
            image.set("width", str(size[0]))
            image.set("height", str(size[1]))


def _fill(link: Element, shown: Shown, *, bare: bool) -> None:
    """Put the live words in: a torque is a chip with its value, anything else a plain link."""
    link.set("href", shown.href)
    link.set(REF, shown.key)
    if shown.value is None:
        if bare:
            link.text = shown.title
        return
    link.set("class", "uh-chip")
    if not bare:
        _append_text(link, " ")
    value = SubElement(link, "span", {"class": "uh-chip__value"})
    value.text = shown.value


def _append_text(element: Element, text: str) -> None:
    if len(element):
        element[-1].tail = (element[-1].tail or "") + text
    else:
        element.text = (element.text or "") + text


def _unlink(link: Element, words: str | None) -> None:
    """Leave the words of a link that leads nowhere; the check has already said so."""
    link.tag = "span"
    link.attrib.clear()
    if words is not None:
        link.text = words
