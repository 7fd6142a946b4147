"""The files that a job card takes its text from."""

import json
from collections.abc import Iterable, Iterator, Mapping
from typing import cast

from attrs import frozen

from underhoist import cards
from underhoist.history import since
from underhoist.links import page_address
from underhoist.model import Fastener, Procedure
from underhoist.pages.here import Here
from underhoist.pages.sheet import Sheet
from underhoist.pages.site import Site
from underhoist.pages.steps import CARDS, card_steps
from underhoist.pages.torque_units import lead
from underhoist.references import find

FOLDER = f"{CARDS}data/"


@frozen
class Card:
    """What a card takes of one procedure, and the address of its file."""

    address: str
    data: cards.Json

    @property
    def text(self) -> str:
        """The file's text."""
        return _text(self.data)

    @property
    def revision(self) -> str | None:
        """The revision of its page."""
        return cast("str | None", self.data["revision"])


def cards_of(site: Site, sheets: Mapping[str, Sheet]) -> Iterator[Card]:
    """Make the data of each procedure; `sheets` are the finished pages by their address."""
    for procedure in site.manual.procedures.values():
        yield card_of(site, procedure, sheets[page_address(procedure.file)])


def card_files(site: Site, made: Iterable[Card]) -> Iterator[tuple[str, str]]:
    """Yield path and text of each file: one a procedure, then the list to choose from."""
    revisions: dict[str, str | None] = {}
    for each in made:
        revisions[str(each.data["id"])] = each.revision
        yield each.address, each.text
    yield card_index(site, revisions)


def card_index(site: Site, revisions: Mapping[str, str | None]) -> tuple[str, str]:
    """Return path and text of the list to choose from; `revisions` are those of the procedures."""
    listed = (
        {**cards.listed(site.manual.procedures[id_]), "revision": revision}
        for id_, revision in revisions.items()
    )
    return f"{FOLDER}index.json", _text(cards.index(site.manual, listed))


def card_of(site: Site, procedure: Procedure, sheet: Sheet) -> Card:
    """Return the procedure with the revision that stands on its page."""
    here = Here(site, CARDS, procedure)

    def written_out(fastener: Fastener) -> str:
        value = lead(fastener.torque.value, here.tools)
        return f"{value.number} {value.words}"

    made = cards.data(site.manual, procedure, card_steps(sheet.steps, procedure), written_out)
    calculators = list(_calculators(here, procedure))
    kept = site.history.kept(procedure) if site.history else None
    data = {
        **made,
        "revision": sheet.revision,
        "date": since(kept) if kept else "",
        "author": sheet.author or "",
        "calculators": calculators,
    }
    return Card(f"{FOLDER}{procedure.id}.json", data)


def _calculators(here: Here, procedure: Procedure) -> Iterator[cards.Json]:
    """Yield the calculators that the page names anywhere, each once, filled in as its links are."""
    found = find(procedure.body, procedure.file)
    for id_ in dict.fromkeys(each.id for each in found if each.scheme == "calc"):
        if shown := here.shown("calc", id_):
            yield {"id": id_, "name": shown.title, "url": shown.href}


def _text(value: cards.Json) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))
