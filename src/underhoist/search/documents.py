"""Everything the search knows, as plain data: the shop's words, and each page with its places."""

import json
from collections.abc import Iterator, Mapping
from typing import Protocol

from underhoist.links import page_address, word_address
from underhoist.model import Manual
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site
from underhoist.search.texts import Part, parts_of, plain

DOCUMENTS = "search/documents.json"
"""Where the site keeps them until the index is made from them."""

_SAID = {
    "procedure": "Procedure", "fault": "Fault", "tool": "Tool", "hazard": "Hazard",
    "unit-family": "Unit family", "torque": "Torque", "part": "Part", "calculator": "Calculator",
    "rule": "Rule of the check", "index": "List",
}  # fmt: skip
"""What a reader calls each kind of page; a plain page is only its title."""


class Before(Protocol):
    """What is known of the index before."""

    def is_unsearched(self, address: str) -> bool:
        """Whether the page is known to be none that is searched."""
        ...

    def number(self, address: str, note: str, said: str) -> int | None:
        """Return the page's number, if one with these notes is there as it is."""
        ...

    def searched(self, address: str, note: str, said: str) -> None:
        """Be told of a page that is searched."""
        ...


class Nothing:
    """Knows no page of any index."""

    def is_unsearched(self, address: str) -> bool:
        """Know nothing of it."""
        del address
        return False

    def number(self, address: str, note: str, said: str) -> int | None:
        """Know no number of it."""
        del address, note, said

    def searched(self, address: str, note: str, said: str) -> None:
        """Keep no note of it."""
        del address, note, said


def search_files(
    site: Site, made: Mapping[str, Sheet], before: Before | None = None
) -> Iterator[tuple[str, str]]:
    """Yield the file that the search index is made from, as path and content."""
    content = documents(site.manual, made, before)
    yield DOCUMENTS, json.dumps(content, ensure_ascii=False, separators=(",", ":"))


def documents(
    manual: Manual, made: Mapping[str, Sheet], before: Before | None = None
) -> dict[str, object]:
    """Return the words and the searched pages; a number stands for a page that is known."""
    return {
        "words": [
            {
                "name": name,
                "at": word_address(manual, name),
                "also": [each.value for each in word.also],
                "heard": [each.value for each in word.heard],
            }
            for name, word in manual.words.items()
        ],
        "pages": list(_pages(manual, made, before or Nothing())),
    }


def _pages(
    manual: Manual, made: Mapping[str, Sheet], before: Before
) -> Iterator[dict[str, object] | int]:
    notes = _notes(manual)
    said = {page_address(page.file): page.complaint.value for page in manual.faults.values()}
    for address in made:
        if before.is_unsearched(address):
            continue
        told = notes.get(address, ""), said.get(address, "")
        number = before.number(address, *told)
        if number is None and not made[address].searched:
            continue
        before.searched(address, *told)
        yield _page(made[address], *told) if number is None else number


def _notes(manual: Manual) -> dict[str, str]:
    """Say by address which unit families a page is for."""
    families = manual.families
    return {
        page_address(page.file): ", ".join(
            families[each.value].title.value for each in page.unit_family if each.value in families
        )
        for page in (*manual.procedures.values(), *manual.faults.values())
    }


def _page(sheet: Sheet, family: str, said: str) -> dict[str, object]:
    """Return a page as data; a list of pages is found by its name, its entries as pages."""
    parts = [] if sheet.kind == "index" else [*_merged(parts_of(sheet.html))]
    return {
        "address": sheet.address,
        "kind": sheet.kind,
        "title": sheet.title,
        "said": said,
        "note": " · ".join(filter(None, (_SAID.get(sheet.kind, ""), family))),
        "summary": sheet.summary,
        "parts": parts,
    }


def _merged(parts: list[Part]) -> Iterator[dict[str, str]]:
    """Yield each place once: parts without an anchor belong to the top of the page."""
    top = [part for part in parts if not part.at]
    words = " ".join(" ".join((part.label, plain(part.do), plain(part.prose))) for part in top)
    if words.strip():
        yield {"at": "", "label": "", "do": "", "prose": " ".join(words.split())}
    for part in parts:
        if part.at:
            yield {
                "at": part.at,
                "label": plain([part.label]),
                "do": plain(part.do),
                "prose": plain(part.prose),
            }
