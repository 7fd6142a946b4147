"""A manual made of hostile texts, page by page: nothing runs, asks elsewhere or breaks."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest
from card_hands import open_cards
from hostile_manual import make_hostile
from made_once import made_once
from playwright.sync_api import Page, expect
from static_server import LASTS, StaticServer

from underhoist.policy import header

pytestmark = pytest.mark.browser

WATCH = """globalThis.stopped = [];
addEventListener("securitypolicyviolation", (event) =>
  stopped.push(`${event.violatedDirective}: ${event.blockedURI} ${event.sample}`));"""

CARD = """async ({ root, procedures, text }) => {
    const { append, remember } = await import(root + "assets/cards/record/store.js");
    const { draft } = await import(root + "assets/cards/record/events.js");
    const card = crypto.randomUUID();
    const does = (kind, value) => append(draft({ card, who: "RB", kind, value }));
    await remember("initials", "RB");
    const vehicle = {
        family: "wren-2", family_title: text, identification: text,
        tyre: text, axle: text, odometer: text,
    };
    await does("start", { vehicle, complaint: text, fault: "late" });
    for (const id of procedures) {
        const procedure = await (await fetch(root + "cards/data/" + id + ".json")).json();
        for (const step of procedure.steps) step.html += text;
        await does("add", { procedure });
    }
    return card;
}"""
VIEWS = ("1", "2", "add", "fault", "fetch", "findings", "questions", "jobs", "vehicle", "share",
         "sheet", "owner", "parts", "close", "__proto__", "constructor")  # fmt: skip
SAME = ("rules/", "front-matter/")
"""Pages that no page of a manual changes: the first of each is enough."""


@pytest.fixture(scope="session")
def hostile(tmp_path_factory):
    own = tmp_path_factory.getbasetemp()
    return made_once(own / "hostile", build_hostile)


def build_hostile(folder: Path) -> str:
    """Write and build the hostile manual; what went wrong, or nothing."""
    taken = make_hostile(folder).taken
    if taken < 80:
        return f"only {taken} hostile texts got past the check"
    command = [sys.executable, "-m", "underhoist", "build", str(folder)]
    built = subprocess.run(command, capture_output=True, text=True, check=False)
    return built.stdout + built.stderr if built.returncode else ""


class Watched:
    """A page of the hostile manual, and everything on it that should not be."""

    def __init__(self, page: Page, url: str) -> None:
        self.page, self.url = page, url
        self.found: list[str] = []
        self.harmless: tuple[str, ...] = ()
        page.add_init_script(WATCH)
        page.on("dialog", lambda dialog: self._tell(f"dialog {dialog.message}", dialog.dismiss))
        page.on("console", lambda said: said.type == "error" and self._tell(said.text))
        page.on("pageerror", lambda error: self._tell(str(error)))
        page.on("request", lambda request: self._asked(request.url))

    def _tell(self, what: str, then=lambda: None) -> None:
        self.found.append(f"{self.page.url[:120]}: {what[:200]}")
        then()

    def _asked(self, url: str) -> None:
        if not url.startswith((self.url, f"blob:{self.url}", "about:blank")):
            self._tell(f"asked {url}")

    def forgive(self, *words: str) -> None:
        """Leave out what is no harm, now and later: the console tells some of it late.

        Chromium tells of handlers already when a text is parsed to be sorted, before anything of it
        is let in; and a step's drawing is asked for at this site, where this one is not.
        """
        self.harmless = words

    def _harm(self, told: list[str]) -> list[str]:
        return [each for each in told if not any(word in each for word in self.harmless)]

    def is_clean(self) -> None:
        """Nothing ran, nothing was stopped, nothing was asked elsewhere."""
        assert self.page.evaluate("globalThis.got ?? 0") == 0, self.page.url
        assert self._harm(self.page.evaluate("globalThis.stopped")) == [], self.page.url
        assert self._harm(self.found) == []


@pytest.fixture
def watched(hostile, new_page):
    server = StaticServer(hostile / "site", LASTS)
    server.headers["Content-Security-Policy"] = header()
    yield Watched(new_page, server.url)
    server.stop()


def addresses(site: Path) -> list[str]:
    """Every page, and of those that are always the same the first of each kind."""
    files = sorted(path.relative_to(site).as_posix() for path in site.rglob("*.html"))
    kept = [file for file in files if not file.startswith(SAME)]
    return kept + [next(file for file in files if file.startswith(kind)) for kind in SAME]


def test_no_page_of_a_hostile_manual_runs_or_asks_anything(hostile, watched):
    pages = addresses(hostile / "site")
    assert len(pages) > 60
    for address in pages:
        watched.page.goto(watched.url + address)
        watched.is_clean()


def test_search_shows_hostile_titles_as_text(watched):
    for words in ("zzyx", "<script>", "constructor", "__proto__", "x" * 5_000):
        watched.page.goto(f"{watched.url}search.html")
        watched.page.get_by_role("searchbox").fill(words)
        watched.page.wait_for_timeout(300)
        if words == "zzyx":
            expect(watched.page.locator("#results")).to_contain_text("<script>globalThis.got")
        watched.is_clean()


def test_a_card_of_hostile_texts_shows_them_as_text(watched):
    page = watched.page
    watched.forgive("inline event handler", "script-src-attr", "404 (File not found)")
    open_cards(page, watched.url)
    text = "<img src=x onerror='globalThis.got=1'><script>globalThis.got=1</script>"
    asked = {"root": watched.url, "procedures": ["set-band", "constructor"], "text": text}
    card = page.evaluate(CARD, asked)
    for view in VIEWS:
        page.goto("about:blank")
        open_cards(page, watched.url, f"#card/{card}/{view}")
        shown = page.locator("#cards")
        assert shown.locator("script, [onerror], [onload], img[src=x]").count() == 0, view
        watched.is_clean()
    open_cards(page, watched.url)
    expect(page.locator("#cards")).to_contain_text("onerror='globalThis.got=1'")
    watched.is_clean()
