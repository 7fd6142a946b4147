"""Writes a manual as one HTML file that needs nothing beside it."""

import base64
import hashlib
from pathlib import Path
from tempfile import TemporaryDirectory

from attrs import frozen
from jinja2 import Environment, FileSystemLoader, StrictUndefined, Template

from underhoist import theme
from underhoist.bound import Binder, Group, grouped, name_of
from underhoist.bound.dress import data_url, pictures, style
from underhoist.browser.browser_error import BrowserError
from underhoist.browser.licences import write_licences
from underhoist.history.dates import in_words, today
from underhoist.pack import parts
from underhoist.pack.dense import CHARSET, ascii_script, ascii_style
from underhoist.pages import Sheet, Site
from underhoist.pages.closing import DEMO, closing

_WITHOUT = ("uh-changes",)
"""What tells of earlier builds."""
_LIVE = ("uh-find",)
"""What names the next check, where the calculators run."""
_END = b"</body>\n</html>\n"


@frozen
class Packed:
    """What the file holds, and how many pages are in it."""

    content: bytes
    """ASCII, but for the parts that are written one byte a character (`dense.py`)."""
    pages: int


def pack(
    site: Site, sheets: list[Sheet], modules: Path, *, address: str = "", calculators: bool = True
) -> Packed:
    """Write these pages into one file, with what the calculators run on unless told otherwise.

    `address` is where the manual's site is, "" where that is not known. Raises BrowserError.
    """
    groups = list(grouped(sheets))
    names = {sheet.address: name_of(sheet.address) for sheet in sheets}
    names |= {f"{group.name}/": f"contents.{group.name}" for group in groups}
    names |= {"": names.get("", "contents")}
    scripts = {name: ascii_script(each) for name, each in parts.scripts(modules).items()}
    dress = ascii_style(_style(modules))
    held = [parts.search(site.manual, sheets, modules)]
    held += [parts.complaints(site, sheets), *parts.runtime(modules)] if calculators else ()
    without = _WITHOUT if calculators else (*_WITHOUT, *_LIVE)
    text = _template().render(
        name=site.name,
        charset=CHARSET,
        policy=_policy(scripts["main"], dress),
        icon=data_url(theme.folder() / "assets/icons/favicon.svg"),
        style=dress,
        groups=groups,
        name_of=name_of,
        bound=Binder(names, pictures(site.folder), without, _lists(groups)).bound,
        day=in_words(today()),
        count=len(sheets),
        demo=DEMO if site.demo else "",
        address=address,
        calculators=calculators,
        licences=_licences(modules),
        closing=closing(site),
        main=_kept_within(scripts["main"]),
        worker=_kept_within(scripts["worker"]),
    )
    written = text.encode("ascii", "xmlcharrefreplace")
    return Packed(written + b"".join(map(parts.element, held)) + _END, len(sheets))


def _style(modules: Path) -> str:
    own = theme.folder() / "assets/pack/pack.css"
    return style(modules) + own.read_text(encoding="utf-8")


def _lists(groups: list[Group]) -> dict[str, str]:
    """Let the site's lists of an area's procedures lead to all of them."""
    has_procedures = any(each.kind == "procedure" for each in groups)
    return {"areas": "contents.procedures"} if has_procedures else {}


def _template() -> Template:
    env = Environment(
        loader=FileSystemLoader(Path(__file__).parent), autoescape=True, undefined=StrictUndefined
    )
    return env.get_template("manual.html")


def _policy(script: str, sheet: str) -> str:
    """Let run what stands in the file, and let nothing be asked for outside it."""
    return "; ".join(
        (
            "default-src 'none'",
            f"script-src {_hash(script)} blob: 'wasm-unsafe-eval'",
            f"style-src {_hash(sheet)}",
            "img-src data: blob:",
            "font-src data:",
            "connect-src data: blob:",
            "worker-src blob:",
            "base-uri 'none'",
            "form-action 'none'",
        )
    )


def _hash(text: str) -> str:
    digest = hashlib.sha256(text.encode("utf-8")).digest()
    return f"'sha256-{base64.b64encode(digest).decode()}'"


def _kept_within(script: str) -> str:
    """Refuse a script whose own text would end its element."""
    if "</script" in script.lower() or "<!--" in script:
        raise BrowserError("A script cannot stand in the file: it holds the end of a script.")
    return script


def _licences(modules: Path) -> str:
    with TemporaryDirectory() as folder:
        write_licences(Path(folder), modules)
        return (Path(folder) / "licences.txt").read_text(encoding="utf-8")
