"""How soon a card of 2,000 events opens, on a page slowed four times.

    python benchmarks/card_speed.py [runs, 5 if not given]

Medians, with a list of 60 cards and 20,000 events beside it. Fails over its budgets and writes
benchmarks/results/card_speed.md. UNDERHOIST_TEST_SITE names a built site.
"""

from __future__ import annotations

import os
import sys
import tempfile
from datetime import UTC, datetime
from pathlib import Path
from statistics import median
from typing import Any

ROOT = Path(__file__).resolve().parents[1]
RESULT = ROOT / "benchmarks" / "results" / "card_speed.md"
SCRIPT = Path(__file__).with_suffix(".js").read_text(encoding="utf-8")
sys.path[:0] = [str(ROOT / "tests" / "browser"), str(ROOT / "benchmarks")]

import table  # noqa: E402
from built_site import site_in  # noqa: E402
from card_hands import open_cards  # noqa: E402
from chromium import CHROMIUM, QUIET  # noqa: E402
from playwright.sync_api import Browser, Page, sync_playwright  # noqa: E402
from static_server import StaticServer  # noqa: E402

RUNS = 5
SLOWER = 4
FIRST_STEP = 2
EVENTS = 2_000
OTHERS = {"cards": 59, "events": 305}
PROCEDURES = [
    "book-in", "road-test-before", "raise-vehicle", "extract-fluid", "drop-pan", "set-band",
    "staged-refill", "leak-check", "lower-vehicle", "road-test-after", "hand-over",
]  # fmt: skip
FRAME = "the list of 60 cards with 20,000 events, from another page"
WAYS = {
    "page": "the card, from another page: page, storage, events, first paint",
    "list": "the card, from the list",
    "shown": "a tick, until it is shown as being stored",
    "stored": "a tick, until it is stored and the next step stands there",
    "cards": FRAME,
    "first": "the same for the first time, when every card is looked through",
    "look": "the file of such a card, looked at before it is taken in",
    "take": "the same, taken in",
}
BUDGET = {"page": 1_000, "list": 1_000, "shown": 100, "stored": 300, "cards": 1_000}

# Notes by the page's own clock when what was asked for is painted.
NOTE_PAINT = """(() => {
    const look = () => {
        const there = "#cards[data-ready] :is(button.uh-tick, .uh-contents)";
        if (!document.querySelector(there)) return requestAnimationFrame(look);
        requestAnimationFrame(() => setTimeout(() => { globalThis.painted = performance.now(); }));
    };
    requestAnimationFrame(look);
})()"""
PAINTED = """() => new Promise((done) => {
    const look = () => (globalThis.painted ? done(globalThis.painted) : setTimeout(look, 10));
    look();
})"""

NOTE_CHANGE = """() => addEventListener(
    "change", () => { globalThis.began = performance.now(); }, { capture: true, once: true })"""


def run(page: Page, name: str, asked: object = None) -> Any:  # noqa: ANN401
    """Let the page do one of the script's functions."""
    return page.evaluate(f"asked => ({SCRIPT}).{name}(asked)", asked)


def slow(page: Page) -> None:
    """From now on the page's thread is four times slower."""
    page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})


def opened(page: Page, site_url: str, hash_: str, selector: str) -> float:
    """Milliseconds from the start of the page's load until this is painted."""
    page.goto("about:blank")
    page.goto(f"{site_url}cards/{hash_}", wait_until="commit")
    page.wait_for_selector(f"#cards[data-ready] {selector}")
    return page.evaluate(PAINTED)


def card_times(page: Page, site_url: str, card: str, step: int) -> dict[str, float]:
    """One run on the large card; it ticks this step, which no other run may tick."""
    tick_there = "button.uh-tick"
    took = {"page": opened(page, site_url, f"#card/{card}", tick_there)}
    took["cards"] = opened(page, site_url, "#", ".uh-contents")
    took["list"] = run(page, "go", {"hash": f"#card/{card}", "selector": tick_there})
    took["list again"] = run(page, "go", {"hash": "#", "selector": ".uh-card__list"})
    run(page, "go", {"hash": f"#card/{card}/{step}", "selector": tick_there})
    page.wait_for_timeout(500)
    took |= run(page, "tick")
    return took


def import_times(browser: Browser, site_url: str, text: str) -> dict[str, float]:
    """A phone that has nothing takes the file in."""
    context = browser.new_context(viewport={"width": 390, "height": 844})
    page = context.new_page()
    open_cards(page, site_url, "#take-in")
    slow(page)
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "card.json"
        file.write_text(text, encoding="utf-8")
        page.evaluate(NOTE_CHANGE)
        page.set_input_files("input[type=file]", file)
        page.get_by_role("button", name="Take it in").wait_for()
        look = page.evaluate("performance.now() - began")
    pressed = {"words": "Take it in", "selector": "#cards [role=status]", "then": "Stored"}
    take = run(page, "press", pressed)
    context.close()
    return {"look": look, "take": take}


def measure(browser: Browser, site_url: str, runs: int) -> tuple[dict[str, float], dict]:
    """Medians of every way, and what the large card is."""
    page = browser.new_context(viewport={"width": 390, "height": 844}).new_page()
    open_cards(page, site_url)
    asked = {"root": site_url, "procedures": PROCEDURES}
    run(page, "store", {**asked, **OTHERS})
    [large] = run(page, "store", {**asked, "cards": 1, "events": EVENTS})
    text = run(page, "file", {"root": site_url, "card": large["card"]})
    page.add_init_script(NOTE_PAINT)
    slow(page)
    all_: list[dict[str, float]] = [{"first": opened(page, site_url, "#", ".uh-contents")}]
    for number in range(runs):
        all_.append(card_times(page, site_url, large["card"], FIRST_STEP + number))
        all_.append(import_times(browser, site_url, text))
    took = {key: median(one[key] for one in all_ if key in one) for key in WAYS}
    return took, {**large, "bytes": len(text)}


def report(took: dict[str, float], large: dict, runs: int) -> str:
    """The result as a page."""
    today = datetime.now(UTC).date()
    rows = [
        f"| {words} | {took[key]:,.0f} | {f'{BUDGET[key]:,}' if key in BUDGET else ''} |"
        for key, words in WAYS.items()
    ]
    return f"""# How soon a large job card opens

Made by `python benchmarks/card_speed.py {runs}` on {today}, medians of {runs} runs.
The machine's load was {os.getloadavg()[0]:.1f}: figures taken at a high load are too large.

The card holds {large["events"]:,} events on {large["steps"]} steps; its file without pictures has
{large["bytes"] / 1e6:.1f} MB. The page's thread is slowed {SLOWER} times by the browser's protocol.

| milliseconds | slowed {SLOWER} times | budget |
|---|---:|---:|
{"\n".join(rows)}
"""


def main() -> int:
    """Measure, write the result, fail over a budget."""
    runs = int(sys.argv[1]) if len(sys.argv) > 1 else RUNS
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        server = StaticServer(site_in(Path(folder)))
        browser = playwright.chromium.launch(executable_path=CHROMIUM, args=QUIET)
        took, large = measure(browser, server.url, runs)
        browser.close()
        server.stop()
    text = report(took, large, runs)
    RESULT.write_text(text, encoding="utf-8")
    print(text)
    return int(not table.enter("card_speed", rows(took)))


def rows(took: dict[str, float]) -> list[table.Row]:
    """Return the lines of the table that have a budget."""
    return [
        table.Row(
            what=f"a card of {EVENTS:,} events, slowed {SLOWER} times: {WAYS[key]}",
            ours=took[key], unit="ms", budget=f"at most {most:,} ms", held=took[key] <= most,
        )
        for key, most in BUDGET.items()
    ]  # fmt: skip


if __name__ == "__main__":
    sys.exit(main())
