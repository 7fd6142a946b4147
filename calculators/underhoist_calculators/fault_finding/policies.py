"""Ways to choose the next check, and what each comes to in expected minutes and checks."""

from collections.abc import Callable, Sequence
from heapq import heappop, heappush
from typing import NamedTuple

from underhoist_calculators.fault_finding.board import Board, State, bits
from underhoist_calculators.fault_finding.complaint import ComplaintError

type Policy = Callable[[State], int | None]


class Effort(NamedTuple):
    """Expected minutes and number of checks."""

    minutes: float
    checks: float


def in_order(board: Board, ids: Sequence[str] = ()) -> Policy:
    """Make the checks in this order, else as written; one that tells nothing more is passed over.

    Raises `ComplaintError` for an id that is no check.
    """
    numbers = {each.id: number for number, each in enumerate(board.complaint.checks)}
    strange = [id_ for id_ in ids if id_ not in numbers]
    if strange:
        raise ComplaintError(f"{strange[0]} is no check here")
    order = [numbers[id_] for id_ in ids] if ids else list(numbers.values())

    def choose(state: State) -> int | None:
        useful = board.useful(state)
        return next((check for check in order if useful >> check & 1), None)

    return choose


def likeliest_per_minute(board: Board) -> Policy:
    """Take the check, or the group behind one way, that finds most for its minutes.

    Kadane and Simon's index, with the way to a level shared by those of its checks that make the
    index highest.
    """

    def choose(state: State) -> int | None:
        useful = board.useful(state)
        if not useful:
            return None
        return max(bits(useful), key=lambda check: (_index(board, state, useful, check), -check))

    return choose


def _index(board: Board, state: State, useful: int, first: int) -> float:
    """Give the highest mass a minute that beginning with this check can have."""
    mass, minutes = board.bad_mass(state, first), board.cost(state, first)
    paid = state.paid | board.ways[first]
    others = [each for each in bits(useful) if each != first and board.ways[each] & ~paid == 0]
    rates = {each: (board.bad_mass(state, each), board.minutes[each]) for each in others}
    best = _rate(mass, minutes)
    for stops, own in sorted(rates.values(), key=lambda pair: -_rate(*pair)):
        mass, minutes = mass + stops, minutes + own
        best = max(best, _rate(mass, minutes))
    return best


def _rate(mass: float, minutes: float) -> float:
    return mass / minutes if minutes > 0 else float("inf")


def effort(board: Board, choose: Policy, state: State | None = None) -> Effort:
    """Give what this way of choosing comes to from a state on, exactly."""
    known: dict[State, tuple[float, float]] = {}

    def spent(at: State) -> tuple[float, float]:
        if at in known:
            return known[at]
        check = choose(at)
        if check is None:
            return 0.0, 0.0
        ways = [board.after(at, check, result) for result in ("good", "bad")]
        rest = [spent(after) for after in ways if board.mass(after) > 0]
        mass = board.mass(at)
        known[at] = (
            mass * board.cost(at, check) + sum(each[0] for each in rest),
            mass + sum(each[1] for each in rest),
        )
        return known[at]

    begin = board.start() if state is None else state
    minutes, checks = spent(begin)
    mass = board.mass(begin)
    return Effort(minutes / mass, checks / mass) if mass > 0 else Effort(0.0, 0.0)


def effort_at_most(board: Board, choose: Policy, state: State, looks: int) -> float:
    """Give minutes that this way of choosing cannot exceed, looking into so many states.

    The likeliest states first; in the others every check that is left is counted.
    """
    spent = 0.0
    heap = [(-board.mass(state), state)]
    while heap and looks > 0:
        negative, at = heappop(heap)
        looks -= 1
        check = choose(at)
        if check is None:
            continue
        spent -= negative * board.cost(at, check)
        for result in ("good", "bad"):
            after = board.after(at, check, result)
            if board.mass(after) > 0:
                heappush(heap, (-board.mass(after), after))
    spent += sum(-negative * _all_left(board, at) for negative, at in heap)
    return spent / board.mass(state)


def _all_left(board: Board, state: State) -> float:
    useful = list(bits(board.useful(state)))
    ways = 0
    for check in useful:
        ways |= board.ways[check]
    return sum(board.minutes[each] for each in useful) + board.fee(ways & ~state.paid)


def random_effort(board: Board) -> Effort:
    """Give what taking any useful check with equal chance comes to, exactly."""
    known: dict[State, tuple[float, float]] = {}

    def spent(at: State) -> tuple[float, float]:
        if at in known:
            return known[at]
        useful = list(bits(board.useful(at)))
        minutes, checks = 0.0, 0.0
        for check in useful:
            minutes += board.mass(at) * board.cost(at, check) / len(useful)
            checks += board.mass(at) / len(useful)
            for result in ("good", "bad"):
                after = board.after(at, check, result)
                if board.mass(after) > 0:
                    more = spent(after)
                    minutes += more[0] / len(useful)
                    checks += more[1] / len(useful)
        known[at] = minutes, checks
        return known[at]

    minutes, checks = spent(board.start())
    return Effort(minutes, checks)
