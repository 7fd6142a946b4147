"""A complaint as the search for its cause sees it: causes, checks, ways to get at things."""

from collections.abc import Iterable, Mapping
from math import isclose, isfinite

from attrs import field, frozen

NONE = "none-of-these"
"""Id of the cause that is none of the listed ones; its share is what the others leave."""

ROUNDING = 1e-12
"""A difference as small as this comes from adding up in another order, and counts as none."""

CONFIDENCE = 0.95
"""Share from which a cause counts as found, once a check has shown it. Our own choice."""


class ComplaintError(ValueError):
    """A table that cannot be worked with; the message says which entry and why."""


@frozen(kw_only=True)
class Level:
    """How far in: minutes to get there from the level it leads `through`, or from the start."""

    name: str
    minutes: float
    through: str | None = None


@frozen(kw_only=True)
class Cause:
    """Something that can be behind it: its share of such complaints from 0 to 1."""

    id: str
    name: str
    share: float
    mend_minutes: float = 0.0


@frozen(kw_only=True)
class Check:
    """Something to look at: its own minutes, its level, and how often it is bad with each cause.

    `bad` maps causes to shares from 0 to 1; with a cause that is not there it is never bad.
    """

    id: str
    name: str
    minutes: float
    access: str
    bad: Mapping[str, float]


@frozen(kw_only=True)
class Complaint:
    """One cause is behind it, or none of those listed. Raises `ComplaintError`."""

    causes: tuple[Cause, ...]
    checks: tuple[Check, ...]
    levels: Mapping[str, Level] = field(factory=dict[str, Level])
    confidence: float = CONFIDENCE

    def __attrs_post_init__(self) -> None:
        """Refuse what does not add up."""
        _refuse_twice("cause", (each.id for each in self.causes))
        _refuse_twice("check", (each.id for each in self.checks))
        for cause in self.causes:
            _refuse_share(f"cause {cause.id}", cause.share)
            _refuse_minutes(f"cause {cause.id}", cause.mend_minutes)
        for level in self.levels.values():
            _refuse_minutes(f"access {level.name}", level.minutes)
            self.way(level.name)
        known = {each.id for each in self.causes} | {NONE}
        for check in self.checks:
            _refuse_minutes(f"check {check.id}", check.minutes)
            for cause, share in check.bad.items():
                _refuse_share(f"check {check.id}, cause {cause}", share)
                if cause not in known:
                    raise ComplaintError(f"check {check.id} names {cause}, which is no cause here")
        if not 0 < self.confidence <= 1:
            raise ComplaintError(f"confidence {self.confidence:g} is not above 0 and at most 1")
        self._refuse_sum()

    def _refuse_sum(self) -> None:
        total = sum(each.share for each in self.causes)
        exact = any(each.id == NONE for each in self.causes)
        if total > 1 + 1e-9 or (exact and not isclose(total, 1, abs_tol=1e-9)):
            wanted = "exactly" if exact else "at most"
            raise ComplaintError(f"the shares make {total:.1%}, not {wanted} 100 %")

    @property
    def listed(self) -> tuple[Cause, ...]:
        """The causes without "none of these"."""
        return tuple(each for each in self.causes if each.id != NONE)

    @property
    def none_share(self) -> float:
        """The share that the listed causes leave; what rounding leaves of a full sum is none."""
        rest = 1 - sum(each.share for each in self.listed)
        return rest if rest > ROUNDING else 0.0

    def way(self, access: str) -> tuple[Level, ...]:
        """Give the levels that lead there, outermost first; none where nothing is known of it."""
        found: list[Level] = []
        name: str | None = access
        while name is not None and name in self.levels:
            level = self.levels[name]
            if level in found:
                raise ComplaintError(f"access {access} leads through itself")
            found.append(level)
            name = level.through
        return tuple(reversed(found))


def _refuse_twice(kind: str, ids: Iterable[str]) -> None:
    seen: set[str] = set()
    for id_ in ids:
        if id_ in seen:
            raise ComplaintError(f"{kind} {id_} is there twice")
        seen.add(id_)


def _refuse_share(what: str, share: float) -> None:
    if not 0 <= share <= 1:
        raise ComplaintError(f"{what}: a share of {share:g} is not between 0 and 1")


def _refuse_minutes(what: str, minutes: float) -> None:
    if not (isfinite(minutes) and minutes >= 0):
        raise ComplaintError(f"{what}: {minutes:g} minutes are not zero or more")
