"""The ids that a manual knows, by what they refer to."""

from underhoist.model import Manual

EVERY_FAMILY = "any"
"""What stands for all families."""

type Known = dict[str, tuple[str, ...]]


def known_ids(manual: Manual) -> Known:
    """Return the ids of families, tools, hazards, procedures, torques and parts.

    Torques and parts stand there twice: short, as a page of their family writes them, and with
    their owner before a slash.
    """
    owners = (*manual.families.values(), *manual.procedures.values())
    fasteners = [(owner.id, name) for owner in owners for name in owner.fasteners]
    parts = [(family.id, name) for family in manual.families.values() for name in family.parts]
    return {
        "family": (EVERY_FAMILY, *manual.families),
        "tool": tuple(manual.tools),
        "hazard": tuple(manual.hazards),
        "procedure": tuple(manual.procedures),
        "torque": _both(fasteners),
        "part": _both(parts),
    }


def _both(owned: list[tuple[str, str]]) -> tuple[str, ...]:
    short = (name for _, name in owned)
    whole = (f"{owner}/{name}" for owner, name in owned)
    return tuple(dict.fromkeys([*short, *whole]))
