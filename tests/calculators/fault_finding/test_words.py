"""What the plan says, word for word, and the table that is followed on paper."""

import pytest
from attrs import evolve
from underhoist_calculators.fault_finding.complaint import Check
from underhoist_calculators.fault_finding.plan import Plan
from underhoist_calculators.fault_finding.table import steps
from underhoist_calculators.fault_finding.words import (
    change,
    instead,
    minutes_words,
    out_of_a_hundred,
    outlook,
    reason,
)


@pytest.fixture
def plan(late):
    return Plan(late)


def test_reason_of_the_first(plan):
    start = plan.board.start()
    assert plan.next(start) == 1
    assert reason(plan, start, 1) == (
        "10 minutes and 10 to get there (hoist, of use to one more check), and it can rule out 2 "
        "causes at once, the likeliest among them (now about 80 in 100)."
    )


def test_reason_where_the_way_is_paid(plan):
    state = plan.state([("gauge", "bad")])
    assert reason(plan, state, 2) == (
        "20 minutes, nothing more to open, and it settles one cause (now about 37 in 100)."
    )


def test_reason_where_results_are_not_certain(late):
    soft = Check(id="ear", name="Listen", minutes=1, access="seat", bad={"hose": 0.7})
    plan = Plan(evolve(late, checks=(*late.checks, soft)))
    assert reason(plan, plan.board.start(), 3) == (
        "1 minute, nothing to open, and it speaks for or against the likeliest cause (now about "
        "50 in 100)."
    )


def test_what_it_could_change(plan):
    state, start = plan.state([("gauge", "bad")]), plan.board.start()
    assert change(plan, state, 2, "good") == "it is this: Hose split"
    assert change(plan, state, 2, "bad") == "it is this: Diaphragm leaking"
    assert change(plan, start, 1, "good") == ("likeliest then: Governor sticking (about 50 in 100)")
    assert change(plan, start, 1, "bad") == "likeliest then: Hose split (about 62 in 100)"


def test_what_another_costs(plan):
    """By hand: gauge first 20 + 0.8·20 + 0.2·35 = 43; drive first 35 + 0.9·30 + 0.6·10 = 68."""
    start = plan.board.start()
    assert plan.minutes(start) == pytest.approx(43)
    assert plan.minutes_with(start, 0) == pytest.approx(68)
    assert instead(plan, start, 0) == "25 minutes more on average."
    assert instead(plan, start, 1) == "As quick on average."


def test_minutes_to_mend(plan):
    assert plan.mend_minutes(plan.board.start()) == pytest.approx(0.5 * 10 + 0.3 * 20)


@pytest.mark.parametrize(
    ("results", "words"),
    [
        ([], "Likeliest now: Hose split (about 50 in 100)."),
        ([("gauge", "bad"), ("pump", "good")], "It is this: Hose split."),
        ([("gauge", "good"), ("drive", "good")], "None of these. Stop and ask."),
        (
            [("gauge", "bad"), ("pump", "not done")],
            "No check of the list tells these apart: Hose split; Diaphragm leaking.",
        ),
        (
            [("gauge", "good"), ("drive", "not done")],
            "No check is left, and these are not ruled out: Governor sticking. Stop and ask.",
        ),
        (
            [("gauge", "bad"), ("drive", "bad")],
            "These results fit no cause of the list. Read the last one again, or stop and ask.",
        ),
    ],
)
def test_outlook(plan, results, words):
    assert outlook(plan, plan.state(results)) == words


def test_none_of_these_is_likeliest(late):
    rarer = evolve(late.causes[2], share=0.05)
    causes = (*late.causes[:2], rarer, evolve(late.causes[3], share=0.15))
    plan = Plan(evolve(late, causes=causes))
    assert outlook(plan, plan.state([("gauge", "good")])) == (
        "Likeliest now: None of these (about 75 in 100). It is time to ask somebody before more is "
        "opened."
    )


@pytest.mark.parametrize(
    ("share", "words"),
    [(0.004, "less than 1 in 100"), (0.996, "more than 99 in 100"), (1, "100 in 100")],
)
def test_nothing_is_certain_by_rounding(share, words):
    assert out_of_a_hundred(share) == words


def test_minutes_in_words():
    assert [minutes_words(each) for each in (0, 0.3, 1, 1440)] == [
        "no time",
        "less than a minute",
        "1 minute",
        "1,440 minutes",
    ]


def test_half_a_minute_is_rounded_alike_in_whatever_order_it_was_added_up():
    assert 4.5 - 1e-15 < 4.5
    assert minutes_words(4.5 - 1e-15) == minutes_words(4.5) == "5 minutes"
    assert minutes_words(4.4999) == "4 minutes"


def test_the_table_is_followed_to_every_end(plan):
    table = {step.number: step for step in steps(plan)}
    assert [table[number].check for number in (1, 2, 3)] == [1, 0, 2]
    assert (table[1].good.step, table[1].bad.step) == (2, 3)
    assert (table[2].good.causes, table[2].bad.causes) == ((), (2,))
    assert (table[3].good.causes, table[3].bad.causes) == ((0,), (1,))
    assert (table[1].way_minutes, table[3].way_minutes) == (10, 0)


def test_a_table_that_is_full_names_the_checks_to_go_on_with(plan):
    (only,) = steps(plan, most=1)
    assert only.good.step is None
    assert only.good.remaining == (0,)
    assert only.bad.remaining == (2,)
