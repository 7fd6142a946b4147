"""How soon the fault finding answers after a tap, on a phone that is slowed for real.

    python benchmarks/fault_speed.py

Linux only. Asks the page's own worker, in a browser of which every thread is slowed: about every
complaint of the demo on every family, at the start and after every result of three checks, and
about made-up complaints with more and less certain checks than any page has. Writes
benchmarks/results/fault_speed.md and .json. UNDERHOIST_TEST_SITE names a built site.
"""

from __future__ import annotations

import json
import os
import random
import shutil
import sys
import tempfile
from pathlib import Path
from typing import Any

from attrs import frozen

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "tests" / "browser"), str(ROOT / "benchmarks")]

import table  # noqa: E402
from built_site import site_in  # noqa: E402
from playwright.sync_api import Playwright, sync_playwright  # noqa: E402
from slowed import browser_of, slowed  # noqa: E402
from static_server import StaticServer  # noqa: E402

SLOWER = 4
MADE_UP = (12, 16)
"""Numbers of checks of the made-up complaints."""
SEED = 20
BUDGET = 1_500  # ms
WAIT = 300_000  # ms
QUIET = ["--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking"]

# One question after another in the page's own worker; each complaint's first in a state of its own,
# where nothing about it is remembered yet.
ASK = """async ([client, complaints]) => {
    const {standing} = await import(client);
    const nothing = {causes: [], checks: []};
    const found = [];
    for (const [at, complaint] of complaints.entries()) {
        const timed = async (results) => {
            const began = performance.now();
            const told = await standing(complaint, results);
            return {took: performance.now() - began, exact: told.exact, gap: told.gap_minutes};
        };
        if (at % 8 === 0) console.log(`${at} of ${complaints.length}`);
        await standing(nothing, []);
        const first = await timed([]);
        const taps = [];
        for (const {id} of complaint.checks.slice(0, 3))
            for (const result of ["good", "bad", "not done"])
                taps.push(await timed([{check: id, result}]));
        found.push({first, taps});
    }
    return found;
}"""

SUM = """() => {
    const began = performance.now();
    let x = 0;
    for (let i = 0; i < 4e7; i++) x = (x * 31 + i) | 0;
    return performance.now() - began + (x & 0);
}"""


@frozen
class Asked:
    """A complaint by its name, as the engine takes it."""

    name: str
    complaint: dict[str, Any]


def of_the_demo(site: Path) -> list[Asked]:
    """Every complaint of the site on each of its families."""
    return [
        Asked(f"{data['id']}, {family}", of_family["complaint"])
        for file in sorted(site.glob("fault/data/*.json"))
        for data in [json.loads(file.read_text(encoding="utf-8"))]
        for family, of_family in data["by_family"].items()
    ]


def made_up(checks: int, *, certain: bool) -> Asked:
    """Overlapping checks at shared levels, more of them than a page has."""
    draw = random.Random(SEED + checks)  # noqa: S311 - a made-up table
    causes = [f"c{number}" for number in range(checks)]
    share = round(0.9 / checks, 4)
    complaint = {
        "causes": [{"id": each, "name": each, "share": share} for each in causes],
        "levels": [{"name": f"l{n}", "minutes": 10 * n} for n in range(4)],
        "checks": [
            {
                "id": f"k{number}",
                "name": f"k{number}",
                "minutes": draw.randint(2, 40),
                "access": f"l{draw.randrange(4)}",
                "bad": {
                    each: 1 if certain else draw.choice((0.6, 0.8, 0.9))
                    for each in dict.fromkeys([causes[number], *draw.sample(causes, 3)])
                },
            }
            for number in range(checks)
        ],
    }
    return Asked(f"made up: {checks} {'certain' if certain else 'uncertain'} checks", complaint)


def measure(playwright: Playwright, site: Path, asked: list[Asked], slower: float) -> dict:
    """Ask everything in one browser; give the answers in order and the machine's own speed."""
    server = StaticServer(site)
    with tempfile.TemporaryDirectory() as profile:
        context = playwright.chromium.launch_persistent_context(
            profile, executable_path=shutil.which("chromium"), args=QUIET, service_workers="block"
        )
        page = context.new_page()
        page.set_default_timeout(WAIT)
        page.on("console", lambda said: print(f"  {said.text}", flush=True))
        page.goto(server.url)
        with slowed(browser_of(Path(profile)), slower):
            complaints = [each.complaint for each in asked]
            answers = page.evaluate(ASK, [f"{server.url}assets/fault/client.js", complaints])
            own = page.evaluate(SUM)
        context.close()
    server.stop()
    return {"answers": answers, "sum": own}


def row(name: str, full: dict, slow: dict) -> dict[str, Any]:
    """What one complaint came to, in ms."""
    taps = slow["taps"]
    return {
        "name": name,
        "first": full["first"]["took"],
        "slow_first": slow["first"]["took"],
        "slow_tap": max(each["took"] for each in taps),
        "exact": slow["first"]["exact"] and all(each["exact"] for each in taps),
        "gap": max(each["gap"] for each in (slow["first"], *taps)),
    }


def report(rows: list[dict], sums: tuple[float, float], load: float) -> str:
    """Write the table."""
    demo = [each for each in rows if not str(each["name"]).startswith("made up")]
    worst = max(demo, key=lambda each: each["slow_tap"])
    lines = [
        "# How soon the fault finding answers",
        "",
        f"Every thread of the browser slowed {sums[1] / sums[0]:.1f} times for real (asked for: "
        f"{SLOWER}); load of the machine {load:.1f}. {len(demo)} complaints of the demo by family: "
        f"slowest first answer {max(each['slow_first'] for each in demo):.0f} ms, slowest after a "
        f"tap {worst['slow_tap']:.0f} ms ({worst['name']}); of all rows "
        f"{max(max(each['slow_first'], each['slow_tap']) for each in rows):.0f} ms.",
        "",
        "| complaint | first, full speed, ms | first, slowed | slowest tap, slowed | exact | "
        "could be quicker by, minutes |",
        "| --- | --- | --- | --- | --- | --- |",
    ]
    lines += [
        f"| {each['name']} | {each['first']:.0f} | {each['slow_first']:.0f} | "
        f"{each['slow_tap']:.0f} | {'yes' if each['exact'] else 'no'} | {each['gap']:.1f} |"
        for each in rows
    ]
    return "\n".join(lines) + "\n"


def main() -> None:
    """Measure and write; exit with 1 where an answer takes much longer than a second."""
    load = os.getloadavg()[0]
    with tempfile.TemporaryDirectory() as scratch, sync_playwright() as playwright:
        site = site_in(Path(scratch))
        asked = of_the_demo(site)
        asked += [made_up(n, certain=certain) for n in MADE_UP for certain in (True, False)]
        full = measure(playwright, site, asked, 1)
        slow = measure(playwright, site, asked, SLOWER)
    rows = [
        row(each.name, fast, slower)
        for each, fast, slower in zip(asked, full["answers"], slow["answers"], strict=True)
    ]
    text = report(rows, (full["sum"], slow["sum"]), load)
    results = ROOT / "benchmarks" / "results"
    (results / "fault_speed.md").write_text(text, encoding="utf-8")
    (results / "fault_speed.json").write_text(json.dumps(rows, indent=1) + "\n", encoding="utf-8")
    print(text)
    demo = [each for each in rows if not str(each["name"]).startswith("made up")]
    taps = table.Row(
        what="slowest answer after a tap, demo, slowed",
        ours=max(each["slow_tap"] for each in demo),
        unit="ms",
    )
    longest = max(max(each["slow_first"], each["slow_tap"]) for each in rows)
    all_of_them = table.Row(
        what="slowest answer of all, made-up complaints too, slowed",
        ours=longest,
        unit="ms",
        budget="about a second: at most 1,500",
        held=longest <= BUDGET,
    )
    sys.exit(not table.enter("fault_speed", [taps, all_of_them]))


if __name__ == "__main__":
    main()
