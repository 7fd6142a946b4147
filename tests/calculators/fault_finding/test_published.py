"""Published orders, by the rule and by the search; the sources stand beside the values."""

import json
from pathlib import Path

import pytest
from underhoist_calculators.fault_finding.board import Board
from underhoist_calculators.fault_finding.complaint import Cause, Check, Complaint
from underhoist_calculators.fault_finding.plan import Plan
from underhoist_calculators.fault_finding.policies import effort, in_order
from underhoist_calculators.fault_finding.rule import by_likelihood_to_cost, expected_minutes

FILE = Path(__file__).parents[2] / "published" / "fault_order.json"
PUBLISHED = json.loads(FILE.read_text("utf-8"))


def classic(shares, minutes, detection=None, mend=None):
    """One check for each cause, no ways: what Kadane and Simon order."""
    seen, mends = detection or [1.0] * len(shares), mend or [0.0] * len(shares)
    causes = tuple(
        Cause(id=f"c{n}", name=f"cause {n}", share=share, mend_minutes=mends[n - 1])
        for n, share in enumerate(shares, 1)
    )
    checks = tuple(
        Check(id=f"k{n}", name=f"check {n}", minutes=own, access="", bad={f"c{n}": seen[n - 1]})
        for n, own in enumerate(minutes, 1)
    )
    return Complaint(causes=causes, checks=checks)


def named(cases):
    return pytest.mark.parametrize("case", cases, ids=lambda case: case["id"])


@named(PUBLISHED["orders"])
def test_expected_minutes_of_an_order(case):
    order = [number - 1 for number in case["order"]]
    got = expected_minutes(order, case["shares"], case["minutes"], case.get("mend"))
    assert got == pytest.approx(case["expected"], abs=1e-9)


@named(PUBLISHED["orders"])
def test_the_search_reckons_an_order_alike(case):
    complaint = classic(case["shares"], case["minutes"], mend=case.get("mend"))
    board = Board(complaint)
    got = effort(board, in_order(board, [f"k{number}" for number in case["order"]])).minutes
    mend = sum(each.share * each.mend_minutes for each in complaint.causes)
    assert got + mend == pytest.approx(case["expected"], abs=1e-9)


@named(PUBLISHED["best"])
def test_best_order_by_the_rule(case):
    order = by_likelihood_to_cost(case["shares"], case["minutes"], case.get("detection"))
    assert [number + 1 for number in order] == case["order"]


@named(PUBLISHED["best"])
def test_best_order_by_the_search(case):
    """The search leaves out a check that can tell nothing: the impossible cause's."""
    plan = Plan(classic(case["shares"], case["minutes"], case.get("detection"), case.get("mend")))
    state, order = plan.board.start(), []
    while (check := plan.next(state)) is not None:
        order.append(check + 1)
        state = plan.board.after(state, check, "good")
    possible = [number for number in case["order"] if case["shares"][number - 1] > 0]
    assert order == possible


def test_scaled_shares_leave_the_order():
    case = PUBLISHED["scaled"]
    order = by_likelihood_to_cost(case["shares"], case["minutes"])
    assert [number + 1 for number in order] == case["order"]
