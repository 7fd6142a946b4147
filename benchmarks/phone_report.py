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
"4x page" slows the page's main thread by the browser's own protocol, as is usual in such figures; a
worker is not slowed by it. "4x all" stops and continues every process of the browser in turn: a
fixed sum in a worker then took {real:.1f} times as long. Tasks under 50 ms are not reported by
browsers and stand as 0.

| milliseconds | ours 1x | stock 1x | ours 4x page | stock 4x page | ours 4x all | stock 4x all |
|---|---:|---:|---:|---:|---:|---:|
{rows}

Opening is {none:.1f} times faster than stock at 1x, {page:.1f} times at 4x page, {all:.1f} times at
4x all. Budgets at 4x: first answer 1,000 ms and 5 times faster than stock; recalculation p95 50 ms;
no task over 50 ms.

- 4x page: {verdict_page}
- 4x all: {verdict_all}
"""


def write_report(folder: Path, found: Found, *, runs: int, load: float) -> None:
    """Write phone_speed.md and phone_speed.json; figures in ms."""
    folder.mkdir(exist_ok=True)
    date = datetime.now(UTC).date().isoformat()
    cells = {
        key: [found[brake][page][key] for brake in found for page in ("ours", "stock")]
        for key in ROWS
    }
    rows = [
        " | ".join([f"| {words}", *(f"{value:,.0f}" for value in cells[key])]) + " |"
        for key, words in ROWS.items()
    ]
    faster = {
        brake: _ratio(pages["stock"], pages["ours"], "first_answer")
        for brake, pages in found.items()
    }
    text = TEXT.format(
        runs=runs, date=date, load=load, rows="\n".join(rows), **faster,
        real=_ratio(found["all"]["ours"], found["none"]["ours"], "worker_sum"),
        verdict_page=_verdict(**found["page"]), verdict_all=_verdict(**found["all"]),
    )  # fmt: skip
    (folder / "phone_speed.md").write_text(text, encoding="utf-8")
    data = {"date": date, "runs": runs, "load": round(load, 1), "milliseconds": found}
    (folder / "phone_speed.json").write_text(json.dumps(data, indent=1) + "\n", encoding="utf-8")


def _verdict(ours: dict[str, float], stock: dict[str, float]) -> str:
    """Say which budgets this run broke."""
    broken = [ROWS[key] for key, most in BUDGETS.items() if ours[key] > most]
    if _ratio(stock, ours, "first_answer") < FASTER:
        broken.append(f"{FASTER} times faster than stock")
    return f"over budget in {'; '.join(broken)}." if broken else "kept."


def _ratio(one: dict[str, float], other: dict[str, float], key: str) -> float:
    return one[key] / other[key]
