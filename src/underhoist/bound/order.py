"""The order of the pages within their kinds: as they were named, else as the site lists them."""

from collections.abc import Callable, Iterable

from underhoist.links import page_address
from underhoist.model import Manual
from underhoist.pages import Sheet

type _Key = tuple[int, int, str, str]


def in_order(
    manual: Manual, families: tuple[str, ...], procedures: tuple[str, ...], sheets: Iterable[Sheet]
) -> list[Sheet]:
    """Sort the pages: families and procedures that were named stand in the order of their names.

    Other procedures stand by their unit family where families were named, then by their area of
    work and title; torques by their family; calculators as they come; all else by title.
    """
    place = {page_address(manual.families[id_].file): at for at, id_ in enumerate(families)}
    named = {page_address(manual.procedures[id_].file): at for at, id_ in enumerate(procedures)}
    work = {page_address(each.file): each for each in manual.procedures.values()}

    def procedure(sheet: Sheet) -> _Key:
        page = work[sheet.address]
        ids = [each.value for each in page.unit_family]
        family = min((families.index(id_) for id_ in ids if id_ in families), default=len(families))
        first = named.get(sheet.address, len(named))
        return first, family, page.area.value, sheet.title

    def torque(sheet: Sheet) -> _Key:
        owner = sheet.address.split("/")[1]
        return families.index(owner) if owner in families else len(families), 0, "", ""

    keys: dict[str, Callable[[Sheet], _Key]] = {
        "unit-family": lambda sheet: (place.get(sheet.address, len(place)), 0, "", sheet.title),
        "procedure": procedure,
        "torque": torque,
        "calculator": lambda _: (0, 0, "", ""),
    }

    def by_title(sheet: Sheet) -> _Key:
        return 0, 0, "", sheet.title

    return sorted(sheets, key=lambda sheet: keys.get(sheet.kind, by_title)(sheet))
