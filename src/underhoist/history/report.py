"""What changed as lines for a terminal, torques and capacities first."""

from collections.abc import Iterator

from underhoist.history.change import Rank
from underhoist.history.history import History

MOST = 40
"""Lines at the end of a build, torques and capacities aside: those are all told."""


def lines(history: History, build: int, most: int | None = None) -> Iterator[str]:
    """Yield the changes of a build: torques and capacities, then the rest page by page.

    What a page shows from elsewhere is told once, where it stands; who shows it is counted.
    """
    first: list[str] = []
    rest: list[str] = []
    echoes: list[str] = []
    for kept, entry in history.changed_in(build).values():
        own = [each for each in entry.changes if not each.elsewhere]
        for change in own:
            told = first if change.rank <= Rank.CAPACITY else rest
            told.append(f"{kept.title}: {change.words}")
        if entry.new:
            rest.append(f"{kept.title}: the page is new")
        elif not own:
            echoes.append(kept.title)
    for build_note in history.record.builds:
        if build_note.number == build:
            rest += [f"{each.title}: the page went away" for each in build_note.gone]
    if echoes:
        rest.append(f"New revisions only because of what they show: {'; '.join(echoes)}")
    shown = rest if most is None else rest[:most]
    yield from (*first, *shown)
    if len(rest) > len(shown):
        yield f"and {len(rest) - len(shown):,} more: the page changes/{build}/ has them all"
