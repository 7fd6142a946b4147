"""Size of the search index and time of an answer: python benchmarks/search_speed.py.

Manuals of up to 3,000 procedures are made up of the demo's own pages and steps, drawn at random, so
that words are as frequent as in real text. A browser slowed four times opens the index and answers:
questions as they are asked, then the index's commonest words, one by one and all together.
"""

import gzip
import json
import random
import re
import shutil
import sys
import tempfile
from pathlib import Path
from statistics import median

import table
from playwright.sync_api import CDPSession, Page, ViewportSize, sync_playwright

from underhoist.browser import tools
from underhoist.browser.search_index import DOCUMENTS, write_search_index
from underhoist.check import check
from underhoist.pages import make_site, sheets
from underhoist.search.documents import documents

ROOT = Path(__file__).parents[1]
sys.path.insert(0, str(ROOT / "tests" / "browser"))
from chromium import CHROMIUM, QUIET  # noqa: E402
from static_server import StaticServer  # noqa: E402

SIZES = (100, 1_000, 3_000)
SLOWED = 4
LARGEST = 1_500_000  # bytes of the index for 1,000 procedures, compressed; three times for 3,000
SLOWEST = 300  # milliseconds of one answer, the phone slowed
QUESTIONS = (
    "bushing", "bushngs", "tail housing", "kick down", "shifts late", "band", "s", "se", "seal",
    "120 in-lb", "modualtor setting", "leaves a puddle", "torque wrench pan bolts", "zeppelin",
    "the fluid is low and it shifts late on the hill", "x" * 10_000,
)  # fmt: skip
TYPED = ("torque wrench pan bolts", "band", "modualtor")
ROUNDS = 3
PHONE: ViewportSize = {"width": 390, "height": 844}
LETTER = 200  # milliseconds between two letters, so that every letter is answered
DRAWN = 2_000  # milliseconds in which the last answer is drawn whole
ANSWERED = re.compile("found|with most")
MEASURE = """async (questions) => {
  const module = new URL("assets/search/answer.js", location.href).href;
  const { Search, MOST_LOOKED } = await import(module);
  const text = await (await fetch("search/index.json")).text();
  const began = performance.now();
  window.search = new Search(JSON.parse(text));
  const opened = performance.now() - began;
  const { known } = window.search;
  const common = known.terms
    .map((term, number) => [term, known.weigher.lists.count(number)])
    .sort(([, a], [, b]) => b - a)
    .slice(0, 10)
    .map(([term]) => term);
  const asked = [...questions, ...common, common.join(" ")].map((question) => {
    const [before, start] = [known.weigher.looked, performance.now()];
    window.search.ask(question);
    return { question, took: performance.now() - start, looked: known.weigher.looked - before };
  });
  return { opened, asked, most: MOST_LOOKED };
}"""

WATCH = """() => {
  window.tasks = [];
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) window.tasks.push(duration);
  }).observe({ type: "longtask" });
}"""
"""Notes every task of the page's thread that takes more than 50 ms."""


def enlarged(count: int) -> dict[str, object]:
    """Return the demo's texts with so many procedures, the same ones at every run."""
    folder = ROOT / "procedures"
    manual = check(folder).manual
    made = {each.address: each for each in sheets(make_site(manual, folder, name="Measured"))}
    content = documents(manual, made)
    pages: list[dict] = content["pages"]  # type: ignore[assignment]
    real = [page for page in pages if page["kind"] == "procedure"]
    parts = [part for page in real for part in page["parts"]]
    words = sorted({word for part in parts for word in part["prose"].split()})
    chance = random.Random(1)  # noqa: S311 - drawn alike at every run
    others = [page for page in pages if page["kind"] != "procedure"]
    made = []
    for number in range(count):
        page = chance.choice(real)
        steps = [dict(chance.choice(parts), at=f"step-{n}") for n, _ in enumerate(page["parts"])]
        title = f"{page['title']} {' '.join(chance.sample(words, 2))}"
        made.append({**page, "address": f"many/{number}/", "title": title, "parts": steps})
    return {**content, "pages": [*others, *made]}


def site_of(folder: Path, count: int) -> None:
    """Make what a search needs of a site, and nothing else."""
    modules = tools.node_modules(ROOT / "site")
    shutil.copytree(ROOT / "site_overrides" / "assets" / "search", folder / "assets" / "search")
    (folder / "assets" / "vendor").mkdir()
    shutil.copy(
        modules / "minisearch" / "dist" / "es" / "index.js",
        folder / "assets" / "vendor" / "minisearch.js",
    )
    (folder / "search").mkdir()
    (folder / "index.html").write_text("<!doctype html><title>Measured</title>", encoding="utf-8")
    (folder / DOCUMENTS).write_text(json.dumps(enlarged(count)), encoding="utf-8")
    write_search_index(folder, modules)


def measured(page: Page, folder: Path) -> dict:
    """Open the index in the slowed browser and ask it every question; memory is of what is held."""
    server = StaticServer(folder)
    try:
        page.goto(server.url)
        slow = page.context.new_cdp_session(page)
        before = held(slow)
        slow.send("Emulation.setCPUThrottlingRate", {"rate": SLOWED})
        found = page.evaluate(MEASURE, QUESTIONS)
        slow.send("Emulation.setCPUThrottlingRate", {"rate": 1})
        return {**found, "memory": held(slow) - before}
    finally:
        server.stop()


def typed(page: Page, site: Path) -> float:
    """Type each question into the slowed search page of a whole site, at a phone's size.

    Returns the longest task in ms, the median of several rounds: another process may disturb one.
    Tasks of at most 50 ms count as 0, since the browser tells of none.
    """
    server = StaticServer(site)
    try:
        page.set_viewport_size(PHONE)
        page.goto(server.url + "search.html")
        page.locator("#words").fill("band")
        page.locator("#results li").first.wait_for()
        page.evaluate(WATCH)
        slow = page.context.new_cdp_session(page)
        slow.send("Emulation.setCPUThrottlingRate", {"rate": SLOWED})
        return median(typed_once(page) for _ in range(ROUNDS))
    finally:
        server.stop()


def typed_once(page: Page) -> float:
    """Type each question; the longest task over 50 ms, in ms, or 0."""
    for question in TYPED:
        page.locator("#words").fill("")
        page.locator("#words").press_sequentially(question, delay=LETTER)
        page.locator("#found", has_text=ANSWERED).wait_for()
    page.wait_for_timeout(DRAWN)
    return page.evaluate("() => Math.max(0, ...window.tasks.splice(0))")


def held(session: CDPSession) -> float:
    """Say how many bytes the page's script holds, its buffers included."""
    session.send("HeapProfiler.collectGarbage")
    usage = session.send("Runtime.getHeapUsage")
    return usage["usedSize"] + usage.get("backingStorageSize", 0)


def rows(of: str, size: int, found: dict, largest: int | None) -> list[table.Row]:
    """Return the lines of the table for one index; `largest` is its budget in bytes, if any."""
    slowest = max(found["asked"], key=lambda each: each["took"])
    looked = max(each["looked"] for each in found["asked"])
    return [
        table.Row(
            what=f"{of}search index, compressed", ours=size / 1e6, unit="MB",
            budget=f"at most {largest / 1e6:g} MB" if largest else "",
            held=size <= largest if largest else None,
        ),
        table.Row(what=f"{of}search index opened", ours=found["opened"], unit="ms"),
        table.Row(what=f"{of}memory of the opened index", ours=found["memory"] / 1e6, unit="MB"),
        table.Row(
            what=f"{of}slowest answer ({slowest['question'][:40]})", ours=slowest["took"],
            unit="ms", budget=f"at most {SLOWEST} ms", held=slowest["took"] <= SLOWEST,
        ),
        table.Row(
            what=f"{of}most entries of the index that an answer looks at", ours=looked, unit="",
            budget=f"at most {found['most']:,}", held=looked <= found["most"],
        ),
    ]  # fmt: skip


def main() -> None:
    """Measure each size and enter the rows; exit with 1 over a budget."""
    found: list[table.Row] = []
    with tempfile.TemporaryDirectory() as scratch, sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=CHROMIUM, args=QUIET)
        for count in SIZES:
            folder = Path(scratch) / str(count)
            site_of(folder, count)
            size = len(gzip.compress((folder / "search" / "index.json").read_bytes(), 9))
            of = f"{count:,} procedures of the demo's words, slowed {SLOWED} times: "
            result = measured(browser.new_page(), folder)
            print(json.dumps({"procedures": count, "size": size, **result}), flush=True)
            found += rows(of, size, result, LARGEST * max(1, count // 1_000))
        browser.close()
    sys.exit(not table.enter("search_speed", found))


if __name__ == "__main__":
    main()
