"""From below: minutes that no order of the checks can beat."""

from attrs import Factory, field, frozen

from underhoist_calculators.fault_finding.board import Board, State, bits

type _Parts = tuple[tuple[int, float], ...]


@frozen
class Bounds:
    """Bounds of one complaint; what many states have in common is worked out once."""

    board: Board
    _parts: dict[tuple[int, int], _Parts] = field(
        init=False, default=Factory(dict["tuple[int, int]", _Parts])
    )
    _missed: dict[int, tuple[float, ...]] = field(
        init=False, default=Factory(dict[int, "tuple[float, ...]"])
    )
    _alone: dict[tuple[int, int], bool] = field(
        init=False, default=Factory(dict["tuple[int, int]", bool])
    )

    def least(self, state: State, useful: int) -> float:
        """Give a bound on the expected minutes from here, times the state's mass.

        Each check stops at most the mass with which it is bad, and carries an equal part of each
        way that it shares. Fewest minutes would be spent with the most mass a minute first; a check
        on which the search would stop half-way counts as if its mass went evenly.
        """
        if not useful:
            return 0.0
        mass = self.board.mass(state)
        key = useful, state.paid
        parts = self._parts.get(key)
        if parts is None:
            parts = self._parts[key] = _shared(self.board, useful, state.paid)
        if state.shown:
            return mass * min([minutes for _, minutes in parts])
        offers = self._offers(state, parts)
        if self._are_alone(state.live, useful):
            return _each_in_turn(offers, mass)
        return _until_stopped(offers, mass, self._stopped(state, useful))

    def _offers(self, state: State, parts: _Parts) -> list[tuple[float, float, float]]:
        """Give minutes for the mass, mass and minutes of each check, the cheapest mass first."""
        weights, pairs = self.board.weights(state), self.board.pairs
        offers: list[tuple[float, float, float]] = []
        for check, minutes in parts:
            stops = 0.0
            for cause, share in pairs[check]:
                stops += weights[cause] * share
            offers.append((minutes / stops if stops else float("inf"), stops, minutes))
        offers.sort()
        return offers

    def _stopped(self, state: State, useful: int) -> float:
        """Give the mass of the causes that come to light once no check is left that can show any.

        Each either had all of its checks, or a good one ruled it out and another stopped it whole.
        """
        missed = self._missed.get(useful)
        if missed is None:
            missed = self._missed[useful] = _missed(self.board, useful)
        weights = self.board.weights(state)
        return sum([weight * (1 - part) for weight, part in zip(weights, missed, strict=False)])

    def _are_alone(self, live: int, useful: int) -> bool:
        key = live, useful
        known = self._alone.get(key)
        if known is None:
            known = self._alone[key] = _are_alone(self.board, live, useful)
        return known


def _each_in_turn(offers: list[tuple[float, float, float]], left: float) -> float:
    spent = 0.0
    for _, stops, minutes in offers:
        spent += minutes * left
        left -= stops
    return spent * (1 - 1e-12)


def _until_stopped(offers: list[tuple[float, float, float]], left: float, to_stop: float) -> float:
    spent = 0.0
    for _, stops, minutes in offers:
        if to_stop <= 0 or stops <= 0:
            break
        part = min(1.0, to_stop / stops)
        spent += part * minutes * (left - part * stops / 2)
        left -= part * stops
        to_stop -= part * stops
    return spent * (1 - 1e-12)


def _missed(board: Board, useful: int) -> tuple[float, ...]:
    """Give how likely these checks are all good with each listed cause."""
    missed = [1.0] * (len(board.prior) - 1)
    for check in bits(useful):
        missed = [left * (1 - bad) for left, bad in zip(missed, board.bad[check], strict=False)]
    return tuple(missed)


def _shared(board: Board, useful: int, paid: int) -> _Parts:
    """Own minutes of each useful check and its equal part of the ways that are not paid."""
    counts: dict[int, int] = {}
    for check in bits(useful):
        for level in bits(board.ways[check] & ~paid):
            counts[level] = counts.get(level, 0) + 1
    return tuple(
        (
            check,
            board.minutes[check]
            + sum(board.fees[lv] / counts[lv] for lv in bits(board.ways[check] & ~paid)),
        )
        for check in bits(useful)
    )


def _are_alone(board: Board, live: int, useful: int) -> bool:
    """Say whether no cause is found by two of the checks, so that each must be made in its turn."""
    seen = 0
    for check in bits(useful):
        finds = live & ~board.kinds[check].never
        if finds & seen or not finds or finds & board.none:
            return False
        seen |= finds
    return True
