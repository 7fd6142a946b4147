"""From below: minutes that no order of the checks can beat."""

from underhoist_calculators.fault_finding.board import Board, State, bits


def least(board: Board, state: State, useful: int) -> float:
    """Give a bound on the expected minutes from here, times the state's mass.

    Each check stops at most the mass with which it is bad, and carries an equal part of each way
    that it shares. Fewest minutes would be spent with the most mass a minute first; a check on
    which the search would stop half-way counts as if its mass went evenly.
    """
    if not useful:
        return 0.0
    mass = board.mass(state)
    shared = _parts(board, state, useful)
    if state.shown:
        return mass * min(shared[check] for check in bits(useful))
    offers = sorted(
        ((board.bad_mass(state, check), shared[check]) for check in bits(useful)),
        key=lambda offer: offer[1] / offer[0] if offer[0] else float("inf"),
    )
    alone = _are_alone(board, state, useful)
    spent, to_stop, left = 0.0, _stopped(board, state, useful), mass
    for stops, minutes in offers:
        if alone:
            spent += minutes * left
            left -= stops
            continue
        if to_stop <= 0 or stops <= 0:
            break
        part = min(1.0, to_stop / stops)
        spent += part * minutes * (left - part * stops / 2)
        left -= part * stops
        to_stop -= part * stops
    return spent * (1 - 1e-12)


def _stopped(board: Board, state: State, useful: int) -> float:
    """Give the mass of the causes that come to light once no check is left that can show any.

    Each either had all of its checks, or a good one ruled it out and another stopped all its mass.
    """
    missed = list(board.weights(state)[:-1])
    mass = sum(missed)
    for check in bits(useful):
        missed = [left * (1 - bad) for left, bad in zip(missed, board.bad[check], strict=False)]
    return mass - sum(missed)


def _parts(board: Board, state: State, useful: int) -> dict[int, float]:
    """Own minutes of each useful check and its equal part of the ways that are not paid."""
    counts: dict[int, int] = {}
    for check in bits(useful):
        for level in bits(board.ways[check] & ~state.paid):
            counts[level] = counts.get(level, 0) + 1
    return {
        check: board.minutes[check]
        + sum(board.fees[lv] / counts[lv] for lv in bits(board.ways[check] & ~state.paid))
        for check in bits(useful)
    }


def _are_alone(board: Board, state: State, useful: int) -> bool:
    """Say whether no cause is found by two of the checks, so that each must be made in its turn."""
    seen = 0
    for check in bits(useful):
        finds = state.live & ~board.kinds[check].never
        if finds & seen or not finds or finds & board.none:
            return False
        seen |= finds
    return True
