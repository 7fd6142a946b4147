"""A page within a document of many: its links lead within it, its pictures are in it."""

import re
from collections.abc import Callable, Collection, Mapping
from html import escape, unescape
from html.parser import HTMLParser
from urllib.parse import urljoin, urlsplit

from attrs import frozen
from markupsafe import Markup

from underhoist.pages import Sheet

Picture = Callable[[str], str]
"""Gives the data of the picture at an address of the site, as an address that holds it."""

_ATTRIBUTE = re.compile(r'(\s)([\w:-]+)="([^"]*)"')
_IDS = frozenset({"id", "for", "aria-labelledby", "aria-describedby", "aria-controls", "headers"})
_VOID = frozenset({"img", "input", "br", "hr", "wbr", "source", "meta", "link"})


def name_of(address: str) -> str:
    """Name of the page at this address of the site: "kestrel-3/set-band", and "front"."""
    return address.strip("/") or "front"


@frozen
class Binder:
    """Knows which pages the document holds."""

    names: Mapping[str, str]
    """Address on the site to the name of its place in the document."""
    picture: Picture
    without: Collection[str] = ()
    """Classes of elements that are left out."""
    lists: Mapping[str, str] = {}
    """Folder of the site's lists to the place in the document that stands for all of them."""
    filled_in: bool = True
    """Whether a link may fill in a form of the document."""

    def bound(self, sheet: Sheet) -> Markup:
        """Return the page's HTML as it stands in the document.

        An id gets the page's name before it, a link to a page that is not there stays as words.
        """
        writer = _Writer(self, sheet)
        writer.feed(sheet.html)
        writer.close()
        return Markup("".join(writer.out))  # noqa: S704 - the page's own markup

    def place(self, link: str, base: str) -> str | None:
        """Return where a link of the page at `base` leads within the document, None for nowhere.

        A link to another site stays as it is.
        """
        if urlsplit(link).scheme:
            return link
        parts = urlsplit(urljoin(f"/{base}", link))
        path = parts.path.lstrip("/")
        if path not in self.names:
            instead = self.lists.get(path.partition("/")[0])
            return f"#{instead}" if instead else None
        name = self.names[path]
        query = f"?{parts.query}" if parts.query and self.filled_in else ""
        return f"#{name}" + (f".{parts.fragment}" if parts.fragment else query)


class _Writer(HTMLParser):
    """Writes the page again as it is read."""

    def __init__(self, binder: Binder, sheet: Sheet) -> None:
        super().__init__(convert_charrefs=False)
        self.binder, self.base, self.name = binder, sheet.address, name_of(sheet.address)
        self.out: list[str] = []
        self.skipped: list[str] = []
        """The open elements that are left out, innermost last."""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        classes = (dict(attrs).get("class") or "").split()
        if self.skipped or any(each in self.binder.without for each in classes):
            if tag not in _VOID:
                self.skipped.append(tag)
            return
        self.out.append(_ATTRIBUTE.sub(self._attribute, self.get_starttag_text() or ""))

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if not self.skipped:
            self.out.append(_ATTRIBUTE.sub(self._attribute, self.get_starttag_text() or ""))

    def handle_endtag(self, tag: str) -> None:
        if self.skipped:
            if tag == self.skipped[-1]:
                self.skipped.pop()
            return
        self.out.append(f"</{tag}>")

    def handle_data(self, data: str) -> None:
        if not self.skipped:
            self.out.append(data)

    def handle_entityref(self, name: str) -> None:
        self.handle_data(f"&{name};")

    def handle_charref(self, name: str) -> None:
        self.handle_data(f"&#{name};")

    def _attribute(self, found: re.Match[str]) -> str:
        space, name, value = found.groups()
        if name in _IDS:
            value = " ".join(f"{self.name}.{each}" for each in value.split())
        elif name == "href":
            place = self.binder.place(unescape(value), self.base)
            if place is None:
                return ""
            value = escape(place)
        elif name == "style":
            return ""  # the document's policy does not allow it
        elif name == "src":
            value = self.binder.picture(urljoin(f"/{self.base}", unescape(value)).lstrip("/"))
        elif "url(#" in value:
            value = value.replace("url(#", f"url(#{self.name}.")
        return f'{space}{name}="{value}"'
