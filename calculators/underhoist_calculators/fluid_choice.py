"""Which fluid may go in: what the unit was built for, or what its family says supersedes it."""

import re

from attrs import frozen

from underhoist_calculators.inputs import EntryError, Inputs


@frozen(kw_only=True)
class FluidChoice:
    """A fluid that nothing speaks against: what to read on its container, and what is not known."""

    container: tuple[str, ...]
    unknown: tuple[str, ...]


def choose(inputs: Inputs) -> FluidChoice:
    """Judge the fluid to be put in; raises `EntryError` where it is neither of the family's."""
    built_for, chosen = inputs.word("specification"), inputs.word("fluid")
    later = _names(inputs.word("accepts") or "")
    if built_for is None:
        return _unjudged(chosen)
    if chosen is None:
        unknown = f"Which fluid goes in is not written. {_may(built_for, later)}"
        return FluidChoice(container=(), unknown=(unknown,))
    found = next((each for each in (built_for, *later) if _same(chosen, each)), None)
    if found is None:
        wrong = (
            f"The unit was built for {built_for}, and the family page does not say that {chosen} "
            "supersedes it. Another friction makes clutches and bands slip or shudder."
        )
        raise EntryError("fluid", wrong, f"Put in {_listing((built_for, *later))}.")
    why = "" if found == built_for else f", which supersedes {built_for} by the family page"
    return FluidChoice(container=(f"Read the container: it must say {found}{why}.",), unknown=())


def _unjudged(chosen: str | None) -> FluidChoice:
    """Say that nothing is known to judge by."""
    what = f"whether {chosen} may go in is not known" if chosen else "no fluid is judged"
    unknown = (
        f"Which fluid this unit was built for is not written, so {what}. "
        "Read it on the family page before anything is put in."
    )
    return FluidChoice(container=(), unknown=(unknown,))


def _may(built_for: str, later: tuple[str, ...]) -> str:
    """Say what may go in."""
    if not later:
        return f"This unit takes {built_for}; nothing is known to supersede it."
    verb = "supersedes" if len(later) == 1 else "supersede"
    return f"This unit takes {built_for}; {_listing(later, 'and')} {verb} it."


def _names(text: str) -> tuple[str, ...]:
    """Split a list of names at commas and semicolons."""
    return tuple(name for part in re.split(r"[,;]", text) if (name := part.strip()))


def _same(one: str, other: str) -> bool:
    """Compare two names as a reader of containers would: letter case and spaces do not count."""
    return "".join(one.casefold().split()) == "".join(other.casefold().split())


def _listing(names: tuple[str, ...], word: str = "or") -> str:
    """Write "a", "a or b", "a, b or c"."""
    return f" {word} ".join(filter(None, (", ".join(names[:-1]), names[-1])))
