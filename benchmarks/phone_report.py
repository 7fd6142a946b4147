"""The table of benchmarks/phone_speed.py, as Markdown and as JSON."""

from __future__ import annotations

import json
from datetime import UTC, datetime
from pathlib import Path

Found = dict[str, dict[str, dict[str, float]]]

ROWS = {
    "first_answer": "opening the page to the first live answer",
    "longest_task_opening": "longest task of the page's thread until then",
    "recalculation_p50": "recalculation after a keystroke, p50",
    "recalculation_p95": "recalculation after a keystroke, p95",
    "longest_task_typing": "longest task of the page's thread while typing",
}

BUDGETS = {"first_answer": 1000, "recalculation_p95": 50, "longest_task_typing": 50}
"""Most milliseconds at 4x."""

FASTER = 5

TEXT = """# How soon a calculator answers on a phone

Made by `python benchmarks/phone_speed.py {runs}` on {date}, medians of {runs} runs.
The machine's load was {load:.1f}: the ratios within the run mean more than the figures.

Both pages convert a torque of 120 lbf·in. Both are stored and the server is gone; each run starts
the browser anew. "Stock" is Pyodide and pint as their packages come, on the page's own thread.
At {slow}x every process of the browser is stopped and continued in turn: the browser's own protocol
slows a page's main thread only and refuses it for workers. A fixed sum in a worker took
{real:.1f} times as long. Tasks under 50 ms are not reported by browsers and stand as 0.

| milliseconds | ours, 1x | stock, 1x | ours, {slow}x | stock, {slow}x |
|---|---:|---:|---:|---:|
{rows}

Opening is {fast_ratio:.1f} times faster than stock at 1x, {slow_ratio:.1f} times at {slow}x.
Budgets at 4x: first answer 1,000 ms and 5 times faster than stock; recalculation p95 50 ms; no task
over 50 ms. {verdict}
"""


def write_report(folder: Path, found: Found, *, runs: int, load: float) -> None:
    """Write phone_speed.md and phone_speed.json; figures in ms."""
    folder.mkdir(exist_ok=True)
    fast, slow = found
    date = datetime.now(UTC).date().isoformat()
    cells = {
        key: [found[times][page][key] for times in found for page in ("ours", "stock")]
        for key in ROWS
    }
    rows = [
        " | ".join([f"| {words}", *(f"{value:,.0f}" for value in cells[key])]) + " |"
        for key, words in ROWS.items()
    ]
    text = TEXT.format(
        runs=runs, date=date, load=load, slow=slow, rows="\n".join(rows),
        real=_ratio(found[slow]["ours"], found[fast]["ours"], "worker_sum"),
        fast_ratio=_ratio(found[fast]["stock"], found[fast]["ours"], "first_answer"),
        slow_ratio=_ratio(found[slow]["stock"], found[slow]["ours"], "first_answer"),
        verdict=_verdict(found[slow]["ours"], found[slow]["stock"]),
    )  # fmt: skip
    (folder / "phone_speed.md").write_text(text, encoding="utf-8")
    data = {"date": date, "runs": runs, "load": round(load, 1), "milliseconds": found}
    (folder / "phone_speed.json").write_text(json.dumps(data, indent=1) + "\n", encoding="utf-8")


def _verdict(ours: dict[str, float], stock: dict[str, float]) -> str:
    """Say which budgets this run broke."""
    broken = [ROWS[key] for key, most in BUDGETS.items() if ours[key] > most]
    if _ratio(stock, ours, "first_answer") < FASTER:
        broken.append(f"{FASTER} times faster than stock")
    return f"Over budget in this run: {'; '.join(broken)}." if broken else "This run kept them."


def _ratio(one: dict[str, float], other: dict[str, float], key: str) -> float:
    return one[key] / other[key]
