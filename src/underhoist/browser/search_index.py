"""`search/index.json`: what the phone's search reads, made from the texts that the pages left."""

from __future__ import annotations

from pathlib import Path

from underhoist.browser import tools

DOCUMENTS = "search/documents.json"
"""Left by the pages; taken away once the index is made."""


def write_search_index(site: Path, modules: Path) -> None:
    """Make the index; BrowserError where that does not work."""
    documents = site / DOCUMENTS
    if not documents.is_file():
        return
    script = Path(__file__).with_name("search_index.mjs")
    tools.run(
        "Making the search index", [tools.node(), str(script), str(site.resolve()), str(modules)]
    )
    documents.unlink()


def renew_search(site: Path) -> None:
    """Make the index of a site anew after its documents; BrowserError where that does not work."""
    write_search_index(site, tools.node_modules(site))
