"""The exact search: dynamic programming over what is known and paid for, cut by the bound."""

from typing import NamedTuple

from attrs import Factory, field, frozen

from underhoist_calculators.fault_finding.board import Board, State, bits
from underhoist_calculators.fault_finding.bounds import Bounds

STATES = 3_000
"""So many states are looked into at most: twice what twelve checks of a usual page take."""

TIE = 1e-9
"""Minutes within which two checks are as good: the one that the author wrote first is taken."""

type _Key = tuple[int, int, int, int, bool]


class _Branch(NamedTuple):
    """What can follow a check, and minutes times mass that it takes at least."""

    key: _Key
    state: State
    useful: int
    below: float


class TooManyStatesError(Exception):
    """The search would take longer than a person waits."""


@frozen
class Search:
    """Expected minutes from any state; every state is worked out once."""

    bounds: Bounds
    most: int = STATES
    _known: dict[_Key, float] = field(init=False, default=Factory(dict["_Key", float]))
    _below: dict[_Key, float] = field(init=False, default=Factory(dict["_Key", float]))
    _needed: dict[int, int] = field(init=False, default=Factory(dict[int, int]))

    @property
    def board(self) -> Board:
        """The complaint's tables."""
        return self.bounds.board

    def minutes(self, state: State) -> float:
        """Give the fewest expected minutes times the state's mass.

        Raises `TooManyStatesError`.
        """
        useful = self.board.useful(state)
        return self._minutes(self._key(state, useful), state, useful) if useful else 0.0

    def _minutes(self, key: _Key, state: State, useful: int) -> float:
        found = self._known.get(key)
        if found is None:
            if len(self._known) >= self.most:
                raise TooManyStatesError
            found = self._known[key] = self._fewest(state, useful)
        return found

    def ends(self, state: State) -> bool:
        """Say whether the search gets to its end from here; then nothing below raises from here."""
        try:
            self.minutes(state)
            self.best(state)
        except TooManyStatesError:
            return False
        return True

    def with_check(self, state: State, check: int) -> float:
        """Give the same, for going on with this check; nothing is spent on a branch of no mass."""
        board = self.board
        minutes = board.mass(state) * board.cost(state, check)
        for result in ("good", "bad"):
            after = board.after(state, check, result)
            if board.mass(after) > 0:
                minutes += self.minutes(after)
        return minutes

    def best(self, state: State) -> int | None:
        """Give the next check, None where none tells anything more."""
        useful = self.board.useful(state)
        if not useful:
            return None
        minutes = {check: self.with_check(state, check) for check in bits(useful)}
        fewest = min(minutes.values()) + TIE * self.board.mass(state)
        return next(check for check, each in minutes.items() if each <= fewest)

    def _key(self, state: State, useful: int) -> _Key:
        """Leave out of the state what no useful check depends on."""
        needed = self._needed.get(useful)
        if needed is None:
            needed = 0
            for check in bits(useful):
                needed |= self.board.ways[check]
            self._needed[useful] = needed
        return state.live, state.told, useful, state.paid & needed, state.shown

    def _fewest(self, state: State, useful: int) -> float:
        """Try the checks, the one that promises most first, until none can be better."""
        board = self.board
        mass = board.mass(state)
        tries: list[tuple[float, list[_Branch]]] = []
        for check in candidates(board, state, useful):
            spent = mass * board.cost(state, check)
            branches = self._branches(state, check)
            tries.append((spent + sum([each.below for each in branches]), branches))
        fewest = float("inf")
        for below, branches in sorted(tries, key=lambda each: each[0]):
            if below >= fewest:
                break
            fewest = min(fewest, self._through(branches, below, fewest))
        return fewest

    def _branches(self, state: State, check: int) -> list[_Branch]:
        """Give what can follow a check, with its minutes where they are known, else a bound."""
        found: list[_Branch] = []
        for result in ("good", "bad"):
            after = self.board.after(state, check, result)
            useful = self.board.useful(after)
            if not useful or self.board.mass(after) <= 0:
                continue
            key = self._key(after, useful)
            below = self._known.get(key)
            if below is None:
                below = self._below.get(key)
                if below is None:
                    below = self._below[key] = self.bounds.least(after, useful)
            found.append(_Branch(key, after, useful, below))
        return found

    def _through(self, branches: list[_Branch], spent: float, allowed: float) -> float:
        """Put minutes in the bounds' place, and stop where they are more than is allowed."""
        for key, after, useful, below in branches:
            spent += self._minutes(key, after, useful) - below
            if spent >= allowed:
                return float("inf")
        return spent


def candidates(board: Board, state: State, useful: int) -> list[int]:
    """Give the checks that can be the best next one, the likeliest per minute first.

    Of checks at one level that each find one cause, found by no other check, only the likeliest
    per minute can be: two of them can change places without changing what the ways cost.
    """
    rates = {check: _rate(board, state, check) for check in bits(useful)}
    ordered = sorted(rates, key=lambda check: -rates[check])
    if state.shown:
        return ordered
    once, twice = 0, 0
    for check in ordered:
        finds = state.live & ~board.kinds[check].never
        twice |= once & finds
        once |= finds
    kept: list[int] = []
    levels: set[int] = set()
    for check in ordered:
        finds = state.live & ~board.kinds[check].never
        if finds & (finds - 1) or finds & twice or finds & board.none:
            kept.append(check)
        elif board.ways[check] not in levels:
            levels.add(board.ways[check])
            kept.append(check)
    return kept


def _rate(board: Board, state: State, check: int) -> float:
    own = board.minutes[check]
    return board.bad_mass(state, check) / own if own > 0 else float("inf")
