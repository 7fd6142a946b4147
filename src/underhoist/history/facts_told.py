"""Tells what differs between the facts of two portraits, whatever their keys are."""

import json
from collections.abc import Iterator

from attrs import evolve, frozen

from underhoist.history import amounts
from underhoist.history.change import Change
from underhoist.history.labels import joined, label, one
from underhoist.history.naming import Naming, thing_label
from underhoist.history.pairing import pair
from underhoist.history.plain import Plain


@frozen
class Spot:
    """Where in the facts something stands, and how it is called."""

    naming: Naming
    words: str = ""
    about: str = ""
    depth: int = 0

    def below(self, key: str, *things: Plain) -> "Spot":
        """Step down to a key, or to a thing by its id where it has a name."""
        about = f"{self.about}/{key}".strip("/") if self.depth < 2 else self.about
        spot = evolve(self, about=about, depth=self.depth + 1)
        named = [thing for thing in things if isinstance(thing, dict) and "name" in thing]
        if named:
            return evolve(spot, words=thing_label(self.words, key, named[0]))
        above = one(self.words)
        between = ", " if above.endswith(")") and label(key) else " "
        return evolve(spot, words=between.join(filter(None, (above, label(key)))))

    def change(self, words: str, *values: Plain) -> Change:
        """Tell a change here; the values decide what is told first."""
        leaves = [leaf for value in values for _, leaf in _leaves(value)]
        return Change(words=words, rank=amounts.rank(*leaves), about=self.about)


def told(old: Plain | None, new: Plain | None, spot: Spot) -> Iterator[Change]:
    """Tell every difference between two trees."""
    if old is None or new is None:
        old, new = _emptied(old, new), _emptied(new, old)
    if old == new:
        yield from _told_order(old, new, spot)
    elif new is None:
        yield spot.change(f"{spot.words} taken out{_was(old, spot)}", old or "")
    elif old is None:
        yield spot.change(f"{spot.words} added{_now(new, spot)}", new)
    elif isinstance(old, dict) and isinstance(new, dict):
        for key in dict.fromkeys((*new, *old)):
            before, after = old.get(key), new.get(key)
            if before == after and not isinstance(after, dict):
                continue
            here = spot.below(key, *(each for each in (after, before) if each is not None))
            yield from told(before, after, here)
        yield from _told_order(old, new, spot)
    elif isinstance(old, list) and isinstance(new, list):
        yield from _told_list(old, new, spot)
    else:
        yield _told_value(old, new, spot)


def _emptied(value: Plain | None, other: Plain | None) -> Plain | None:
    """Take a list, or things by id, that are not there as empty: each of them is told."""
    if value is None and isinstance(other, list):
        return []
    if (
        value is None
        and isinstance(other, dict)
        and all(isinstance(v, dict) for v in other.values())
    ):
        return {}
    return value


def _told_value(old: Plain, new: Plain, spot: Spot) -> Change:
    before, after = (_summary(each, spot.naming) for each in (old, new))
    return spot.change(f"{spot.words}: {amounts.became(before, after)}", old, new)


def _told_order(old: Plain | None, new: Plain | None, spot: Spot) -> Iterator[Change]:
    """Names with values are equal whatever their order; a reader sees the order."""
    if isinstance(old, dict) and isinstance(new, dict):
        common = [key for key in old if key in new]
        if common != [key for key in new if key in old]:
            yield spot.change(f"the order of {_several(spot)} changed")
        elif old == new:
            for key in (name for name, value in old.items() if isinstance(value, dict)):
                yield from _told_order(old[key], new[key], spot.below(key, new[key]))


def _told_list(old: list[Plain], new: list[Plain], spot: Spot) -> Iterator[Change]:
    before, after = (_written(side) for side in (old, new))
    pairing = pair(before, after, lambda a, b: _likeness(old[a], new[b]))
    for a, b in pairing.pairs:
        if before[a] != after[b]:
            yield from told(old[a], new[b], _item(spot, old[a], new[b]))
    for index in pairing.gone:
        words = joined(one(spot.words), _summary(old[index], spot.naming))
        yield spot.change(f"{words} taken out", old[index])
    for index in pairing.added:
        words = joined(one(spot.words), _summary(new[index], spot.naming))
        yield spot.change(f"{words} added", new[index])
    if pairing.moved:
        yield spot.change(f"the order of {_several(spot)} changed")


def _written(items: list[Plain]) -> list[str]:
    return [json.dumps(each, ensure_ascii=False) for each in items]


def _likeness(old: Plain, new: Plain) -> float:
    """Likeness of two items: by their name, else by how many of their values are equal."""
    if not (isinstance(old, dict) and isinstance(new, dict)):
        return 0.0
    if "name" in old and old.get("name") == new.get("name"):
        return 1.0
    before, after = dict(_leaves(old)), dict(_leaves(new))
    equal = sum(before.get(key) == value for key, value in after.items())
    return equal / max(len(before), len(after), 1)


def _item(spot: Spot, old: Plain, new: Plain) -> Spot:
    """Call an item of a list by its name, else by what of it stayed as it was."""
    if isinstance(new, dict) and isinstance(old, dict):
        name = new.get("name")
        same = [leaf for key, leaf in _leaves(new) if dict(_leaves(old)).get(key) == leaf]
        words = name if isinstance(name, str) else ", ".join(map(spot.naming.leaf, same[:3]))
        return evolve(spot, words=f"{one(spot.words)} {words},".strip(), depth=spot.depth + 1)
    return spot


def _several(spot: Spot) -> str:
    return f"the {spot.words}" if spot.words else f"the {label(spot.about) or spot.about}"


def _was(value: Plain | None, spot: Spot) -> str:
    summary = _summary(value or "", spot.naming, without="name")
    return f" (was {summary})" if summary else ""


def _now(value: Plain, spot: Spot) -> str:
    summary = _summary(value, spot.naming, without="name")
    return f": {summary}" if summary else ""


def _summary(value: Plain, naming: Naming, without: str = "") -> str:
    """Give all that stands under a key in one line."""
    if isinstance(value, str):
        return naming.leaf(value)
    if isinstance(value, list):
        return ", ".join(_summary(each, naming) for each in value)
    parts = [
        joined("" if key in _SPEAKING else label(key), _summary(each, naming))
        for key, each in value.items()
        if key != without
    ]
    return ", ".join(parts)


_SPEAKING = frozenset({"name", "shift", "throttle", "tell", "note"})
"""Keys whose value needs no word before it."""


def _leaves(value: Plain, path: str = "") -> Iterator[tuple[str, str]]:
    """Every text in the tree with the way to it."""
    if isinstance(value, str):
        yield path, value
        return
    named = value.items() if isinstance(value, dict) else enumerate(value)
    for key, each in named:
        yield from _leaves(each, f"{path}/{key}")
