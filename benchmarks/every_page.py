"""What holds on every kind of page: python benchmarks/every_page.py.

The weight of its HTML, CSS and JS beside a page of the theme as it is published; what axe-core
finds on light and dark paper, contrast of 7:1 included; the size of a job card's tick.
"""

import json
import subprocess
import sys
import tempfile
from pathlib import Path

from built_site import ROOT, site_in
from made_up import write_project
from playwright.sync_api import Browser, ViewportSize, sync_playwright
from table import Row, enter

sys.path.insert(0, str(ROOT / "tests" / "browser"))
from axe_core import findings, settle
from card_hands import start_card, tick
from chromium import CHROMIUM, QUIET
from page_weight import weight
from static_server import StaticServer

KINDS: dict[str, str] = json.loads((ROOT / "tests/browser/kinds.json").read_text(encoding="utf-8"))
HEAVIEST = 110_000
"""Bytes of HTML, CSS and JS, compressed."""
TICK = 64
"""Pixels that a thumb in a glove hits."""
PHONE: ViewportSize = {"width": 390, "height": 844}
A_PAGE = "many/band-7/"


def of_ours(browser: Browser, site: Path) -> tuple[dict[str, int], dict[str, list[str]], float]:
    """Return the weight and the faults of each kind of page, and the smaller side of a tick."""
    weights: dict[str, int] = {}
    faults: dict[str, list[str]] = {}
    server = StaticServer(site)
    try:
        for kind, address in KINDS.items():
            context = browser.new_context(viewport=PHONE, service_workers="block")
            page = context.new_page()
            weights[kind] = sum(weight(page, site, server.url, address).values())
            settle(page)
            faults[kind] = findings(page)
            context.close()
        page = browser.new_context(viewport=PHONE).new_page()
        start_card(page, server.url, "set-band")
        box = tick(page).bounding_box() or {"width": 0, "height": 0}
        return weights, faults, min(box["width"], box["height"])
    finally:
        server.stop()


def of_the_theme(browser: Browser, folder: Path) -> int:
    """Return the weight of a procedure's page in the theme as it is published."""
    write_project(folder, 20)
    site = folder / "stock"
    command = [sys.executable, "-m", "mkdocs", "build", "-q", "-f", str(folder / "stock.yml")]
    subprocess.run([*command, "-d", str(site)], check=True, capture_output=True)
    server = StaticServer(site)
    try:
        page = browser.new_page(viewport=PHONE)
        return sum(weight(page, site, server.url, A_PAGE).values())
    finally:
        server.stop()


def main() -> None:
    """Look at every kind of page; exit with 1 over a budget."""
    with tempfile.TemporaryDirectory() as scratch, sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=CHROMIUM, args=QUIET)
        folder = Path(scratch)
        weights, faults, thumb = of_ours(browser, site_in(folder))
        theirs = of_the_theme(browser, folder / "many")
        browser.close()
    sys.exit(not enter("every_page", rows(weights, faults, thumb, theirs)))


def rows(
    weights: dict[str, int], faults: dict[str, list[str]], thumb: float, theirs: int
) -> list[Row]:
    """Return the lines of the table, the worst kind of page in each."""
    for kind, found in faults.items():
        for fault in found:
            print(f"{kind}: {fault}")
    heaviest, count = max(weights, key=weights.__getitem__), sum(map(len, faults.values()))
    ours = weights[heaviest]
    procedure = weights["procedure"]
    return [
        Row(
            what=f"HTML, CSS and JS of the heaviest of {len(weights)} kinds of page ({heaviest})",
            ours=ours / 1e3, unit="kB", budget=f"at most {HEAVIEST / 1e3:g} kB",
            held=ours <= HEAVIEST,
        ),
        Row(
            what="HTML, CSS and JS of a procedure", ours=procedure / 1e3, unit="kB",
            reference=theirs / 1e3, against="stock theme",
        ),
        Row(
            what=f"axe-core's findings on {len(faults)} kinds of page, light and dark, 7:1",
            ours=count, unit="", budget="none", held=count == 0,
        ),
        Row(
            what="the tick of a job card, its smaller side", ours=thumb, unit="px",
            budget=f"at least {TICK} px", held=thumb >= TICK,
        ),
    ]  # fmt: skip


if __name__ == "__main__":
    main()
