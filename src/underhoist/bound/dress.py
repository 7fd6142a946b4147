"""Style, fonts and pictures as text that a single file can hold."""

import base64
import mimetypes
import re
from collections.abc import Callable
from functools import cache
from pathlib import Path

from jinja2 import Environment, FileSystemLoader

from underhoist import theme
from underhoist.browser.vendor import COPIES

_AT_HAND = ("font-display: optional", "font-display: block")
"""The site shows no text later for its font's sake; here the font is there already."""
_FONT = re.compile(r'url\("fonts/([^"]+)"\)')


def style(modules: Path) -> str:
    """Return the site's whole style with its fonts in it; `modules` holds the fonts."""
    places = {target.rpartition("/")[2]: modules / place for place, target in COPIES.items()}
    # Nothing is escaped: these are our own style sheets.
    sheets = Environment(loader=FileSystemLoader(theme.folder()), autoescape=False)  # noqa: S701
    text = "\n".join(sheets.get_template(each).render() for each in theme.SHEETS)
    text = text.replace(*_AT_HAND)
    return _FONT.sub(lambda found: f'url("{data_url(places[found[1]])}")', text)


def pictures(folder: Path) -> Callable[[str], str]:
    """Return what gives the data of a picture of the manual in this folder."""

    @cache
    def picture(address: str) -> str:
        return data_url(folder / address)

    return picture


def data_url(file: Path) -> str:
    """Return an address that holds the file itself."""
    kind = mimetypes.guess_type(file.name)[0] or "application/octet-stream"
    return f"data:{kind};base64,{base64.b64encode(file.read_bytes()).decode()}"
