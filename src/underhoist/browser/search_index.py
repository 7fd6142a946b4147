"""`search/index.json`: what the phone's search reads, made from the texts that the pages left."""

from __future__ import annotations

from pathlib import Path

from underhoist.browser import tools

DOCUMENTS = "search/documents.json"
"""Left by the pages; taken away once the index is made."""


def write_search_index(site: Path, modules: Path, before: Path | None = None) -> None:
    """Make the index; BrowserError where that does not work.

    The documents may name a page by its number in the index `before`, where it is as it was.
    """
    documents = site / DOCUMENTS
    if not documents.is_file():
        return
    script = Path(__file__).with_name("search_index.mjs")
    old = [str(before)] if before else []
    tools.run(
        "Making the search index",
        [tools.node(), str(script), str(site.resolve()), str(modules), *old],
    )
    documents.unlink()


def renew_search(site: Path) -> None:
    """Make the index of a site anew after its documents; BrowserError where that does not work."""
    write_search_index(site, tools.node_modules(site))
