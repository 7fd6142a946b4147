"""The table of benchmarks/lighthouse.py, as Markdown and as JSON."""

from __future__ import annotations

import json
import os
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from table import Row

FCP = 1000
"""Most milliseconds until something can be read."""

FULL = 100
"""The highest score."""

TEXT = """# Lighthouse, mobile, one page of each kind

Made by `python benchmarks/lighthouse.py` on {date}; the machine's load at the end was {load:.1f},
and Lighthouse's mark of its speed lay between {slowest:.0f} and {fastest:.0f} (a busy machine makes
times worse, not better). A first visit to each page, served over HTTP/2 and TLS, compressed.
The four scores are
performance, accessibility, best practices and search engines. "First" is the first contentful
paint, "largest" the largest, "blocked" the total blocking time, all in ms on the throttled profile;
"shift" is the cumulative layout shift. The weight is what had arrived when Lighthouse ended: where
it counts thousands of kB, storing the manual for offline had begun.

| page | scores | first | largest | blocked | shift | kB |
|---|---|---:|---:|---:|---:|---:|
{rows}

{wanting}
"""


def write_report(folder: Path, found: dict[str, dict[str, Any]]) -> None:
    """Write lighthouse.md and lighthouse.json, and say what is not full."""
    folder.mkdir(exist_ok=True)
    date, load = datetime.now(UTC).date().isoformat(), os.getloadavg()[0]
    machine = [each["machine"] for each in found.values()]
    text = TEXT.format(
        date=date, load=load, slowest=min(machine), fastest=max(machine),
        rows="\n".join(_row(kind, each) for kind, each in found.items()),
        wanting="\n".join(_wanting(found)),
    )  # fmt: skip
    (folder / "lighthouse.md").write_text(text, encoding="utf-8")
    data = {"date": date, "load": round(load, 1), "pages": found}
    (folder / "lighthouse.json").write_text(json.dumps(data, indent=1) + "\n", encoding="utf-8")
    print(text)


def rows_of(found: dict[str, dict[str, Any]]) -> list[Row]:
    """The worst page for each budget: the four scores, the first paint, and what moves."""
    rows: list[Row] = []
    for name in next(iter(found.values()))["scores"]:
        kind = min(found, key=lambda each, name=name: found[each]["scores"][name])
        score = found[kind]["scores"][name]
        held = score == FULL
        what = f"{name}, lowest of {len(found)} kinds of page{_where(kind, held)}"
        rows.append(Row(what=what, ours=score, unit="", budget=f"{FULL}", held=held))
    late = max(found, key=lambda each: found[each]["fcp"])
    ours = found[late]["fcp"]
    what = f"first contentful paint, slowest kind ({late})"
    rows.append(
        Row(what=what, ours=ours, unit="ms", budget=f"at most {FCP:,} ms", held=ours <= FCP)
    )
    moved = max(found, key=lambda each: found[each]["cls"])
    ours = found[moved]["cls"]
    what = f"layout shift, worst kind{_where(moved, ours == 0)}"
    rows.append(Row(what=what, ours=ours, unit="", budget="0", held=ours == 0))
    return rows


def _where(kind: str, held: bool) -> str:
    """Name the page that does not hold; where all hold, none stands out."""
    return "" if held else f" ({kind})"


def _row(kind: str, each: dict[str, Any]) -> str:
    scores = " / ".join(str(score) for score in each["scores"].values())
    figures = f"{each['fcp']:.0f} | {each['lcp']:.0f} | {each['tbt']:.0f} | {each['cls']:.3f}"
    return f"| {kind} | {scores} | {figures} | {each['bytes'] / 1000:,.0f} |"


def _wanting(found: dict[str, dict[str, Any]]) -> list[str]:
    """Say each page that is not full, and why; or that all are."""
    short = {
        kind: each["wanting"] for kind, each in found.items() if min(each["scores"].values()) < 100
    }
    late = [kind for kind, each in found.items() if each["fcp"] > FCP]
    lines = [f"- {kind} is under 100: {'; '.join(why)}" for kind, why in short.items()]
    lines += [f"- First paint is over 1 s on: {', '.join(late)}."] if late else []
    shifted = [kind for kind, each in found.items() if each["cls"] > 0]
    lines += [f"- Something moves on: {', '.join(shifted)}."] if shifted else []
    return lines or ["All are full, the first paint is under 1 s, and nothing moves."]
