"""What a plan says: why this check is next, what it could change, when to stop."""

from underhoist_calculators.fault_finding.board import Result, State, bits
from underhoist_calculators.fault_finding.complaint import ROUNDING
from underhoist_calculators.fault_finding.plan import Plan

HALF_A_MINUTE = 0.5
"""Expected minutes less than this apart are called the same."""


def minutes_words(minutes: float) -> str:
    """Say whole minutes; less than one is said so."""
    whole = int(minutes + 0.5 + ROUNDING)
    if whole == 0:
        return "less than a minute" if minutes > 0 else "no time"
    return "1 minute" if whole == 1 else f"{whole:,} minutes"


def out_of_a_hundred(share: float) -> str:
    """Say a share as so many in 100; nothing is called certain or impossible by rounding."""
    if share in (0, 1):
        return f"{round(100 * share)} in 100"
    if share < 0.01:
        return "less than 1 in 100"
    if share > 0.99:
        return "more than 99 in 100"
    return f"about {round(100 * share)} in 100"


def reason(plan: Plan, state: State, check: int) -> str:
    """Say in one sentence why this check is worth its minutes now."""
    return f"{_takes(plan, state, check)}, and it {_tells(plan, state, check)}."


def change(plan: Plan, state: State, check: int, result: Result) -> str:
    """Say what a result would change, without a full stop."""
    return _afterwards(plan, plan.board.after(state, check, result))


def instead(plan: Plan, state: State, check: int) -> str:
    """Say what choosing this check instead of the best costs on average."""
    minutes = plan.minutes_with(state, check)
    if minutes is None:
        return f"{minutes_words(plan.board.cost(state, check)).capitalize()} now; not compared."
    more = minutes - plan.minutes(state)
    if more < HALF_A_MINUTE - ROUNDING:
        return "As quick on average."
    return f"{minutes_words(more).capitalize()} more on average."


def outlook(plan: Plan, state: State) -> str:
    """Say where the search stands: found, to be asked, or what is likeliest now."""
    shares = plan.shares(state)
    if not shares:
        return "These results fit no cause of the list. Read the last one again, or stop and ask."
    cause = plan.board.found(state)
    if cause is not None:
        return f"It is this: {name_of(plan, cause)}."
    if not plan.board.useful(state):
        return _nothing_left(plan, state)
    words = f"Likeliest now: {_likeliest(plan, state)}."
    none = plan.shares(state)["none-of-these"]
    if none == max(shares.values()):
        words += " It is time to ask somebody before more is opened."
    return words


def name_of(plan: Plan, cause: int) -> str:
    """Give the name of a cause by its number."""
    listed = plan.complaint.listed
    return listed[cause].name if cause < len(listed) else "None of these"


def certainty(plan: Plan, state: State) -> str:
    """Say how far the order can be from the quickest; nothing where it is the quickest."""
    if plan.is_exact(state):
        return ""
    gap = plan.gap(state)
    if gap < HALF_A_MINUTE:
        return ""
    return (
        "So many checks are left that not every order was compared. The quickest takes at "
        f"most {minutes_words(gap)} less on average, and may be this one."
    )


def open_causes(plan: Plan, state: State) -> tuple[int, ...]:
    """Give the listed causes that no result has ruled out."""
    return tuple(bits(state.live & ~plan.board.none))


def _takes(plan: Plan, state: State, check: int) -> str:
    board = plan.board
    own = minutes_words(board.minutes[check])
    fee = board.fee(board.ways[check] & ~state.paid)
    if not fee:
        return f"{own}, nothing more to open" if state.paid else f"{own}, nothing to open"
    access = plan.complaint.checks[check].access
    same_way = [
        other
        for other in bits(board.useful(state))
        if other != check and board.ways[other] & board.ways[check] & ~state.paid
    ]
    return f"{own} and {round(fee)} to get there ({access}{_serves(len(same_way))})"


def _serves(others: int) -> str:
    if not others:
        return ""
    return ", of use to one more check" if others == 1 else f", of use to {others} more checks"


def _tells(plan: Plan, state: State, check: int) -> str:
    """Say which of the live causes the check is about."""
    board = plan.board
    kind = board.kinds[check]
    finds = state.live & ~kind.never & ~board.none
    weights = board.weights(state)
    share = sum(weights[cause] for cause in bits(finds)) / board.mass(state)
    certain = not finds & ~kind.always
    likeliest = max(bits(state.live), key=lambda cause: (weights[cause], -cause))
    among = bool(finds >> likeliest & 1)
    now = f"(now {out_of_a_hundred(share)})"
    if finds & (finds - 1):
        led = ", the likeliest among them" if among else ""
        verb = "can rule out" if certain else "speaks for or against"
        return f"{verb} {finds.bit_count()} causes at once{led} {now}"
    verb = "settles" if certain else "speaks for or against"
    return f"{verb} {'the likeliest' if among else 'one'} cause {now}"


def _afterwards(plan: Plan, after: State) -> str:
    shares = plan.shares(after)
    if not shares:
        return "fits no cause of the list"
    cause = plan.board.found(after)
    if cause is not None:
        return f"it is this: {name_of(plan, cause)}"
    return f"likeliest then: {_likeliest(plan, after)}"


def _likeliest(plan: Plan, state: State) -> str:
    shares = list(plan.shares(state).values())
    most = max(shares)
    return f"{name_of(plan, shares.index(most))} ({out_of_a_hundred(most)})"


def _nothing_left(plan: Plan, state: State) -> str:
    causes = open_causes(plan, state)
    if not causes:
        return "None of these. Stop and ask."
    names = "; ".join(name_of(plan, cause) for cause in causes)
    if state.shown:
        return f"No check of the list tells these apart: {names}."
    return f"No check is left, and these are not ruled out: {names}. Stop and ask."
