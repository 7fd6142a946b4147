"""Finds the files of a manual's folder, and refuses links that lead out of it."""

import os
from collections.abc import Iterator
from pathlib import Path

from attrs import frozen

from underhoist.finding import Finding
from underhoist.place import Place
from underhoist.source.faults import fault
from underhoist.words import quote

MARKDOWN = (".md", ".markdown", ".mdown", ".mkdn", ".mkd")
"""Endings that the site builder takes for pages: none of them may slip past the check."""


def is_page(file: str) -> bool:
    """Whether the file is a page by its ending."""
    return file.lower().endswith(MARKDOWN)


@frozen
class Files:
    """All files of the folder by their path in it, in order, and what was refused."""

    names: tuple[str, ...]
    findings: tuple[Finding, ...]

    def pages(self) -> Iterator[str]:
        """Return the Markdown files."""
        return filter(is_page, self.names)


def walk(folder: Path) -> Files:
    """Every file below the folder but hidden ones. Raises OSError where it cannot be listed."""
    names: list[str] = []
    findings: list[Finding] = []
    root = folder.resolve()
    waiting = [""]
    while waiting:
        below = waiting.pop()
        with os.scandir(folder / below) as entries:
            for entry in sorted(entries, key=lambda each: each.name):
                if entry.name.startswith("."):
                    continue
                name = f"{below}{entry.name}"
                if not name.isprintable():
                    findings.append(_bad_name(name))
                elif entry.is_symlink() and not _stays_inside(Path(entry.path), root):
                    findings.append(_leads_out(name))
                elif entry.is_dir():
                    waiting.append(f"{name}/")
                elif entry.is_file():
                    names.append(name)
    return Files(tuple(sorted(names)), tuple(findings))


def _stays_inside(link: Path, root: Path) -> bool:
    """Whether the link is to a file of the folder; a linked folder could lead round in a circle."""
    target = link.resolve()
    return target.is_file() and target.is_relative_to(root)


def _leads_out(name: str) -> Finding:
    wrong = "The file is a link that does not lead to a file of the manual's folder."
    return fault("outside-manual", Place(name, 1, 1), name, wrong, "Put the file itself there.")


def _bad_name(name: str) -> Finding:
    shown = quote(name.encode("utf-8", "replace").decode())
    wrong = "The file's name holds signs that cannot be shown."
    mend = "Name it with lower-case letters, digits and hyphens."
    return fault("unreadable-page", Place(shown, 1, 1), shown, wrong, mend)
