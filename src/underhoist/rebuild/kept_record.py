"""The record of the builds as it is kept: each page of it with its line in the site's file."""

from attrs import evolve

from underhoist.history import History
from underhoist.history.record import Kept, Lines
from underhoist.rebuild.parted import Parted


def with_pages(history: History | None, lines: Lines) -> History | None:
    """Return the history with these pages in its record."""
    if history is None:
        return None
    pages = {key: page for key, (page, _) in lines.items()}
    return evolve(history, record=evolve(history.record, pages=pages))


def renew_lines(kept: Parted[tuple[Kept, str]], now: Lines) -> None:
    """Bring what is kept to what was written now."""
    for key in kept.keys() - now.keys():
        del kept[key]
    for key, line in now.items():
        before = kept.get(key)
        if before is None or before[0] is not line[0]:
            kept[key] = line
    kept.order(now)
