"""Each kind of page has the style sheets that its own text and its scripts ask for."""

import json
import re
from pathlib import Path

import pytest
from jinja2 import Environment, FileSystemLoader

from underhoist import theme

pytestmark = pytest.mark.browser

HERE = Path(__file__).parent
ROOT = HERE.parents[1]
ASSETS = ROOT / "site_overrides" / "assets"
KINDS: dict[str, str] = json.loads((HERE / "kinds.json").read_text(encoding="utf-8"))
ENGINE = ROOT / "calculators" / "underhoist_calculators"

STARTS = {
    'id="calculator"': ("phone/calculator.js", "cards/link/write-back.js"),
    'id="fault"': ("fault/start.js",),
    'id="cards"': ("cards/start.js",),
    'id="drafts"': ("drafting/start.js",),
    'id="stored"': ("phone/stored.js",),
    'id="results"': ("search/page.js",),
}
"""What `phone/start.js` brings in, by what stands on a page."""
ANSWERS = {
    'id="calculator"': [ENGINE / "html.py"],
    'id="fault"': [ENGINE / "fault_finding" / "html.py"],
    'id="cards"': [ENGINE / "fault_finding" / "html.py"],
}
"""What writes HTML in the calculators' thread."""
NAMED = re.compile(r"uh-[a-z][a-z0-9_-]*")
LOADED = re.compile(r"""(?:from|import)\s*\(?\s*"(\.[^"]+\.js)\"""")


ENVIRONMENT = Environment(loader=FileSystemLoader(theme.folder()), autoescape=True)
RULES = """(text) => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(text);
    return [...sheet.cssRules].map(({ cssText }) => cssText.replace(/\\s+/g, ""));
}"""


def scripts(entry: str) -> set[Path]:
    """All modules behind an entry, those that are loaded later too."""
    found = {ASSETS / entry}
    waiting = list(found)
    while waiting:
        file = waiting.pop()
        for each in LOADED.findall(file.read_text(encoding="utf-8")):
            other = (file.parent / each).resolve()
            if other.is_file() and other not in found:
                found.add(other)
                waiting.append(other)
    return found


def words(html: str) -> set[str]:
    """Every class that may come to stand on the page."""
    files = {ASSETS / "look" / "paper.js"} | scripts("phone/offline-state.js")
    for mark, entries in STARTS.items():
        if mark in html:
            files |= {each for entry in entries for each in scripts(entry)}
            files |= set(ANSWERS.get(mark, []))
    text = html + "".join(file.read_text(encoding="utf-8") for file in files)
    return set(NAMED.findall(text))


def styled(site: Path, sheet: str) -> set[str]:
    """The classes that a sheet has rules for."""
    text = re.sub(r"/\*.*?\*/", "", (site / sheet).read_text(encoding="utf-8"), flags=re.DOTALL)
    return {each.removeprefix(".") for each in re.findall(r"\.uh-[a-z][a-z0-9_-]*", text)}


@pytest.mark.parametrize("kind", list(KINDS))
def test_a_page_has_every_sheet_that_styles_what_is_on_it(site: Path, kind: str) -> None:
    path = KINDS[kind].partition("?")[0]
    file = site / path / "index.html" if path.endswith("/") or not path else site / path
    html = file.read_text(encoding="utf-8")
    linked = [each for each in theme.SHEETS if re.search(rf'href="[^"]*{each}"', html)]
    assert linked[0] == "assets/underhoist.css"
    assert linked[-1] == "assets/print.css"
    known = set().union(*(styled(site, each) for each in linked))
    for sheet in set(theme.SHEETS) - set(linked):
        assert (styled(site, sheet) - known) & words(html) == set(), sheet


def test_paper_holds_up_no_screen(site: Path) -> None:
    """The sheet for paper is asked for as such, and has nothing for the screen."""
    html = (site / "index.html").read_text(encoding="utf-8")
    assert re.search(r'<link rel="stylesheet" href="[^"]*assets/print\.css" media="print">', html)


@pytest.mark.parametrize("sheet", theme.SHEETS)
def test_without_comments_and_blanks_a_sheet_says_the_same(site: Path, same_page, sheet: str):
    written = ENVIRONMENT.get_template(sheet).render()
    sent = (site / sheet).read_text(encoding="utf-8")
    assert len(sent) < len(written)
    rules = same_page.evaluate(RULES, written)
    assert rules and same_page.evaluate(RULES, sent) == rules
