"""The pages of a folder before and after: read whole, written whole or not at all."""

from collections.abc import Mapping
from pathlib import Path
from shutil import copymode

from underhoist.source import files_of, is_page


def read_pages(folder: Path) -> tuple[dict[str, str], list[str]]:
    """Return the text of each page that is UTF-8, signs and line ends as they are, and other files.

    Raises Unusable where there is no page.
    """
    texts: dict[str, str] = {}
    others: list[str] = []
    for file in files_of(folder).names:
        text = _text(folder / file) if is_page(file) else None
        if text is None:
            others.append(file)
        else:
            texts[file] = text
    return texts, others


def write_pages(folder: Path, before: Mapping[str, str], after: Mapping[str, str]) -> list[str]:
    """Write the new texts; return the files that somebody else has changed, which are left alone.

    Raises OSError where a file cannot be written; each file is then either old or new.
    """
    left: list[str] = []
    for file, text in after.items():
        path = folder / file
        if _text(path) != before[file]:
            left.append(file)
            continue
        beside = path.with_name(f".{path.name}.new")
        beside.write_bytes(text.encode("utf-8"))
        copymode(path, beside)
        beside.replace(path)
    return left


def _text(path: Path) -> str | None:
    try:
        return path.read_bytes().decode("utf-8")
    except (OSError, UnicodeDecodeError):
        return None
