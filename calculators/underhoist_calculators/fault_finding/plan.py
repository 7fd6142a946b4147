"""The plan of a complaint: which check next in any state, and how sure that is."""

from collections.abc import Iterable
from functools import cached_property

from attrs import frozen

from underhoist_calculators.fault_finding.board import Board, Result, State, bits
from underhoist_calculators.fault_finding.bounds import Bounds
from underhoist_calculators.fault_finding.complaint import NONE, Complaint, ComplaintError
from underhoist_calculators.fault_finding.policies import (
    Policy,
    effort_at_most,
    likeliest_per_minute,
)
from underhoist_calculators.fault_finding.search import STATES, Search, TooManyStatesError

type Results = Iterable[tuple[str, Result]]


@frozen(slots=False)
class Plan:
    """Chooses exactly where the search ends in time, else by the index, with a bound."""

    complaint: Complaint
    most: int = STATES

    @cached_property
    def board(self) -> Board:
        """The complaint's tables."""
        return Board(self.complaint)

    @cached_property
    def _bounds(self) -> Bounds:
        return Bounds(self.board)

    @cached_property
    def _at_most(self) -> dict[State, float]:
        return {}

    @cached_property
    def _gaps(self) -> dict[State, float]:
        return {}

    @cached_property
    def _searches(self) -> dict[State, Search | None]:
        return {}

    def _search(self, state: State) -> Search | None:
        """Give a search that gets to its end from here, None where none does in time."""
        if state not in self._searches:
            start = self.board.start()
            whole = None if state == start else self._search(start)
            tries = (whole, Search(self._bounds, self.most))
            self._searches[state] = next(
                (each for each in tries if each and each.ends(state)), None
            )
        return self._searches[state]

    def is_exact(self, state: State) -> bool:
        """Say whether the order from here is proved to be the quickest."""
        return self._search(state) is not None

    @cached_property
    def _by_index(self) -> Policy:
        return likeliest_per_minute(self.board)

    def state(self, results: Results) -> State:
        """Give the state after these results. Raises `ComplaintError`."""
        numbers = {each.id: number for number, each in enumerate(self.complaint.checks)}
        state = self.board.start()
        for id_, result in results:
            if id_ not in numbers:
                raise ComplaintError(f"{id_} is no check here")
            if not state.left >> numbers[id_] & 1:
                raise ComplaintError(f"{id_} has two results")
            state = self.board.after(state, numbers[id_], result)
        return state

    def next(self, state: State) -> int | None:
        """Give the next check; None where nothing is left that tells more."""
        search = self._search(state)
        return search.best(state) if search else self._by_index(state)

    def minutes(self, state: State) -> float:
        """Give the expected minutes of the plan from here; where not exact, at most so many."""
        mass = self.board.mass(state)
        if mass <= 0:
            return 0.0
        search = self._search(state)
        if search:
            return search.minutes(state) / mass
        if state not in self._at_most:
            looks = 1 + self.most // STATES_A_LOOK
            minutes = effort_at_most(self.board, self._by_index, state, looks)
            self._at_most[state] = minutes
        return self._at_most[state]

    def minutes_with(self, state: State, check: int) -> float | None:
        """Give the expected minutes from here, if this check is the next.

        None where no search ends in time.
        """
        mass = self.board.mass(state)
        search = self._search(state)
        if search is None or mass <= 0:
            return None
        try:
            return search.with_check(state, check) / mass
        except TooManyStatesError:
            return None

    def gap(self, state: State) -> float:
        """Give the minutes by which a quicker order can at most be quicker; 0 where it is exact."""
        if self.is_exact(state):
            return 0.0
        if state not in self._gaps:
            mass = self.board.mass(state)
            ahead = LOOK_AHEAD if self.most >= STATES else 1
            below = _below(self._bounds, state, ahead) / mass if mass > 0 else 0.0
            self._gaps[state] = max(0.0, self.minutes(state) - below)
        return self._gaps[state]

    def mend_minutes(self, state: State) -> float:
        """Give the expected minutes to mend it; no order of the checks changes them."""
        mends = {each.id: each.mend_minutes for each in self.complaint.listed}
        return sum(share * mends.get(id_, 0.0) for id_, share in self.shares(state).items())

    def shares(self, state: State) -> dict[str, float]:
        """Give the share of each cause by id, none of these last; empty where nothing fits."""
        mass = self.board.mass(state)
        if mass <= 0:
            return {}
        ids = [*(each.id for each in self.complaint.listed), NONE]
        weights = self.board.weights(state)
        return {id_: weight / mass for id_, weight in zip(ids, weights, strict=True)}


STATES_A_LOOK = 10
"""Choosing by the index once takes as long as so many states of the search."""

LOOK_AHEAD = 2
"""So many checks deep the bound is looked for."""


def _below(bounds: Bounds, state: State, depth: int) -> float:
    """Give a bound from below, the better for every check that is looked ahead."""
    board = bounds.board
    useful = board.useful(state)
    bound = bounds.least(state, useful)
    if not useful or not depth:
        return bound
    mass = board.mass(state)
    ahead = min(
        mass * board.cost(state, check)
        + sum(
            _below(bounds, after, depth - 1)
            for after in (board.after(state, check, result) for result in ("good", "bad"))
            if board.mass(after) > 0
        )
        for check in bits(useful)
    )
    return max(bound, ahead)
