"""The one table of all benchmarks: every budget with ours, the reference of the same run, and held.

A benchmark hands its rows to `enter`; the rows of the others stay as they were measured last.
"""

import json
import os
import time
from collections.abc import Iterable, Mapping
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from attrs import asdict, frozen

RESULTS = Path(__file__).parent / "results"
WORDS = {True: "yes", False: "**no**", None: ""}


@frozen(kw_only=True)
class Row:
    """One line: what was measured, and the budget it has to keep."""

    what: str
    ours: float
    unit: str
    """"s", "MB", "%" and the like; "" for a count or a ratio."""
    reference: float | None = None
    """The same, of what it is measured against, in the same run."""
    against: str = ""
    """What the reference is."""
    budget: str = ""
    """The budget in words; "" where the figure is only told."""
    held: bool | None = None
    """Whether the budget is kept; None where there is none."""

    @property
    def ratio(self) -> float | None:
        """Ours to the reference."""
        return self.ours / self.reference if self.reference else None


def enter(name: str, rows: Iterable[Row], folder: Path = RESULTS) -> bool:
    """Put a benchmark's rows into the table and write it; whether every budget of it is held."""
    folder.mkdir(exist_ok=True)
    place = folder / "table.json"
    kept: dict[str, Any] = json.loads(place.read_text(encoding="utf-8")) if place.exists() else {}
    found = list(rows)
    kept[name] = {
        "date": f"{datetime.now(UTC).date()}",
        "cores": os.cpu_count(),
        "load": round(os.getloadavg()[0], 1) if hasattr(os, "getloadavg") else None,
        "mark": round(mark(), 1),
        "rows": [{**asdict(row), "ratio": row.ratio} for row in found],
    }
    kept = dict(sorted(kept.items()))
    place.write_text(json.dumps(kept, indent=1, ensure_ascii=False) + "\n", encoding="utf-8")
    (folder / "README.md").write_text(page(kept), encoding="utf-8")
    return all(row.held is not False for row in found)


def mark() -> float:
    """Return how long a fixed sum takes here, in ms: by it the figures of two machines compare."""
    return 1e3 * min(_fixed_sum() for _ in range(5))


def _fixed_sum() -> float:
    began = time.process_time()
    sum(number * number % 7 for number in range(1_000_000))
    return time.process_time() - began


def page(kept: Mapping[str, Any]) -> str:
    """Write the table, one part for each benchmark."""
    rows = [row for each in kept.values() for row in each["rows"] if row["held"] is not None]
    held = sum(row["held"] for row in rows)
    lines = [
        "# What is measured",
        "",
        "Made by `python tasks.py bench`; with a NAME after it, one is measured anew. A reference",
        "is measured in the same run on the same machine: the ratio tells more than the figure.",
        "The mark is the time of a fixed sum in Python: with half the mark, a machine is twice as",
        "fast.",
        "",
        f"{held} of {len(rows)} budgets are held.",
    ]
    for name, each in kept.items():
        lines += ["", f"## {name}", "", _when(each), "", *_table(each["rows"])]
    return "\n".join(lines) + "\n"


def _when(each: Mapping[str, Any]) -> str:
    load = "" if each["load"] is None else f", load {each['load']} at the end"
    speed = f", mark {each['mark']:.0f} ms" if "mark" in each else ""
    return f"Measured on {each['date']}, {each['cores']} cores{load}{speed}."


def _table(rows: Iterable[Mapping[str, Any]]) -> Iterable[str]:
    yield "| what | ours | reference | ours : reference | budget | held |"
    yield "|---|---:|---:|---:|---|---|"
    for row in rows:
        against = f" ({row['against']})" if row["against"] else ""
        reference = _figure(row["reference"], row["unit"]) + against
        cells = (
            row["what"], _figure(row["ours"], row["unit"]), reference if row["reference"] else "",
            _figure(row["ratio"], ""), row["budget"], WORDS[row["held"]],
        )  # fmt: skip
        yield f"| {' | '.join(cells)} |"


def _figure(value: float | None, unit: str) -> str:
    """Write three significant figures, counts in full."""
    if value is None:
        return ""
    whole = abs(value) >= 100 or float(value).is_integer()
    return f"{value:,.0f} {unit}".strip() if whole else f"{value:.3g} {unit}".strip()
