"""The pages' content security policy: everything works under it, and nothing foreign gets in."""

import json
import re
from pathlib import Path

import card_hands
import draft_hands
import pytest
from playwright.sync_api import Page

from underhoist.policy import header

pytestmark = pytest.mark.browser

KINDS: dict[str, str] = json.loads((Path(__file__).parent / "kinds.json").read_text())
WATCH = """globalThis.stopped = [];
addEventListener("securitypolicyviolation", (event) =>
  stopped.push(`${event.violatedDirective}: ${event.blockedURI} ${event.sourceFile}`));"""
ELSEWHERE = re.compile(
    rb"""<(?:script|link|img|iframe|source|object|embed|form)\b[^>]*?
    \b(?:src|href|srcset|data|action)\s*=\s*["']?\s*(?:[a-z]+:)?//|
    url\(\s*["']?(?:[a-z]+:)?//|@import\s+(?:url|["'])|\bimport\s*\(?\s*["'](?:[a-z]+:)?//""",
    re.VERBOSE | re.IGNORECASE,
)
"""What a browser would fetch from another origin on its own."""


@pytest.fixture
def page(new_page):
    """Of a new phone: what watches a page stays with it."""
    return new_page


@pytest.fixture
def strict(server, page: Page):
    """A site whose host sends the header too, and a page that keeps what is stopped or fetched."""
    server.headers["Content-Security-Policy"] = header()
    page.add_init_script(WATCH)
    page.told, page.asked = [], []
    page.on("console", lambda said: page.told.append(said.text) if said.type == "error" else None)
    page.on("pageerror", lambda error: page.told.append(str(error)))
    page.on("request", lambda request: page.asked.append(request.url))
    return server.url


def nothing_stopped(page: Page, url: str) -> None:
    assert page.evaluate("globalThis.stopped") == [], page.url
    assert [each for each in page.told if "404" not in each] == [], page.url
    strangers = [each for each in page.asked if not each.startswith((url, "blob:" + url))]
    assert strangers == [], page.url


def test_every_kind_of_page_works_under_it(page: Page, strict: str) -> None:
    for address in KINDS.values():
        page.goto(strict + address)
        for filled_by_script in page.locator("#cards, #stored, #results").all():
            filled_by_script.locator("> *").first.wait_for()
        nothing_stopped(page, strict)


def test_calculators_answer_under_it(page: Page, strict: str) -> None:
    page.goto(strict + KINDS["torque-units"])
    page.locator("form.uh-calc input").first.fill("twelve")
    page.locator("form.uh-calc button[type=submit]").click()
    page.locator("[aria-invalid=true]").first.wait_for(timeout=60_000)
    nothing_stopped(page, strict)


def test_cards_and_drafting_work_under_it(page: Page, strict: str) -> None:
    card_hands.start_card(page, strict, "set-band")
    card_hands.tick_off(page)
    nothing_stopped(page, strict)
    draft_hands.open_drafting(page, strict, "#new")
    nothing_stopped(page, strict)


def test_what_is_smuggled_into_a_page_does_not_run(page: Page, strict: str) -> None:
    """Each of these ran before there was a policy; now each is stopped and reported."""
    failed: dict[str, str | None] = {}
    page.on("requestfailed", lambda request: failed.update({request.url: request.failure}))
    page.goto(strict)
    page.evaluate("""() => {
      const script = document.createElement("script");
      script.textContent = "globalThis.got = 'inline script'";
      document.body.append(script);
      const image = document.createElement("img");
      image.setAttribute("onerror", "globalThis.got = 'handler'");
      image.src = "none.png";
      document.body.append(image);
      const link = document.createElement("a");
      link.href = "javascript:globalThis.got='address'";
      document.body.append(link);
      link.click();
      const base = document.createElement("base");
      base.href = "https://elsewhere.example/";
      document.head.append(base);
      const foreign = document.createElement("script");
      foreign.src = "https://elsewhere.example/run.js";
      document.body.append(foreign);
      return fetch("https://elsewhere.example/").catch(() => {});
    }""")
    page.wait_for_function("() => stopped.length >= 6")
    assert page.evaluate("globalThis.got ?? 'nothing'") == "nothing"
    assert {each: failed[each] for each in page.asked if "elsewhere" in each} == {
        "https://elsewhere.example/run.js": "csp"  # before it left the browser
    }
    stopped = {each.partition(":")[0] for each in page.evaluate("stopped")}
    assert stopped >= {"script-src-elem", "script-src-attr", "base-uri", "connect-src"}


def test_no_file_of_the_site_names_another_origin_to_fetch_from(site: Path) -> None:
    """Every page, style sheet and script; links that a person may follow are no requests."""
    files = [f for f in site.rglob("*") if f.suffix in {".html", ".css", ".js", ".mjs", ".svg"}]
    assert len(files) > 400
    found = {
        (file.relative_to(site).as_posix(), each[0])
        for file in files
        if "runtime" not in file.relative_to(site).parts
        for each in [ELSEWHERE.search(file.read_bytes())]
        if each
    }
    assert found == set()


def test_every_page_has_it_and_no_style_or_handler_of_its_own(site: Path) -> None:
    pages = list(site.rglob("*.html"))
    assert len(pages) > 300
    for page in pages:
        text = page.read_text(encoding="utf-8")
        assert text.count('http-equiv="Content-Security-Policy"') == 1, page
        tags = re.findall(r"<[a-z][^<>]*>", text)
        inline = [tag for tag in tags if re.search(r"\s(style|on[a-z]+)=|^<style", tag)]
        assert inline == [], page
