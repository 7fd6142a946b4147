"""In which order a card puts procedures, and which of them bring others along.

One order of all procedures serves every card: whatever is chosen is sorted by it. So two phones
that add procedures to one card come to the same list.
"""

from collections.abc import Iterable, Iterator, Mapping
from graphlib import TopologicalSorter

from underhoist.model import Manual, Procedure

type Waits = dict[str, set[str]]
"""For each procedure those that must be done first."""


def work_order(manual: Manual) -> tuple[str, ...]:
    """Every procedure's id, so that what comes first does; the manual's own order otherwise.

    Raises graphlib.CycleError where procedures wait for each other: no manual that was checked.
    """
    waits = _waits(manual.procedures)
    for ender, begun in _enders(manual.procedures):
        _wait_for_all(waits, ender, begun)
    return tuple(_sorted(waits, list(manual.procedures)))


def goes_with(manual: Manual) -> dict[str, tuple[str, ...]]:
    """For each procedure what a card takes in with it: its needs, what ends it, and theirs."""
    direct: dict[str, list[str]] = {
        id_: [each.value for each in page.needs if each.value in manual.procedures]
        for id_, page in manual.procedures.items()
    }
    for ender, begun in _enders(manual.procedures):
        direct[begun].append(ender)
    return {id_: tuple(_reached(id_, direct)) for id_ in direct}


def _waits(procedures: Mapping[str, Procedure]) -> Waits:
    waits: Waits = {id_: set() for id_ in procedures}
    for id_, page in procedures.items():
        waits[id_] |= {each.value for each in page.before if each.value in procedures}
        for each in page.after:
            if each.value in procedures:
                waits[each.value].add(id_)
    return waits


def _enders(procedures: Mapping[str, Procedure]) -> Iterator[tuple[str, str]]:
    """Each procedure that ends another, with that other."""
    for id_, page in procedures.items():
        yield from ((id_, each.value) for each in page.ends if each.value in procedures)


def _wait_for_all(waits: Waits, ender: str, begun: str) -> None:
    """Let the ender wait for all that wait for what it ends, but for those that wait for itself."""
    waits[ender].add(begun)
    then: dict[str, list[str]] = {id_: [] for id_ in waits}
    for later, firsts in waits.items():
        for first in firsts:
            then[first].append(later)
    waits[ender] |= set(_reached(begun, then)) - set(_reached(ender, then)) - {ender}


def _reached(start: str, links: Mapping[str, Iterable[str]]) -> Iterator[str]:
    """Yield everything that can be come to from here, each once, without the start."""
    seen, todo = {start}, [start]
    while todo:
        for each in links[todo.pop(0)]:
            if each not in seen:
                seen.add(each)
                todo.append(each)
                yield each


def _sorted(waits: Waits, preferred: list[str]) -> Iterator[str]:
    """Yield each as soon as nothing keeps it waiting; of several, the first in this order."""
    sorter = TopologicalSorter(waits)
    sorter.prepare()
    place = {id_: number for number, id_ in enumerate(preferred)}
    ready: list[str] = []
    while sorter.is_active():
        ready = sorted([*ready, *sorter.get_ready()], key=place.__getitem__)
        first = ready.pop(0)
        sorter.done(first)
        yield first
