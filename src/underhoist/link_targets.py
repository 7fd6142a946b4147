"""Where ordinary links lead: to a file of the manual, out of it, or to the web."""

from collections.abc import Iterator
from functools import lru_cache
from posixpath import dirname, normpath, relpath
from urllib.parse import unquote

from attrs import frozen

from underhoist.model import Body, Page
from underhoist.prose import Link
from underhoist.references import SCHEMES, other_links
from underhoist.words import nearest

MADE = frozenset(
    {
        "areas",
        "calculators",
        "cards",
        "changes",
        "drafting",
        "fluids",
        "offline",
        "where-used",
        "torques",
        "parts",
        "rules",
        "front-matter",
    }
)
"""Folders of the finished site that hold no authored page."""

WEB = frozenset({"http", "https", "mailto", "tel"})
"""Schemes that a link may have; an image may not, it would be missing without a network."""

REFUSED = frozenset({"file", "javascript", "data", "vbscript"})
"""Schemes that reach the reader's own machine."""

KNOWN_ELSEWHERE = WEB | REFUSED


@frozen
class Inside:
    """A path in the manual's folder, and the page's own folder."""

    path: str
    folder: str

    @property
    def is_made(self) -> bool:
        """Whether the build makes what the link leads to."""
        first, _, rest = self.path.partition("/")
        return first in MADE and not rest.endswith(".md")

    def relative(self, file: str) -> str:
        """How a link on the page would name this file."""
        return relpath(file, self.folder or ".")


@frozen
class Outside:
    """A link that leads out of the manual, and why it must not."""

    wrong: str
    mend: str


def file_links(page: Page) -> Iterator[tuple[Link, Inside | Outside]]:
    """Yield each link to a file with where it leads: no references, no web, nothing in the page."""
    return iter(_file_links(page.body, page.file))


@lru_cache(maxsize=4096)
def _file_links(body: Body, file: str) -> tuple[tuple[Link, Inside | Outside], ...]:
    targets = ((link, _target(link, file)) for link in other_links(body, file))
    return tuple((link, target) for link, target in targets if target is not None)


def _target(link: Link, file: str) -> Inside | Outside | None:
    scheme, colon, _ = link.target.partition(":")
    scheme = scheme.lower()
    if colon and scheme.replace("+", "").isalnum():
        return _by_scheme(scheme, link)
    path = unquote(link.target.partition("#")[0].partition("?")[0])
    if not path:
        return None
    if path.startswith(("/", "\\")) or "\\" in path:
        wrong = "The path does not begin at this page's folder."
        if path[0] not in "/\\":
            wrong = "A path in a page has forward slashes."
        return Outside(
            wrong,
            "Write it from this page's folder, with forward slashes, such as ../drawings/band.svg.",
        )
    folder = dirname(file)
    whole = normpath(f"{folder}/{path}" if folder else path)
    inner = _below_root(path)
    if inner.partition("/")[0] in MADE and not inner.endswith(".md"):
        return Inside(inner, folder)
    if whole == ".." or whole.startswith("../"):
        return Outside(
            "The path leads out of the manual's folder.", "Put the file into the manual's folder."
        )
    return Inside(whole, folder)


def _below_root(path: str) -> str:
    """Return the path without its climb to the manual's root, for links to what the build makes."""
    whole = normpath(path)
    while whole.startswith("../"):
        whole = whole[3:]
    return whole


def _by_scheme(scheme: str, link: Link) -> Outside | None:
    if scheme in WEB:
        if link.form != "image":
            return None
        return Outside(
            "The image is fetched from elsewhere and is missing without a network.",
            "Put the file into the manual's folder.",
        )
    if scheme in REFUSED or len(scheme) == 1:  # one letter is a disk
        wrong = f"{scheme}: reaches out of the manual into the reader's own machine."
        return Outside(wrong, "Put the file into the manual's folder, or take the link out.")
    if nearest(scheme, SCHEMES):  # `dead-reference` says what was meant
        return None
    return Outside(f"{scheme}: is no kind of link known here.", "Write a path or a web address.")
