"""Ten vehicles with a hidden cause for every fault of the demo manual: three orders compared.

    python benchmarks/fault_order.py

Writes benchmarks/results/fault_order.json and .md. The vehicles take turns with the fault's unit
families. The hidden causes are spread evenly over the likelihoods of the page, so they are no
matter of luck; what a check shows where it can show both is drawn with a fixed seed. Beside them
stands what each order comes to over all vehicles of the families, reckoned exactly.
"""

from __future__ import annotations

import json
import random
import sys
from collections.abc import Callable
from pathlib import Path
from time import process_time
from typing import Any

import table
from underhoist_calculators.fault_finding.board import Board, State, bits
from underhoist_calculators.fault_finding.plan import Plan
from underhoist_calculators.fault_finding.policies import (
    Effort,
    Policy,
    effort,
    in_order,
    random_effort,
)

from underhoist.check import files_of
from underhoist.checker import Checker
from underhoist.complaints import complaint_of
from underhoist.fault_families import families_of
from underhoist.model import Fault, Manual

ROOT = Path(__file__).resolve().parents[1]
RESULTS = ROOT / "benchmarks" / "results"

VEHICLES = 10
SHUFFLES = 20
"""So many random orders each vehicle is played with; their mean is shown."""
MOST = 30_000
"""States that the search may look into, as when a page is made."""


def main() -> None:
    """Play, write and show."""
    manual = read(ROOT / "procedures")
    played = [fault_played(manual, each) for each in manual.faults.values()]
    RESULTS.mkdir(exist_ok=True)
    text = json.dumps(played, indent=1, ensure_ascii=False) + "\n"
    (RESULTS / "fault_order.json").write_text(text, encoding="utf-8")
    page = f"# Ten vehicles a fault: the computed order against two others\n\n{report(played)}"
    (RESULTS / "fault_order.md").write_text(page, encoding="utf-8")
    print(report(played))
    sys.exit(not table.enter("fault_order", rows(played)))


def rows(all_played: list[dict[str, Any]]) -> list[table.Row]:
    """Hold the computed orders against the written ones and against chance."""
    ours = mean(all_played, "computed", "minutes")
    return [
        table.Row(
            what=f"minutes to the cause, {len(all_played)} faults of ten vehicles",
            ours=round(ours, 1),
            unit="min",
            reference=round(mean(all_played, order, "minutes"), 1),
            against=against,
            budget=budget,
            held=factor * ours <= mean(all_played, order, "minutes"),
        )
        for order, against, budget, factor in (
            ("written", "as written on the page", "at most as written", 1.0),
            ("random", "random order", "at most 70 %", 1 / 0.7),
        )
    ]


def read(folder: Path) -> Manual:
    """Read the manual in a folder."""
    paths = {name: folder / name for name in files_of(folder).names}
    pages = {name: path.read_bytes() for name, path in paths.items() if path.suffix == ".md"}
    return Checker(pages, others=paths.keys() - pages.keys()).checked().manual


def plans_of(manual: Manual, fault: Fault) -> list[Plan]:
    """Give one plan for each family of the fault."""
    complaints = [complaint_of(manual, fault, family) for family in families_of(manual, fault)]
    return [Plan(each, MOST) for each in complaints if each]


def fault_played(manual: Manual, fault: Fault) -> dict[str, Any]:
    """Play ten vehicles, and say what each order comes to over all vehicles."""
    plans = plans_of(manual, fault)
    began = process_time()
    exact = all(plan.is_exact(plan.board.start()) for plan in plans)
    seconds = process_time() - began
    return {
        "fault": fault.id,
        "checks": max(len(plan.complaint.checks) for plan in plans),
        "exact": exact,
        "seconds": round(seconds / len(plans), 4),
        "expected": {
            "computed": expected([effort(plan.board, plan.next) for plan in plans]),
            "written": expected([effort(plan.board, in_order(plan.board)) for plan in plans]),
            "random": expected([random_effort(plan.board) for plan in plans]),
        },
        "vehicles": [vehicle(plans[each % len(plans)], each) for each in range(VEHICLES)],
    }


def expected(efforts: list[Effort]) -> dict[str, float]:
    """Give the mean over the families."""
    return {
        "minutes": sum(each.minutes for each in efforts) / len(efforts),
        "checks": sum(each.checks for each in efforts) / len(efforts),
    }


def hidden_cause(board: Board, number: int) -> int:
    """Give the cause at the middle of the vehicle's tenth of the likelihoods."""
    at, cause = (number + 0.5) / VEHICLES, 0
    while at > board.prior[cause] + 1e-12:
        at -= board.prior[cause]
        cause += 1
    return cause


def vehicle(plan: Plan, number: int) -> dict[str, Any]:
    """Play one vehicle with each order; its checks show the same in each."""
    board = plan.board
    hidden = hidden_cause(board, number)
    shows = shown_by(board, hidden, number)
    ids = [*(each.id for each in board.complaint.listed), "none-of-these"]
    draws = (random.Random(f"{number} {each}") for each in range(SHUFFLES))  # noqa: S311
    by_chance = [play(board, at_random(board, draw), shows) for draw in draws]
    return {
        "hidden": ids[hidden],
        "computed": played(board, play(board, plan.next, shows), hidden),
        "written": played(board, play(board, in_order(board), shows), hidden),
        "random": {
            "minutes": round(sum(minutes for minutes, _, _ in by_chance) / SHUFFLES, 1),
            "checks": round(sum(checks for _, checks, _ in by_chance) / SHUFFLES, 2),
        },
    }


def shown_by(board: Board, hidden: int, number: int) -> list[bool]:
    """Draw which checks are bad on this vehicle."""
    draw = random.Random(f"vehicle {number}")  # noqa: S311
    return [draw.random() < row[hidden] for row in board.bad]


def play(
    board: Board, choose: Callable[[State], int | None], shows: list[bool]
) -> tuple[float, int, State]:
    """Make checks until nothing more is told: minutes, checks and where it ended."""
    state, minutes, checks = board.start(), 0.0, 0
    while (check := choose(state)) is not None:
        minutes += board.cost(state, check)
        checks += 1
        state = board.after(state, check, "bad" if shows[check] else "good")
    return minutes, checks, state


def played(board: Board, end: tuple[float, int, State], hidden: int) -> dict[str, Any]:
    """Say what a vehicle took, and whether the cause is among what is left."""
    minutes, checks, state = end
    found = board.found(state)
    left = [found] if found is not None else list(bits(state.live))
    return {
        "minutes": minutes,
        "checks": checks,
        "left": len(left),
        "right": hidden in left,
        "named": found == hidden,
    }


def at_random(board: Board, draw: random.Random) -> Policy:
    """Take the checks in a shuffled order, those that tell nothing more passed over."""
    ids = [each.id for each in board.complaint.checks]
    draw.shuffle(ids)
    return in_order(board, ids)


def report(all_played: list[dict[str, Any]]) -> str:
    """Write the sums and one row a fault."""
    orders = ("computed", "written", "random")
    means = {each: mean(all_played, each, "minutes") for each in orders}
    checks = {each: mean(all_played, each, "checks") for each in orders}
    ends = [each["computed"] for fault in all_played for each in fault["vehicles"]]
    right, named = (sum(each[what] for each in ends) for what in ("right", "named"))
    count = len(ends)
    lines = [
        f"{len(all_played)} faults, {count} vehicles. Mean minutes to the cause: "
        + ", ".join(f"{each} {means[each]:.0f}" for each in orders)
        + "; mean checks: "
        + ", ".join(f"{each} {checks[each]:.1f}" for each in orders)
        + f". The computed order names the hidden cause in {named} of {count}; in {right} it is "
        "at least among what is left open, none of these included.",
        "",
        "Minutes (checks): first of the ten vehicles, then over all vehicles, exactly.",
        "",
        "| fault | checks | ten: computed | ten: written | ten: random | all: computed | "
        "all: written | all: random | order found in |",
        "| --- | --- | --- | --- | --- | --- | --- | --- | --- |",
        *(row(fault) for fault in all_played),
    ]
    return "\n".join(lines) + "\n"


def mean(all_played: list[dict[str, Any]], order: str, what: str) -> float:
    """Mean over all vehicles."""
    each = [vehicle[order][what] for fault in all_played for vehicle in fault["vehicles"]]
    return sum(each) / len(each)


def row(fault: dict[str, Any]) -> str:
    """One fault."""
    cells = [fault["fault"], str(fault["checks"])]
    for order in ("computed", "written", "random"):
        minutes, checks = (mean([fault], order, what) for what in ("minutes", "checks"))
        cells.append(f"{minutes:.1f} ({checks:.1f})")
    for order in ("computed", "written", "random"):
        over_all = fault["expected"][order]
        cells.append(f"{over_all['minutes']:.1f} ({over_all['checks']:.1f})")
    exact = "" if fault["exact"] else ", not exact"
    cells.append(f"{1000 * fault['seconds']:.0f} ms{exact}")
    return f"| {' | '.join(cells)} |"


if __name__ == "__main__":
    main()
