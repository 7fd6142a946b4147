"""What a first visit and an update cost on a slow line: python benchmarks/install_speed.py

The demo arrives as in Lighthouse's profile (1.6 Mbit/s, 150 ms round trips), a made-up manual of
3,000 procedures at 5 Mbit/s so that the run does not last. The processor is not slowed. An update
is the same manual with one word more in one step; it is set against storing all of that manual's
text anew, in the same run.
"""

from __future__ import annotations

import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from attrs import frozen
from built_site import ROOT, site_in
from hosted import Host
from made_up import write_project
from playwright.sync_api import Browser, Error, Page, sync_playwright
from slow_line import SlowLine

sys.path.insert(0, str(ROOT / "tests" / "browser"))
import table
from chromium import CHROMIUM, QUIET
from offline_hands import spoil

STORED = "Readable offline. Calculators offline"
SHOP = 1.6
"""Mbit/s of Lighthouse's slow line."""
OFFICE = 5.0
FREE = 400.0
"""Mbit/s where the line is not what is measured."""
LONGEST = 300
"""Seconds to wait for anything."""
SIZES = (100, 3000)
SMALL = 100_000
"""Bytes of an update that are few whatever the manual's size: a sixth of a second at 5 Mbit/s."""

NOTE = """globalThis.said = [];
globalThis.seen = {};
const seconds = (ms) => ms / 1000;
new PerformanceObserver((list) => {
    const first = list.getEntriesByName("first-contentful-paint")[0];
    if (first) seen.painted = seconds(first.startTime);
}).observe({type: "paint", buffered: true});
addEventListener("DOMContentLoaded", () => {
    // Two frames on, all that the page says is on the glass.
    const read = () => { seen.read = seconds(performance.now()); };
    requestAnimationFrame(() => requestAnimationFrame(read));
    const place = document.querySelector("#offline-state");
    const note = () => said.push([seconds(performance.now()), place.textContent]);
    new MutationObserver(note).observe(place, {childList: true, subtree: true});
})"""
"""Put in before a page's own scripts: when it was painted and could be read, and what it said."""

SEEN = "() => 'painted' in seen && 'read' in seen && seen"

Said = list[tuple[float, str]]
"""Seconds after the start, and what the header's line then said."""


@frozen
class Phone:
    """A phone with nothing stored, at the slow end of a line to a host."""

    page: Page
    line: SlowLine

    def said(self) -> Said:
        """What the page that is open has said so far."""
        return self.page.evaluate("said")

    def wait(self, is_so: Callable[[], bool], what: str) -> None:
        """Wait until something is so."""
        until = time.monotonic() + LONGEST
        while not _holds(is_so):
            if time.monotonic() > until:
                raise SystemExit(f"It was not so after {LONGEST} s: {what}. Said: {self.said()}")
            self.page.wait_for_timeout(100)

    def wait_for_words(self, words: str) -> float:
        """Wait until the header's line begins so; how many seconds after the start it did."""
        self.wait(lambda: any(each.startswith(words) for _, each in self.said()), words)
        return next(at for at, each in self.said() if each.startswith(words))


def _holds(is_so: Callable[[], bool]) -> bool:
    """Whether it is so; a page that is just being loaded anew cannot say."""
    with suppress(Error):
        return is_so()
    return False


@contextmanager
def phone(browser: Browser, host: Host, megabits: float) -> Iterator[Phone]:
    """A new phone on a line of its own."""
    line = SlowLine(host.port, megabits)
    context = browser.new_context(
        viewport={"width": 390, "height": 844}, ignore_https_errors=True, service_workers="allow"
    )
    context.add_init_script(NOTE)
    yield Phone(context.new_page(), line)
    context.close()
    line.end()


def first_visit(browser: Browser, host: Host) -> tuple[list[table.Row], int]:
    """Time the demo's first visit on the shop's line; its rows and the bytes of all of it."""
    with phone(browser, host, SHOP) as visitor:
        visitor.page.goto(visitor.line.url, wait_until="commit")
        visitor.wait(lambda: bool(visitor.page.evaluate(SEEN)), "a page")
        seen: dict[str, float] = visitor.page.evaluate(SEEN)
        read = seen["read"]
        text = visitor.wait_for_words("Readable offline")
        text_bytes = visitor.line.carried
        whole = visitor.wait_for_words(STORED)
        carried = visitor.line.carried
    of = "demo, first visit at 1.6 Mbit/s and 150 ms: "
    return [
        row(f"{of}first text painted", seen["painted"], "s"),
        row(f"{of}all of it there to read", read, "s", budget="at most 2 s", held=read <= 2),
        row(f'{of}"Readable offline"', text, "s", budget="at most 30 s", held=text <= 30),
        row(f"{of}fetched until then", text_bytes / 1e6, "MB"),
        row(f'{of}"{STORED}"', whole, "s"),
        row(f"{of}fetched in all", carried / 1e6, "MB"),
    ], carried


def broken_line(browser: Browser, host: Host, uncut: int) -> list[table.Row]:
    """Cut the line in the middle of the runtime; what came through in all once it is back."""
    with phone(browser, host, OFFICE) as visitor:
        visitor.line.cut_at = uncut // 2
        visitor.page.goto(visitor.line.url)
        visitor.wait_for_words("Readable offline. Calculators not stored")
        visitor.line.is_cut = False
        visitor.page.evaluate("dispatchEvent(new Event('online'))")
        visitor.wait_for_words(STORED)
        carried = visitor.line.carried
    what = "demo, line cut half-way and back again: fetched in all"
    return [
        table.Row(
            what=what, ours=carried / 1e6, unit="MB", reference=uncut / 1e6,
            against="never cut", budget="at most 1.15 times", held=carried <= 1.15 * uncut,
        )
    ]  # fmt: skip


def made_up_sites(folder: Path, count: int) -> tuple[Path, Path]:
    """A made-up manual, and the same with one word more in one step."""
    project = folder / f"manual-{count}"
    pages = write_project(project, count)
    sites = folder / f"before-{count}", folder / f"after-{count}"
    for site in sites:
        if site is sites[1]:
            page = pages / "many" / f"band-{count // 2}.md"
            text = page.read_text(encoding="utf-8")
            page.write_text(text.replace("3. Turn", "3. Slowly turn", 1), encoding="utf-8")
        command = [sys.executable, "-m", "underhoist", "build", str(project), "--site", str(site)]
        subprocess.run(command, check=True, capture_output=True)
    return sites


def update(browser: Browser, old: Host, new: Host, count: int) -> list[table.Row]:
    """Store a manual, then take the newer one, broken off half-way at first; then damage a page."""
    of = f"{count:,} procedures, "
    with phone(browser, old, OFFICE) as visitor:
        line, page = visitor.line, visitor.page
        old.asked.clear()
        page.goto(f"{line.url}many/band-{count // 2}/")
        text = visitor.wait_for_words("Readable offline")
        full, requests = line.carried, len(old.asked)
        line.megabits = FREE
        visitor.wait_for_words(STORED)
        first = [
            row(f'{of}first visit at 5 Mbit/s: "Readable offline"', text, "s"),
            row(f"{of}first visit: fetched until then", full / 1e6, "MB"),
        ]
        line.lead_to(new.port)
        line.megabits = OFFICE
        halved = broken_update(visitor, new)
        carried, asked = line.carried, len(new.asked)
        began = time.monotonic()
        page.reload()
        page.locator(".uh-notice button").click(timeout=LONGEST * 1000)
        took = time.monotonic() - began
        page.get_by_text("Slowly turn").first.wait_for(timeout=LONGEST * 1000)
        carried, asked = line.carried - carried, len(new.asked) - asked
        mended = damage(visitor, new, count)
    return [
        *first,
        table.Row(
            what=f"{of}update by one word: fetched", ours=carried / 1e3, unit="kB",
            reference=full / 1e3, against="all of the text anew",
            budget="at most 10 % of it, or 100 kB", held=carried <= max(full / 10, SMALL),
        ),
        row(f"{of}update by one word: requests", asked, "", reference=requests,
            against="all of the text anew"),
        row(f"{of}update by one word: until it is offered, at 5 Mbit/s", took, "s"),
        row(f"{of}update broken off half-way: the old manual reads on", halved, "",
            budget="1 is yes", held=halved == 1),
        row(f"{of}a damaged page is noticed: requests that mend it", mended, "",
            budget="1", held=mended == 1),
    ]  # fmt: skip


def broken_update(visitor: Phone, new: Host) -> int:
    """Cut the line once an update has begun; 1 if the old text is there, and is said to be."""
    asked = len(new.asked)
    visitor.page.reload()
    visitor.wait(lambda: len(new.asked) > asked + 1, "an update has begun")
    visitor.line.cut()
    visitor.wait_for_words("Readable offline")
    visitor.page.reload()
    visitor.wait_for_words("Readable offline")
    is_old = not visitor.page.get_by_text("Slowly turn").count()
    is_there = visitor.page.get_by_text("seat it").count() > 0
    visitor.line.is_cut = False
    return int(is_old and is_there)


def damage(visitor: Phone, host: Host, count: int) -> int:
    """Write over a stored page and open it; how often it was then asked for."""
    path = f"many/band-{count // 2 + 1}/"
    spoil(visitor.page, "text", f"{path}index.html")
    host.asked.clear()
    visitor.page.goto(visitor.line.url + path)
    visitor.page.get_by_text("seat it").first.wait_for()
    return len([each for each in host.asked if path in each])


def row(what: str, ours: float, unit: str, **more: object) -> table.Row:
    """One row, its parts in the order in which they are read."""
    return table.Row(what=what, ours=ours, unit=unit, **more)  # pyright: ignore


def main() -> None:
    """Measure all of it and enter it into the table."""
    rows: list[table.Row] = []
    with tempfile.TemporaryDirectory() as scratch, sync_playwright() as playwright:
        folder = Path(scratch)
        browser = playwright.chromium.launch(
            executable_path=CHROMIUM, args=[*QUIET, "--ignore-certificate-errors"]
        )
        with Host(site_in(folder), folder) as host:
            found, uncut = first_visit(browser, host)
            rows += [*found, *broken_line(browser, host, uncut)]
        for count in SIZES:
            before, after = made_up_sites(folder, count)
            with Host(before, folder) as old, Host(after, folder) as new:
                rows += update(browser, old, new, count)
            shutil.rmtree(before)
            shutil.rmtree(after)
        browser.close()
    sys.exit(not table.enter("install_speed", rows))


if __name__ == "__main__":
    main()
