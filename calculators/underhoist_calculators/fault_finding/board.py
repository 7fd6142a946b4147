"""A complaint in whole numbers, one bit a cause, a check or a level: the search reads it often."""

from collections.abc import Iterator
from functools import cached_property
from typing import Literal, NamedTuple

from attrs import frozen

from underhoist_calculators.fault_finding.complaint import NONE, Complaint

type Result = Literal["good", "bad", "not done"]


class State(NamedTuple):
    """What is known and paid for. Bits of `told`: two for each check, good and bad."""

    live: int
    told: int
    left: int
    paid: int
    shown: bool


class Kind(NamedTuple):
    """How a check answers, as sets of causes: each share of bad results with its causes."""

    groups: tuple[int, ...]
    never: int
    always: int
    hard: bool


def bits(mask: int) -> Iterator[int]:
    """Give the numbers of the bits that are set, the lowest first."""
    while mask:
        low = mask & -mask
        yield low.bit_length() - 1
        mask ^= low


@frozen(slots=False)
class Board:
    """The tables of one complaint; the last cause is none of these."""

    complaint: Complaint

    @cached_property
    def prior(self) -> tuple[float, ...]:
        """Shares of the causes, none of these last."""
        return (*(each.share for each in self.complaint.listed), self.complaint.none_share)

    @cached_property
    def none(self) -> int:
        """Bit of none of these."""
        return 1 << (len(self.prior) - 1)

    @cached_property
    def bad(self) -> tuple[tuple[float, ...], ...]:
        """How often each check is bad with each cause."""
        ids = [*(each.id for each in self.complaint.listed), NONE]
        return tuple(tuple(each.bad.get(id_, 0.0) for id_ in ids) for each in self.complaint.checks)

    @cached_property
    def kinds(self) -> tuple[Kind, ...]:
        """How each check answers."""
        return tuple(_kind(row) for row in self.bad)

    @cached_property
    def pairs(self) -> tuple[tuple[tuple[int, float], ...], ...]:
        """Each check's causes with which it can be bad, and how often: few of all causes."""
        return tuple(tuple((n, share) for n, share in enumerate(row) if share) for row in self.bad)

    @cached_property
    def minutes(self) -> tuple[float, ...]:
        """Own minutes of each check."""
        return tuple(each.minutes for each in self.complaint.checks)

    @cached_property
    def ways(self) -> tuple[int, ...]:
        """Levels that each check needs."""
        numbers = {name: number for number, name in enumerate(self.complaint.levels)}
        return tuple(
            sum(1 << numbers[level.name] for level in self.complaint.way(each.access))
            for each in self.complaint.checks
        )

    @cached_property
    def fees(self) -> tuple[float, ...]:
        """Minutes to get to each level from the one it leads through."""
        return tuple(each.minutes for each in self.complaint.levels.values())

    @cached_property
    def _known_tells(self) -> dict[int, tuple[int, int]]:
        return {}

    @cached_property
    def _known_found(self) -> dict[tuple[int, int], int | None]:
        return {}

    @cached_property
    def _known_fees(self) -> dict[int, float]:
        return {0: 0.0}

    @cached_property
    def _known_weights(self) -> dict[tuple[int, int], tuple[float, ...]]:
        return {}

    @cached_property
    def _known_masses(self) -> dict[tuple[int, int], float]:
        return {}

    def start(self) -> State:
        """Give the state before the first check."""
        live = sum(1 << number for number, share in enumerate(self.prior) if share > 0)
        return State(live, 0, (1 << len(self.minutes)) - 1, 0, False)

    def fee(self, levels: int) -> float:
        """Minutes to get to these levels."""
        known = self._known_fees
        if levels not in known:
            known[levels] = sum(self.fees[each] for each in bits(levels))
        return known[levels]

    def cost(self, state: State, check: int) -> float:
        """Minutes that the check takes now, with the way there as far as it is not paid."""
        return self.minutes[check] + self.fee(self.ways[check] & ~state.paid)

    def after(self, state: State, check: int, result: Result) -> State:
        """Give the state after a result; a check that was not done leaves all as it is."""
        live, told, left, paid, shown = state
        left &= ~(1 << check)
        if result == "not done":
            return State(live, told, left, paid, shown)
        kind = self.kinds[check]
        is_bad = result == "bad"
        live &= ~(kind.never if is_bad else kind.always)
        if not kind.hard:
            told |= 1 << (2 * check + is_bad)
        return State(live, told, left, paid | self.ways[check], shown or is_bad)

    def weights(self, state: State) -> tuple[float, ...]:
        """Share of each cause times how likely the results were with it."""
        return self._weights(state.live, state.told)

    def _weights(self, live: int, told: int) -> tuple[float, ...]:
        known = self._known_weights.get((live, told))
        if known is None:
            known = self._known_weights[live, told] = self._weigh(live, told)
        return known

    def _weigh(self, live: int, told: int) -> tuple[float, ...]:
        """Weigh the last result on top of those before it, which other states have as well."""
        if not told:
            return tuple(share if live >> n & 1 else 0.0 for n, share in enumerate(self.prior))
        last = told.bit_length() - 1
        before, row = self._weights(live, told ^ 1 << last), self.bad[last >> 1]
        if last & 1:
            return tuple([each * share for each, share in zip(before, row, strict=True)])
        return tuple([each * (1 - share) for each, share in zip(before, row, strict=True)])

    def mass(self, state: State) -> float:
        """Give how likely the results so far were."""
        key = state.live, state.told
        known = self._known_masses.get(key)
        if known is None:
            known = self._known_masses[key] = sum(self._weights(*key))
        return known

    def found(self, state: State) -> int | None:
        """Give the cause that a check has shown and that is likely enough, or None."""
        if not state.shown or not state.live & ~self.none:
            return None
        key = state.live, state.told
        if key not in self._known_found:
            self._known_found[key] = self._likely_enough(state)
        return self._known_found[key]

    def _likely_enough(self, state: State) -> int | None:
        if not state.live & (state.live - 1):
            return state.live.bit_length() - 1
        weights = self.weights(state)[:-1]
        most = max(weights)
        enough = self.complaint.confidence * self.mass(state) * (1 - 1e-12)
        return weights.index(most) if most >= enough else None

    def useful(self, state: State) -> int:
        """Give the checks that can still change anything; none once a cause is found."""
        live = state.live
        tells = self._known_tells.get(live)
        if tells is None:
            tells = self._known_tells[live] = self._tells(live)
        parts, shows = tells
        if not state.shown:
            return state.left & (parts | shows)
        return state.left & parts if self.found(state) is None else 0

    def _tells(self, live: int) -> tuple[int, int]:
        """Give the checks that tell causes apart, and those that can show one."""
        parts, shows = 0, 0
        listed = live & ~self.none
        for check, kind in enumerate(self.kinds) if listed else ():
            if all(live & ~group for group in kind.groups):
                parts |= 1 << check
            if listed & ~kind.never:
                shows |= 1 << check
        return parts, shows

    def bad_mass(self, state: State, check: int) -> float:
        """Give how likely the results so far and a bad one of this check are."""
        weights = self._weights(state.live, state.told)
        return sum([weights[cause] * share for cause, share in self.pairs[check]])


def _kind(row: tuple[float, ...]) -> Kind:
    groups: dict[float, int] = {}
    for number, share in enumerate(row):
        groups[share] = groups.get(share, 0) | 1 << number
    hard = groups.keys() <= {0.0, 1.0}
    return Kind(tuple(groups.values()), groups.get(0.0, 0), groups.get(1.0, 0), hard)
