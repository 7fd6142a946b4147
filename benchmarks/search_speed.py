"""Size of the search index and time of an answer: python benchmarks/search_speed.py.

A manual of 1,000 procedures is made up of the demo's own pages and steps, drawn at random, so that
words are as frequent as in real text. A browser slowed four times reads the index and answers.
"""

import gzip
import json
import random
import shutil
import sys
import tempfile
from pathlib import Path

import table
from playwright.sync_api import Page, sync_playwright

from underhoist.browser import tools
from underhoist.browser.search_index import DOCUMENTS, write_search_index
from underhoist.check import check
from underhoist.pages import make_site, sheets
from underhoist.search.documents import documents

ROOT = Path(__file__).parents[1]
sys.path.insert(0, str(ROOT / "tests" / "browser"))
from conftest import CHROMIUM, QUIET  # noqa: E402
from static_server import StaticServer  # noqa: E402

SIZES = (100, 1_000)
SLOWED = 4
LARGEST = 1_500_000  # bytes of the index for the larger size, compressed
SLOWEST = 300  # milliseconds of one answer, the phone slowed
QUESTIONS = (
    "bushing", "bushngs", "tail housing", "kick down", "shifts late", "band", "s", "se", "seal",
    "120 in-lb", "modualtor setting", "leaves a puddle", "torque wrench pan bolts", "zeppelin",
    "the fluid is low and it shifts late on the hill", "x" * 10_000,
)  # fmt: skip
MEASURE = """async ([questions]) => {
  const { Search } = await import(new URL("assets/search/answer.js", location.href).href);
  const text = await (await fetch("search/index.json")).text();
  const began = performance.now();
  const search = new Search(JSON.parse(text));
  const opened = performance.now() - began;
  const took = questions.map((question) => {
    const asked = performance.now();
    search.ask(question);
    return performance.now() - asked;
  });
  return { opened, took };
}"""


def enlarged(count: int) -> dict[str, object]:
    """Return the demo's texts with so many procedures, the same ones at every run."""
    folder = ROOT / "procedures"
    manual = check(folder).manual
    content = documents(manual, sheets(make_site(manual, folder, name="Measured")))
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
    """Open the index in the slowed browser and ask it every question."""
    server = StaticServer(folder)
    try:
        page.goto(server.url)
        slow = page.context.new_cdp_session(page)
        slow.send("Emulation.setCPUThrottlingRate", {"rate": SLOWED})
        return page.evaluate(MEASURE, [QUESTIONS])
    finally:
        server.stop()


def rows(count: int, size: int, opened: float, slowest: float) -> list[table.Row]:
    """Return the lines of the table for a manual of this size."""
    of = f"{count:,} procedures of the demo's words, slowed {SLOWED} times: "
    return [
        table.Row(
            what=f"{of}index, compressed", ours=size / 1e6, unit="MB",
            budget=f"at most {LARGEST / 1e6:g} MB", held=size <= LARGEST,
        ),
        table.Row(what=f"{of}index opened", ours=opened, unit="ms"),
        table.Row(
            what=f"{of}slowest answer", ours=slowest, unit="ms",
            budget=f"at most {SLOWEST} ms", held=slowest <= SLOWEST,
        ),
    ]  # fmt: skip


def main() -> None:
    """Print sizes and times; exit with 1 over the budget."""
    found: list[table.Row] = []
    with tempfile.TemporaryDirectory() as scratch, sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=CHROMIUM, args=QUIET)
        for count in SIZES:
            folder = Path(scratch) / str(count)
            site_of(folder, count)
            text = (folder / "search" / "index.json").read_bytes()
            size = len(gzip.compress(text, 9))
            result = measured(browser.new_page(), folder)
            slowest = max(result["took"])
            middle = sorted(result["took"])[len(QUESTIONS) // 2]
            print(
                f"{count:>5} procedures: index {len(text) / 1e6:.2f} MB, compressed "
                f"{size / 1e6:.2f} MB; slowed {SLOWED} times: opened in {result['opened']:.0f} ms, "
                f"answers in {middle:.0f} ms, the slowest in {slowest:.0f} ms "
                f"({QUESTIONS[result['took'].index(slowest)][:40]})"
            )
            found += rows(count, size, result["opened"], slowest)
        browser.close()
    sys.exit(not table.enter("search_speed", found))


if __name__ == "__main__":
    main()
