"""What is true of all pages: one each, closed by the safety line, linked, escaped."""

import re
from html.parser import HTMLParser
from posixpath import normpath

import pytest

from underhoist.check import check
from underhoist.model import Manual
from underhoist.pages import make_site, sheets
from underhoist.pages.closing import DEMO, SAFETY
from underhoist.project import Unusable

HOSTILE = """<script>alert(1)</script> " onclick="x" & <b>"""


def test_every_address_is_written_once(site):
    addresses = [sheet.address for sheet in sheets(site)]
    assert len(addresses) == len(set(addresses))
    assert all(address == "" or address.endswith("/") for address in addresses)


def test_every_page_has_what_the_theme_needs(pages):
    for sheet in pages.values():
        assert sheet.title, sheet.address
        assert sheet.summary, sheet.address
        assert sheet.html, sheet.address
        assert re.fullmatch("[a-z-]+", sheet.kind)


def test_every_page_ends_with_the_safety_line(pages):
    ending = f"<p>{SAFETY}</p>\n</footer>".replace("'", "&#39;")
    for sheet in pages.values():
        assert sheet.html.endswith(ending), sheet.address


def test_demo_says_so_on_every_page(changed):
    for sheet in sheets(changed("index.md", demo=True)):
        assert sheet.html.endswith(f"<p>{DEMO}</p>\n</footer>"), sheet.address


def test_every_rule_has_its_page_with_examples(site, pages):
    assert len(site.rules) >= 10
    for code in site.rules:
        html = pages[f"rules/{code}/"].html
        assert "uh-example--good" in html, code
        assert "uh-example--bad" in html, code


def test_every_calculator_answers_before_any_script(site, pages):
    for name in site.calculators:
        html = pages[f"calculators/{name}/"].html
        assert f'<div id="calculator" data-calculator="{name}">\n<form class="uh-calc"' in html
        answer = html.partition('class="uh-answer"')[2]
        assert 'class="uh-plate__number"' in answer or "uh-table" in answer, name
        assert "Mend these entries" not in answer, name


def test_links_between_pages_lead_somewhere(pages):
    for sheet in pages.values():
        for href in re.findall(r' href="([^"#?:]*)[^":]*"', sheet.html):
            if not href:
                continue
            to = normpath(f"/{sheet.address}{href}").strip("/")
            assert (f"{to}/" if to else "") in pages, f"{sheet.address}: {href}"


class Seen(HTMLParser):
    """The tags and attributes that a browser would see."""

    def __init__(self, html):
        super().__init__()
        self.tags, self.attributes = set(), set()
        self.feed(html)

    def handle_starttag(self, tag, attrs):
        self.tags.add(tag)
        self.attributes.update(name for name, _ in attrs)


def test_nothing_that_an_author_writes_becomes_markup(changed):
    summary = 'summary: Takes up the band\'s clearance & makes "second" clean.'
    site = changed(
        "jobs/set-band.md",
        ("title: Set the band", f"title: '{HOSTILE}'"),
        (summary, f"summary: '{HOSTILE}'"),
        ("area: bands", f"area: '{HOSTILE}'"),
        ("[Rags]", f"['{HOSTILE}']"),
        ("name: Turns to the seat", f"name: '{HOSTILE}'"),
        ("Wipe the case.", f"Wipe {HOSTILE}"),
        ("Adjuster in section", HOSTILE),
    )
    for sheet in sheets(site):
        seen = Seen(sheet.html)
        assert not seen.tags & {"script", "b"}, sheet.address
        assert not {name for name in seen.attributes if name.startswith("on")}, sheet.address


def test_page_that_somebody_wrote_goes_before_one_that_is_made(changed):
    site = changed("index.md")
    text = "---\nkind: page\ntitle: Our tools\nsummary: Own list.\n---\n"
    (site.folder / "tools/index.md").write_text(text, encoding="utf-8")
    site = make_site(check(site.folder).manual, site.folder, name="x")
    written = {sheet.address: sheet for sheet in sheets(site)}
    assert written["tools/"].title == "Our tools"


def test_front_page_is_made_where_nobody_wrote_one(tmp_path):
    nothing = Manual(families={}, procedures={}, faults={}, tools={}, hazards={}, plain={})
    site = make_site(nothing, tmp_path, name="An empty manual")
    written = {sheet.address: sheet for sheet in sheets(site)}
    assert written[""].title == "An empty manual"


@pytest.mark.parametrize(
    ("file", "said"),
    [
        ("cards/index.md", "cards/index.md: the build makes the folder cards itself."),
        ("rules/own.md", "rules/own.md: the build makes the folder rules itself."),
        ("jobs/index.md", "jobs.md and jobs/index.md would stand at one address."),
    ],
)
def test_two_pages_never_stand_at_one_address(changed, file, said):
    folder = changed("index.md").folder
    text = "---\nkind: page\ntitle: One\nsummary: One.\n---\n"
    for path in (file, "jobs.md"):
        (folder / path).parent.mkdir(exist_ok=True)
        (folder / path).write_text(text, encoding="utf-8")
    site = make_site(check(folder).manual, folder, name="x")
    with pytest.raises(Unusable) as problem:
        list(sheets(site))
    assert str(problem.value).startswith(said)


def test_list_of_procedures_names_a_few_of_each_area(changed):
    folder = changed("index.md").folder
    text = (folder / "jobs/raise.md").read_text(encoding="utf-8")
    for number in range(6):
        file = folder / f"jobs/more-{number}.md"
        file.write_text(text.replace("title: Raise", f"title: {number}. Raise"), encoding="utf-8")
    site = make_site(check(folder).manual, folder, name="x")
    html = {sheet.address: sheet.html for sheet in sheets(site)}
    named = "; ".join(f"{number}. Raise the vehicle" for number in range(4))
    few = f'lifting/">Lifting</a><p>{named}; 3 more</p></li>'
    assert '<li><a href="areas/lifting/">Lifting</a></li>' in html[""]
    assert f'<li><a href="../areas/{few}' in html["procedures/"]
    assert html["areas/lifting/"].count("<li><a") == 7
