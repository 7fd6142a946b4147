"""Compares two portraits of a page and tells every difference in words."""

from collections.abc import Iterator

from attrs import evolve

from underhoist.history.change import Change, Rank
from underhoist.history.facts_told import Spot, told
from underhoist.history.naming import Naming, branch, naming
from underhoist.history.portrait import Portrait, revision
from underhoist.history.steps_told import steps_told, text_told

REWORDED = "the text was reworded"
"""What is said where nothing more can be."""


def compare(old: Portrait, new: Portrait) -> tuple[Change, ...]:
    """Tell what differs, torques and capacities first; nothing where nothing does."""
    names = naming(old, new)
    found = [
        *told(branch(old, "facts"), branch(new, "facts"), Spot(names)),
        *_shown(old, new, names),
        *told(branch(old, "order"), branch(new, "order"), Spot(names)),
        *steps_told(old.get("steps", []), new.get("steps", []), names),
        *_renamed(old, new),
        *text_told(branch(old, "text"), branch(new, "text"), names),
    ]
    once = dict.fromkeys(found)
    if not once and revision(old) != revision(new):
        return (Change(words=REWORDED, rank=Rank.TEXT),)
    return tuple(sorted(once, key=lambda each: each.rank))


def _shown(old: Portrait, new: Portrait, names: Naming) -> Iterator[Change]:
    """Tell what other pages changed of what this one shows."""
    before, after = branch(old, "shows"), branch(new, "shows")
    for key, shown in after.items():
        scheme, _, full_id = key.partition(":")
        short = full_id.rpartition("/")[2]
        if key not in before:
            continue  # that it is named now is told where it is named
        if scheme == "drawing":
            if before[key] != shown:
                yield Change(words=f"drawing {short} was redrawn")
            continue
        spot = Spot(names, words=_words(scheme, short, _name(key, names)))
        for each in told(before[key], shown, spot):
            yield evolve(each, elsewhere=True, about="")


def _name(key: str, names: Naming) -> str:
    """Name a thing by its full id, else by the short one that the page may have used."""
    scheme, _, full_id = key.partition(":")
    known = key in names.new or key in names.old
    return names.name(key if known else f"{scheme}:{full_id.rpartition('/')[2]}")


def _words(scheme: str, short: str, name: str) -> str:
    """Say what of the page it is that another page changed."""
    match scheme:
        case "torque":
            return f"{name} ({short})"
        case "calc":
            return f"the calculator {name} opens with"
        case "hazard":
            return f"caution {name},"
        case _:
            return f"{scheme} {name},"


def _renamed(old: Portrait, new: Portrait) -> Iterator[Change]:
    """Tell what other pages are called now; what the page owns is told with its facts."""
    before, after = branch(old, "names"), branch(new, "names")
    own = {
        f"{scheme}:{id_}"
        for scheme, key in (("reading", "readings"), ("torque", "fasteners"), ("part", "parts"))
        for id_ in branch(branch(new, "facts"), key)
    }
    for key, name in after.items():
        if key not in own and key in before and before[key] != name:
            yield Change(words=f"{before[key]} is now called {name}", elsewhere=True)
