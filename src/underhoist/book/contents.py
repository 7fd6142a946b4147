"""The contents of a chapter under smaller headings: by area of work, or by unit family."""

from collections.abc import Callable, Iterator
from itertools import groupby

from underhoist.bound import Group
from underhoist.links import page_address
from underhoist.model import Manual
from underhoist.pages import Sheet

type Runs = list[tuple[str, list[Sheet]]]


def runs(manual: Manual, group: Group) -> Runs:
    """Part a chapter's pages where they stand in order; one run without a name where not."""
    if group.kind == "procedure":
        for label in _labels(manual):
            found = [(key, list(each)) for key, each in groupby(group.sheets, key=label)]
            if len({key for key, _ in found}) == len(found):
                return found
    return [("", list(group.sheets))]


def _labels(manual: Manual) -> Iterator[Callable[[Sheet], str]]:
    work = {page_address(each.file): each for each in manual.procedures.values()}
    titles = {id_: each.title.value for id_, each in manual.families.items()}
    yield lambda sheet: work[sheet.address].area.value.capitalize()
    yield lambda sheet: ", ".join(
        titles.get(each.value, "Any unit") for each in work[sheet.address].unit_family
    )
