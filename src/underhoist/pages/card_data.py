"""The files that a job card takes its text from."""

import json
from collections.abc import Iterator

from underhoist import cards
from underhoist.pages.closing import revision_of
from underhoist.pages.site import Site
from underhoist.pages.steps import CARDS, card_steps

FOLDER = f"{CARDS}data/"


def card_files(site: Site) -> Iterator[tuple[str, str]]:
    """Yield path and text of each file: one a procedure, then the list to choose from."""
    made = [_procedure(site, id_) for id_ in site.manual.procedures]
    for each in made:
        yield f"{FOLDER}{each['id']}.json", _text(each)
    yield f"{FOLDER}index.json", _text(cards.index(site.manual, made))


def _procedure(site: Site, id_: str) -> cards.Json:
    """Return the procedure with the revision that stands on its page."""
    procedure = site.manual.procedures[id_]
    made = cards.data(site.manual, procedure, card_steps(site, procedure))
    return {**made, "revision": revision_of(site, procedure)}


def _text(value: cards.Json) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))
