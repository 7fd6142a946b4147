"""The plan as numbered steps: a person can follow them on paper."""

from collections.abc import Iterator

from attrs import frozen

from underhoist_calculators.fault_finding.board import Result, State, bits
from underhoist_calculators.fault_finding.plan import Plan
from underhoist_calculators.fault_finding.words import open_causes, reason

STEPS = 60
"""So many steps a page can bear; what is rarer goes on in the order of the checks."""


@frozen(kw_only=True)
class Outcome:
    """Where a result leads: to a step, to causes, or to nothing that the list knows.

    Several causes: no check tells them apart. None and no step: stop and ask.
    """

    step: int | None = None
    causes: tuple[int, ...] = ()
    shown: bool = False
    remaining: tuple[int, ...] = ()
    """Checks to go on with, in this order, where the page can bear no more steps."""


@frozen(kw_only=True)
class Step:
    """One check of the table: what it takes here, why it is here, and where each result leads."""

    number: int
    check: int
    minutes: float
    way_minutes: float
    reason: str
    good: Outcome
    bad: Outcome


def steps(plan: Plan, most: int = STEPS) -> tuple[Step, ...]:
    """Give the plan's steps: first those while all is good, then what follows a bad result."""
    numbered = _numbered(plan, most)
    return tuple(
        Step(
            number=number,
            check=check,
            minutes=plan.board.minutes[check],
            way_minutes=plan.board.cost(state, check) - plan.board.minutes[check],
            reason=reason(plan, state, check),
            good=_outcome(plan, plan.board.after(state, check, "good"), numbered),
            bad=_outcome(plan, plan.board.after(state, check, "bad"), numbered),
        )
        for number, check, state in numbered.values()
    )


type _Numbered = dict[tuple[int, ...], tuple[int, int, State]]


def _numbered(plan: Plan, most: int) -> _Numbered:
    """Give each situation its number, its check and a state; the same situation has one number."""
    numbered: _Numbered = {}
    waiting = [plan.board.start()]
    while waiting:
        state: State | None = waiting.pop(0)
        branches: list[State] = []
        while state is not None and (check := plan.next(state)) is not None:
            key = _key(plan, state)
            if key in numbered or len(numbered) >= most:
                break
            numbered[key] = len(numbered) + 1, check, state
            branches += _possible(plan, state, check, "bad")
            state = next(_possible(plan, state, check, "good"), None)
        waiting = [*branches, *waiting]
    return numbered


def _possible(plan: Plan, state: State, check: int, result: Result) -> Iterator[State]:
    after = plan.board.after(state, check, result)
    if plan.board.mass(after) > 0:
        yield after


def _outcome(plan: Plan, state: State, numbered: _Numbered) -> Outcome:
    board = plan.board
    if board.mass(state) <= 0:
        return Outcome()
    found = board.found(state)
    if found is not None:
        return Outcome(causes=(found,), shown=True)
    if not board.useful(state):
        return Outcome(causes=open_causes(plan, state), shown=state.shown)
    step = numbered.get(_key(plan, state))
    if step is None:
        return Outcome(remaining=tuple(bits(board.useful(state))))
    return Outcome(step=step[0])


def _key(plan: Plan, state: State) -> tuple[int, ...]:
    """Situations with the same key go on alike."""
    board = plan.board
    useful = board.useful(state)
    needed = 0
    for check in bits(useful):
        needed |= board.ways[check]
    return state.live, state.told, useful, state.paid & needed, state.shown
