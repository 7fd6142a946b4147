"""A new manual: the template of the package, put into an empty folder."""

import json
from collections.abc import Iterator
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path

from underhoist.check import check
from underhoist.start.editor_files import editor_files

NAME = "Workshop manual"
"""What the template is called; a manual of another name has its own in each of these places."""

_DOT = "dot-"
"""Hidden files have this in the template instead of their dot: packaging would leave them out."""
_MAY_BE_THERE = frozenset({".git", ".venv", "venv", ".DS_Store"})
"""What a folder may hold and still count as empty."""


class NotEmptyError(Exception):
    """The folder holds something that a new manual could overwrite; the text says what to do."""


def write_new(folder: Path, name: str = NAME) -> tuple[str, ...]:
    """Write a new manual into a folder that is empty or not there yet; return its files.

    Raises NotEmptyError where the folder is not empty, OSError where it cannot be written to.
    """
    _refuse_full(folder)
    texts = {file: text.replace(f'"{NAME}"', _in_quotes(name)) for file, text in _template()}
    texts["README.md"] = texts["README.md"].replace(f"# {NAME}\n", f"# {name}\n")
    for file, text in texts.items():
        _write(folder / file, text)
    for file, text in editor_files(check(folder / "procedures").manual).items():
        texts[file] = text
        _write(folder / file, text)
    return tuple(sorted(texts))


def _refuse_full(folder: Path) -> None:
    if folder.exists() and not folder.is_dir():
        msg = f"{folder} is a file. Name a folder that is not there yet."
        raise NotEmptyError(msg)
    held = sorted(path.name for path in folder.iterdir()) if folder.exists() else []
    first = next((name for name in held if name not in _MAY_BE_THERE), None)
    if first is not None:
        msg = (
            f"{folder} is not empty: it holds {first}. Nothing was written. "
            "Name a folder that is not there yet, such as my-manual."
        )
        raise NotEmptyError(msg)


def _template() -> Iterator[tuple[str, str]]:
    """Yield each file of the template by its path in the new manual."""
    yield from _below(files("underhoist") / "start" / "template", "")


def _below(folder: Traversable, path: str) -> Iterator[tuple[str, str]]:
    for entry in sorted(folder.iterdir(), key=lambda each: each.name):
        name = entry.name
        name = f".{name.removeprefix(_DOT)}" if name.startswith(_DOT) else name
        if entry.is_dir():
            yield from _below(entry, f"{path}{name}/")
        else:
            yield f"{path}{name}", entry.read_text(encoding="utf-8")


def _in_quotes(name: str) -> str:
    """Write the name in double quotes, as YAML reads it."""
    return json.dumps(name, ensure_ascii=False)


def _write(path: Path, text: str) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    with path.open("x", encoding="utf-8", newline="\n") as file:
        file.write(text)
