"""The table of benchmarks/lighthouse.py, as Markdown and as JSON."""

from __future__ import annotations

import json
import os
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

FCP = 1000
"""Most milliseconds until something can be read."""

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
