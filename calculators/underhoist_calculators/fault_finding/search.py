"""The exact search: dynamic programming over what is known and paid for, cut by the bound."""

from attrs import Factory, field, frozen

from underhoist_calculators.fault_finding.board import Board, State, bits
from underhoist_calculators.fault_finding.bounds import least

STATES = 3_000
"""So many states are looked into at most: twice what twelve checks of a usual page take."""

TIE = 1e-9
"""Minutes within which two checks are as good: the one that the author wrote first is taken."""

type _Key = tuple[int, int, int, int, bool]


class TooManyStatesError(Exception):
    """The search would take longer than a person waits."""


@frozen
class Search:
    """Expected minutes from any state; every state is worked out once."""

    board: Board
    most: int = STATES
    _known: dict[_Key, float] = field(init=False, default=Factory(dict["_Key", float]))

    def minutes(self, state: State) -> float:
        """Give the fewest expected minutes times the state's mass.

        Raises `TooManyStatesError`.
        """
        useful = self.board.useful(state)
        if not useful:
            return 0.0
        key = self._key(state, useful)
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

    def _key(self, state: State, useful: int) -> "_Key":
        """Leave out of the state what no useful check depends on."""
        needed = 0
        for check in bits(useful):
            needed |= self.board.ways[check]
        return state.live, state.told, useful, state.paid & needed, state.shown

    def _fewest(self, state: State, useful: int) -> float:
        board = self.board
        fewest = float("inf")
        mass = board.mass(state)
        for check in candidates(board, state, useful):
            spent = mass * board.cost(state, check)
            ways = [board.after(state, check, result) for result in ("good", "bad")]
            ways = [after for after in ways if board.mass(after) > 0]
            bounds = [least(board, after, board.useful(after)) for after in ways]
            if spent + sum(bounds) < fewest:
                fewest = min(fewest, spent + self._branches(ways, bounds, fewest - spent))
        return fewest

    def _branches(self, ways: list[State], bounds: list[float], allowed: float) -> float:
        """Add up the branches, and stop where they already take more than is allowed."""
        spent = sum(bounds)
        for after, bound in zip(ways, bounds, strict=True):
            spent += self.minutes(after) - bound
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
