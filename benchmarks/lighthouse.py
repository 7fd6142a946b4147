"""Lighthouse's mobile audit of one page of each kind: python benchmarks/lighthouse.py [KIND ...].

Each page is a first visit, served over HTTP/2 and TLS with compression and cache headers, as a
static host does it. The profile is Lighthouse's own: 1.6 Mbit/s, 150 ms round trips, a processor
slowed four times. Results: results/lighthouse.md and lighthouse.json; the worst of all kinds goes
into the one table.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
import tempfile
from pathlib import Path
from typing import Any

from built_site import ROOT, site_in
from hosted import Host
from lighthouse_report import rows_of, write_report
from table import enter

from underhoist.browser import tools

sys.path.insert(0, str(ROOT / "tests" / "browser"))
from chromium import CHROMIUM, QUIET

LIGHTHOUSE = ROOT / "node_modules" / "lighthouse" / "cli" / "index.js"
CATEGORIES = ("performance", "accessibility", "best-practices", "seo")
METRICS = {
    "first-contentful-paint": "fcp",
    "largest-contentful-paint": "lcp",
    "total-blocking-time": "tbt",
    "cumulative-layout-shift": "cls",
    "total-byte-weight": "bytes",
}
LONGEST = 180
"""Seconds for one page on a busy machine."""

Result = dict[str, Any]


def audited(address: str) -> Result:
    """Run Lighthouse on one page; what it found, in short."""
    flags = ["--headless=new", "--ignore-certificate-errors", *QUIET]
    command = [tools.node(), str(LIGHTHOUSE), address, "--quiet", "--output=json"]
    command += [f"--only-categories={','.join(CATEGORIES)}", f"--chrome-flags={' '.join(flags)}"]
    environment = {**os.environ, **({"CHROME_PATH": CHROMIUM} if CHROMIUM else {})}
    done = subprocess.run(
        command, env=environment, capture_output=True, text=True, check=False, timeout=LONGEST
    )
    if done.returncode != 0:
        raise SystemExit(f"Lighthouse did not work on {address}:\n{done.stderr[-2000:]}")
    return shortened(json.loads(done.stdout))


def shortened(report: dict[str, Any]) -> Result:
    """Scores from 0 to 100, times in ms, bytes, and each audit that is not full and counts."""
    audits = report["audits"]
    scores = {name: round(100 * report["categories"][name]["score"]) for name in CATEGORIES}
    weighed = {
        reference["id"]
        for name in CATEGORIES
        for reference in report["categories"][name]["auditRefs"]
        if reference["weight"]
    }
    wanting = [
        f"{audits[each]['title']} ({audits[each].get('displayValue', 'not passed')})"
        for each in sorted(weighed)
        if audits[each]["score"] is not None and audits[each]["score"] < 1
    ]
    figures = {
        short: round(audits[name].get("numericValue", 0), 3) for name, short in METRICS.items()
    }
    machine = report["environment"]["benchmarkIndex"]
    return {"scores": scores, **figures, "wanting": wanting, "machine": machine}


def main() -> None:
    """Audit each kind of page, or those that are named."""
    if not LIGHTHOUSE.is_file():
        raise SystemExit("Lighthouse is not installed: run `make test` once, it installs it.")
    kinds = json.loads((ROOT / "tests/browser/kinds.json").read_text(encoding="utf-8"))
    wanted = sys.argv[1:] or list(kinds)
    found: dict[str, Result] = {}
    with tempfile.TemporaryDirectory() as scratch:
        folder = Path(scratch)
        with Host(site_in(folder), folder) as host:
            for kind in wanted:
                found[kind] = audited(host.url + kinds[kind])
                print(f"{kind}: {found[kind]['scores']}", flush=True)
    write_report(Path(__file__).with_name("results"), found)
    if len(found) == len(kinds):  # a table of some kinds would not tell the worst
        sys.exit(not enter("lighthouse", rows_of(found)))


if __name__ == "__main__":
    main()
