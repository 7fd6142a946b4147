"""The one door to fault finding: plain data in, plain data and HTML out.

The browser's worker and the job card come through here. All that is remembered is the plan of the
last complaint, so that the answer after a result is quick.
"""

import json
from collections.abc import Sequence
from functools import lru_cache
from typing import Any, cast

from underhoist_calculators.fault_finding import html
from underhoist_calculators.fault_finding.board import Result, State, bits
from underhoist_calculators.fault_finding.complaint import ComplaintError
from underhoist_calculators.fault_finding.plain import from_plain
from underhoist_calculators.fault_finding.plan import Plan
from underhoist_calculators.fault_finding.search import STATES
from underhoist_calculators.fault_finding.words import (
    certainty,
    change,
    instead,
    open_causes,
    out_of_a_hundred,
    outlook,
    reason,
)

type Json = dict[str, Any]

RESULTS = ("good", "bad", "not done")


def run(complaint: object, results: object = (), most: int = STATES) -> Json:
    """Say where the search stands after these results; raises nothing for bad input.

    `complaint` is what `plain.as_plain` gives, `results` pairs of a check's id and `good`, `bad` or
    `not done`, in any order. Gives `ok` and `wrong`; `causes` with their shares, the likeliest
    first; `next` with its reason, or None; `others` with what each costs instead, None where that
    was not compared; `found` and `open` (ids of causes); `ask`; expected `minutes`, `mend_minutes`,
    `exact`, `gap_minutes`, and `certainty` where the order may not be the quickest; `outlook`;
    `html`.
    """
    try:
        plan = _plan(json.dumps(complaint, sort_keys=True), most)
        state = plan.state(_results(results))
    except ComplaintError as error:
        wrong = f"Nothing can be worked out: {error}."
        return {"ok": False, "wrong": wrong, "html": html.wrong(wrong)}
    known = told(plan, state)
    return known | {"html": html.standing(known)}


@lru_cache(maxsize=1)
def _plan(complaint: str, most: int) -> Plan:
    return Plan(from_plain(json.loads(complaint)), most)


def _results(results: object) -> list[tuple[str, Result]]:
    read: list[tuple[str, Result]] = []
    if not isinstance(results, Sequence) or isinstance(results, str):
        raise ComplaintError("the results are not a list")
    for each in cast("Sequence[object]", results):
        pair = cast("Sequence[object]", each) if isinstance(each, list | tuple) else ()
        if len(pair) != 2 or not isinstance(pair[0], str) or pair[1] not in RESULTS:
            raise ComplaintError(f"{each!r} is not a check with good, bad or not done")
        read.append((pair[0], pair[1]))
    return read


def told(plan: Plan, state: State) -> Json:
    """Say where a plan stands in a state, as `run` does, without `html`."""
    listed = plan.complaint.listed
    board = plan.board
    best = plan.next(state)
    found = board.found(state)
    others = [check for check in bits(board.useful(state)) if check != best]
    return {
        "ok": True,
        "wrong": "",
        "causes": _causes(plan, state),
        "next": _check(plan, state, best) if best is not None else None,
        "others": [_other(plan, state, check) for check in others],
        "found": listed[found].id if found is not None else None,
        "open": [listed[cause].id for cause in open_causes(plan, state)],
        "ask": best is None and found is None,
        "minutes": plan.minutes(state),
        "mend_minutes": plan.mend_minutes(state),
        "exact": plan.is_exact(state),
        "gap_minutes": plan.gap(state),
        "certainty": certainty(plan, state),
        "outlook": outlook(plan, state),
    }


def _causes(plan: Plan, state: State) -> list[Json]:
    names = {each.id: each.name for each in plan.complaint.listed}
    causes = [
        {
            "id": id_,
            "name": names.get(id_, "None of these"),
            "share": share,
            "words": out_of_a_hundred(share),
        }
        for id_, share in plan.shares(state).items()
        if share > 0
    ]
    return sorted(causes, key=lambda each: -cast("float", each["share"]))


def _check(plan: Plan, state: State, check: int) -> Json:
    """Give a check with what it takes now and why it is worth it."""
    own = plan.complaint.checks[check]
    return {
        "id": own.id,
        "name": own.name,
        "access": own.access,
        "minutes": own.minutes,
        "way_minutes": plan.board.cost(state, check) - own.minutes,
        "reason": reason(plan, state, check),
        "good": change(plan, state, check, "good"),
        "bad": change(plan, state, check, "bad"),
    }


def _other(plan: Plan, state: State, check: int) -> Json:
    minutes = plan.minutes_with(state, check)
    more = None if minutes is None else max(0.0, minutes - plan.minutes(state))
    told = {"more_minutes": more, "instead": instead(plan, state, check)}
    return _check(plan, state, check) | told
