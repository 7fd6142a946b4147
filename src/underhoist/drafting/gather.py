"""Gathers the sources at the build; the browser only reads what this made."""

from collections.abc import Iterator
from pathlib import Path

from underhoist.drafting.sources import Blank, Sources, to_json
from underhoist.model import Manual
from underhoist.pages import Site, drawings
from underhoist.pages.drafting import ADDRESS
from underhoist.source import is_page
from underhoist.source.faults import Faults
from underhoist.source.split import decoded, read_bytes
from underhoist.start.ask import Prepared
from underhoist.start.draft import DRAFTS
from underhoist.start.interview import Interview


def drafting_files(site: Site) -> Iterator[tuple[str, str]]:
    """Yield path and text of what the drafting page reads."""
    sources = gather(site.manual, site.folder, name=site.name, demo=site.demo)
    yield f"{ADDRESS}manual.json", to_json(sources)


def gather(manual: Manual, folder: Path, *, name: str, demo: bool) -> Sources:
    """Read the texts of a manual's folder; a page that is no text is left out."""
    files = sorted(manual.files)
    texts = {file: _text(folder, file) for file in files if is_page(file)}
    return Sources(
        name=name,
        demo=demo,
        pages={file: text for file, text in texts.items() if text is not None},
        drawings={file: drawings.size(folder / file) for file in files if not is_page(file)},
        blanks=tuple(_blank(manual, kind) for kind in DRAFTS),
    )


def _text(folder: Path, file: str) -> str | None:
    try:
        return decoded(read_bytes(folder / file, file), file)
    except Faults:
        return None


def _blank(manual: Manual, kind: str) -> Blank:
    """Draft a page as the command line does for somebody who leaves every question open."""
    _, draft = DRAFTS[kind]
    drafted = draft(Interview(manual, Prepared({})))
    return Blank(kind, kind.capitalize().replace("-", " "), drafted.folder, drafted.text)
