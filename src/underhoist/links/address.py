"""Where each thing lives, as an address below the site's root; "" is the front page."""

import re
from functools import cache
from pathlib import PurePosixPath
from posixpath import normpath, relpath

from underhoist.model import Manual, Page
from underhoist.references import Target

_LINK = re.compile(r'\b(href|src)="(?![a-z]+:)([^"]*)"')
"""A link to another place of the site, as our own writers write it."""


@cache
def page_address(file: str) -> str:
    """Address of a page of the manual from its file: "tools/hoist.md" lives at "tools/hoist/"."""
    stem = PurePosixPath(file).with_suffix("").as_posix()
    folder, _, name = stem.rpartition("/")
    if name == "index":
        return f"{folder}/" if folder else ""
    return f"{stem}/"


def address_of(manual: Manual, target: Target) -> str:
    """Address of whatever a reference leads to."""
    match target.scheme:
        case "torque" | "part":
            return f"{target.scheme}s/{target.id}/"
        case "calc":
            return f"calculators/{target.id}/"
        case "reading":
            procedure, _, reading = target.id.partition("/")
            return f"{page_address(manual.procedures[procedure].file)}#reading-{reading}"
        case _ if isinstance(target.thing, Page):
            return page_address(target.thing.file)
        case scheme:
            msg = f"nothing is known about where a {scheme} lives"
            raise LookupError(msg)


def word_address(manual: Manual, word: str) -> str | None:
    """Address of a declared word on the page that declares it, None for any other word."""
    page = next((each for each in manual.plain.values() if word in each.words), None)
    return f"{page_address(page.file)}#{word_anchor(word)}" if page else None


def word_anchor(word: str) -> str:
    """Name the place of a word on its page: "Kick-down" stands at "word-kick-down"."""
    return "word-" + "-".join(re.findall(r"[^\W_]+", word.casefold()))


def rebased(html: str, base: str, new_base: str) -> str:
    """Return the HTML of the page at `base` with its links counting from `new_base`."""

    def moved(found: re.Match[str]) -> str:
        return f'{found[1]}="{relative(_absolute(found[2], base), new_base)}"'

    return _LINK.sub(moved, html)


def _absolute(link: str, base: str) -> str:
    """Return the address that a relative link on the page at `base` leads to."""
    mark = min((i for i in map(link.find, "?#") if i >= 0), default=len(link))
    path, rest = link[:mark], link[mark:]
    if not path:
        return base + rest
    whole = normpath(f"/{base}{path}").lstrip("/")
    return (f"{whole}/" if whole and path.endswith("/") else whole) + rest


def relative(address: str, base: str) -> str:
    """Return the link to `address` from the page at `base`; both count from the site's root."""
    mark = min((i for i in map(address.find, "?#") if i >= 0), default=len(address))
    path, rest = address[:mark], address[mark:]
    if path == base and rest.startswith("#"):
        return rest
    way = relpath(f"/{path}", f"/{base}")
    if not path or path.endswith("/"):
        way += "/"
    return way + rest
