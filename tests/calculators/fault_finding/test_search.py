"""The search against the plainest reckoning, the rule where it holds, and where it does not."""

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from underhoist_calculators.fault_finding.board import Board
from underhoist_calculators.fault_finding.bounds import Bounds
from underhoist_calculators.fault_finding.complaint import NONE, Cause, Check, Complaint, Level
from underhoist_calculators.fault_finding.plan import Plan
from underhoist_calculators.fault_finding.policies import (
    effort,
    effort_at_most,
    in_order,
    likeliest_per_minute,
    random_effort,
)
from underhoist_calculators.fault_finding.rule import by_likelihood_to_cost, expected_minutes

LEVELS = {
    "seat": Level(name="seat", minutes=0),
    "hoist": Level(name="hoist", minutes=15),
    "pan": Level(name="pan", minutes=50, through="hoist"),
    "road": Level(name="road", minutes=5),
}


@st.composite
def complaints(draw, most_checks=5, soft=True):
    """Any small complaint: shared causes, shared ways, uncertain results, some share for none."""
    weights = draw(st.lists(st.integers(1, 20), min_size=2, max_size=5))
    none = draw(st.integers(0, 5))
    total = sum(weights) + none
    ids = [f"c{n}" for n in range(len(weights))]
    shares = st.sampled_from([0.05, 0.2, 0.5, 0.9, 1.0] if soft else [1.0])
    bad = st.dictionaries(st.sampled_from([*ids, NONE] if soft else ids), shares, max_size=3)
    tables = draw(st.lists(bad, min_size=1, max_size=most_checks))
    checks = tuple(
        Check(
            id=f"k{n}",
            name=f"check {n}",
            minutes=draw(st.integers(1, 40)),
            access=draw(st.sampled_from(sorted(LEVELS))),
            bad=table,
        )
        for n, table in enumerate(tables)
    )
    causes = tuple(
        Cause(id=id_, name=id_, share=weight / total)
        for id_, weight in zip(ids, weights, strict=True)
    )
    sure = draw(st.sampled_from([0.8, 0.95, 1.0]))
    return Complaint(causes=causes, checks=checks, levels=LEVELS, confidence=sure)


def brute_force(complaint):
    """Fewest expected minutes, by trying every check in every situation; nothing is remembered."""
    ids = [each.id for each in complaint.listed] + [NONE]
    start = {each.id: each.share for each in complaint.listed} | {NONE: complaint.none_share}

    def ended(chances, shown, left):
        total = sum(chances.values())
        live = {id_ for id_ in ids if chances[id_] > 1e-15}
        if not live - {NONE}:
            return True
        surest = max(chances[id_] for id_ in ids if id_ != NONE)
        if shown and (len(live) == 1 or surest >= complaint.confidence * total * (1 - 1e-12)):
            return True
        return not any(tells(each, live, shown) for each in left)

    def tells(check, live, shown):
        answers = {check.bad.get(id_, 0.0) for id_ in live}
        shows = any(check.bad.get(id_, 0.0) > 0 for id_ in live - {NONE})
        return len(answers) > 1 or (not shown and shows)

    def fewest(chances, shown, left, paid):
        if ended(chances, shown, left):
            return 0.0
        live = {id_ for id_ in ids if chances[id_] > 1e-15}
        return min(
            go_on(chances, shown, left, paid, check) for check in left if tells(check, live, shown)
        )

    def go_on(chances, shown, left, paid, check):
        way = complaint.way(check.access)
        fee = sum(level.minutes for level in way if level.name not in paid)
        spent = sum(chances.values()) * (check.minutes + fee)
        rest = [each for each in left if each is not check]
        now = paid | {level.name for level in way}
        bad = {id_: chances[id_] * check.bad.get(id_, 0.0) for id_ in ids}
        good = {id_: chances[id_] - bad[id_] for id_ in ids}
        for after, is_shown in ((good, shown), (bad, True)):
            if sum(after.values()) > 1e-15:
                spent += fewest(after, is_shown, rest, now)
        return spent

    return fewest(start, False, list(complaint.checks), frozenset())


def whole(complaint):
    plan = Plan(complaint)
    return plan.minutes(plan.board.start())


def test_shares_that_make_the_whole_leave_none_over_by_rounding():
    shares = (0.022222222222222223, 0.022222222222222223, 0.28888888888888886,
              0.28888888888888886, 0.37777777777777777)  # fmt: skip
    causes = tuple(Cause(id=f"c{n}", name="a", share=share) for n, share in enumerate(shares))
    check = Check(id="k", name="k", minutes=1, access="seat", bad={NONE: 0.05})
    assert Complaint(causes=causes, checks=(check,), levels=LEVELS).none_share == 0.0


@settings(deadline=None, max_examples=150)
@given(complaints())
def test_search_is_as_good_as_trying_everything(complaint):
    assert whole(complaint) == pytest.approx(brute_force(complaint), abs=1e-6)


@settings(deadline=None, max_examples=100)
@given(complaints(most_checks=6, soft=False))
def test_search_is_as_good_as_trying_everything_with_certain_results(complaint):
    assert whole(complaint) == pytest.approx(brute_force(complaint), abs=1e-6)


@settings(deadline=None, max_examples=100)
@given(complaints())
def test_following_the_plan_takes_the_minutes_it_promises(complaint):
    plan = Plan(complaint)
    assert effort(plan.board, plan.next).minutes == pytest.approx(whole(complaint), abs=1e-6)


@settings(deadline=None, max_examples=100)
@given(complaints())
def test_no_other_way_is_quicker_and_the_bound_is_below(complaint):
    plan = Plan(complaint)
    board, best = plan.board, whole(complaint)
    start = board.start()
    assert Bounds(board).least(start, board.useful(start)) <= best + 1e-6
    assert best <= effort(board, in_order(board)).minutes + 1e-6
    assert best <= effort(board, likeliest_per_minute(board)).minutes + 1e-6
    assert best <= random_effort(board).minutes + 1e-6


@settings(deadline=None, max_examples=100)
@given(complaints())
def test_without_the_search_the_gap_holds_the_best(complaint):
    hurried = Plan(complaint, most=0)
    start = hurried.board.start()
    best = brute_force(complaint)
    assert hurried.minutes(start) - hurried.gap(start) - 1e-6 <= best
    assert best <= hurried.minutes(start) + 1e-6


@settings(deadline=None, max_examples=100)
@given(complaints())
def test_few_looks_never_tell_too_few_minutes(complaint):
    board = Board(complaint)
    index, start = likeliest_per_minute(board), board.start()
    exact = effort(board, index).minutes
    few = [effort_at_most(board, index, start, looks) for looks in (1, 3, 10_000)]
    assert all(more <= fewer + 1e-6 for fewer, more in pairwise(few))
    assert few[-1] == pytest.approx(exact)


@settings(deadline=None, max_examples=100)
@given(complaints())
def test_choosing_another_check_never_saves_minutes(complaint):
    plan = Plan(complaint)
    start = plan.board.start()
    for check in range(len(complaint.checks)):
        if plan.board.useful(start) >> check & 1:
            assert plan.minutes_with(start, check) >= plan.minutes(start) - 1e-6


def test_independent_checks_go_by_the_rule():
    shares, minutes = [0.4, 0.3, 0.2, 0.1], [40, 10, 5, 20]
    order = by_likelihood_to_cost(shares, minutes)
    checks = {f"k{n}": (own, "seat", [f"c{n}"]) for n, own in enumerate(minutes)}
    best = whole(complaint_of(checks, {f"c{n}": share for n, share in enumerate(shares)}))
    assert best == pytest.approx(expected_minutes(order, shares, minutes))


def complaint_of(checks, shares):
    causes = tuple(Cause(id=id_, name=id_, share=share) for id_, share in shares.items())
    made = tuple(
        Check(id=id_, name=id_, minutes=own, access=access, bad=dict.fromkeys(finds, 1.0))
        for id_, (own, access, finds) in checks.items()
    )
    return Complaint(causes=causes, checks=made, levels=LEVELS)


def test_rule_fails_where_a_way_is_shared():
    """Own case, by hand: alone each hoist check is dearer a point than the one on the ground.

    On the ground first: 20 + 0.7·(15 + 5) + 0.35·5 = 35.75. On the hoist first: 20 + 0.65·5 +
    0.3·20 = 29.25. The rule with each check's full price (20 for all) would begin with a or b
    only by their shares, 35 and 35 against 30; with 36 on the ground it begins there and loses.
    """
    complaint = complaint_of(
        {"ground": (20, "seat", ["x"]), "a": (5, "hoist", ["y"]), "b": (5, "hoist", ["z"])},
        {"x": 0.36, "y": 0.32, "z": 0.32},
    )
    rule = by_likelihood_to_cost([0.36, 0.32, 0.32], [20, 20, 20])
    assert rule[0] == 0
    board = Board(complaint)
    by_rule = effort(board, in_order(board, ["ground", "a", "b"])).minutes
    assert by_rule == pytest.approx(20 + 0.64 * 20 + 0.32 * 5)
    assert whole(complaint) == pytest.approx(20 + 0.68 * 5 + 0.36 * 20)
    plan = Plan(complaint)
    assert complaint.checks[plan.next(board.start())].id == "a"


def test_rule_fails_where_one_check_halves_the_field():
    """Own case, by hand: a group check that names nobody is worth its minutes."""
    complaint = complaint_of(
        {
            "group": (4, "seat", ["a", "b"]),
            "a": (30, "seat", ["a"]),
            "b": (30, "seat", ["b"]),
            "c": (30, "seat", ["c"]),
        },
        {"a": 0.3, "b": 0.3, "c": 0.4},
    )
    plan = Plan(complaint)
    assert complaint.checks[plan.next(plan.board.start())].id == "group"
    assert plan.minutes(plan.board.start()) == pytest.approx(4 + 0.4 * 30 + 0.6 * 30)
    alone = by_likelihood_to_cost([0.4, 0.3, 0.3], [30, 30, 30])
    assert expected_minutes(alone, [0.4, 0.3, 0.3], [30] * 3) == pytest.approx(57)
