"""What a built site holds, and what it does not."""

import json
import re
from html.parser import HTMLParser
from posixpath import dirname, join, normpath
from urllib.parse import unquote, urlsplit

from underhoist import theme
from underhoist.history import Earlier
from underhoist.pages import sheets


def html_files(project):
    return {
        path.relative_to(project.site).as_posix(): path.read_text(encoding="utf-8")
        for path in project.site.rglob("*.html")
    }


def test_every_page_is_written_with_its_own_text(built):
    from underhoist.pages import make_site

    site = make_site(
        built.result.checked.manual, built.pages, name="A small manual", earlier=Earlier()
    )
    for sheet in sheets(site):
        written = (built.site / sheet.address / "index.html").read_text(encoding="utf-8")
        assert sheet.html in written, sheet.address
        assert f"uh-kind--{sheet.kind}" in written


def test_result_counts_what_the_site_holds(built):
    assert built.result.calculators >= 3
    assert built.result.cross_links == 21
    assert len(built.result.checked.manual.procedures) == 3


PHONE_SIDE = {"manifest.webmanifest", "licences.txt"}
"""Files of the root that the phone side brings, which this site is built without."""


def test_every_link_and_every_file_of_every_page_is_there(built):
    pages = html_files(built)
    ids = {file: set(re.findall(r'\bid="([^"]+)"', html)) for file, html in pages.items()}
    missing = []
    for file, html in pages.items():
        for written in re.findall(r'(?:href|src)="([^"]*)"', html):
            parts = urlsplit(written)
            if parts.scheme or file == "404.html":
                continue
            to = normpath(join(dirname(file), unquote(parts.path))) if parts.path else file
            to = to if not (built.site / to).is_dir() else normpath(join(to, "index.html"))
            phone_side = to in PHONE_SIDE or to.startswith("assets/fonts/")
            lost = not phone_side and not (built.site / to).is_file()
            if lost or (parts.fragment and parts.fragment not in ids[to]):
                missing.append(f"{file}: {written}")
    assert missing == []


def test_nothing_is_fetched_from_elsewhere(built):
    for file, html in html_files(built).items():
        assert not re.search(r'(?:src|href|action)="(?:https?:)?//', html), file


def test_of_the_theme_nothing_is_there(built):
    ours = {path.name for path in (theme.folder() / "assets").iterdir()}
    assert {file.split("/")[1] for file in built.held() if file.startswith("assets/")} <= ours


def test_templates_and_sources_are_not_on_the_site(built):
    assert [f for f in built.held() if re.search(r"(^|/)partials/|assets/styles/|\.md$", f)] == []


def test_drawings_are_copied(built):
    source = (built.pages / "drawings/adjuster.svg").read_bytes()
    assert built.held()["drawings/adjuster.svg"] == source


def test_cards_have_their_data(built):
    held = built.held()
    card = json.loads(held["cards/data/set-band.json"])
    assert [step["number"] for step in card["steps"]] == [1, 2, 3, 4]
    assert [step["wants_second_check"] for step in card["steps"]] == [False, False, True, True]
    listed = json.loads(held["cards/data/index.json"])["procedures"]
    assert {each["id"] for each in listed} == {"set-band", "raise", "road-test"}


def test_links_in_card_data_count_from_the_cards_page(built):
    card = json.loads(built.held()["cards/data/set-band.json"])
    links = re.findall(r'href="([^"]*)"', "".join(step["html"] for step in card["steps"]))
    assert links
    for link in links:
        path = urlsplit(link).path
        assert (built.site / normpath(join("cards", path)) / "index.html").is_file(), link


def test_search_knows_the_pages_but_not_what_repeats_them(built):
    pages = json.loads(built.held()["search/documents.json"])["pages"]
    places = {each["address"] for each in pages}
    assert {"", "jobs/set-band/", "torques/wren-2/band-seat/", "faults/late/"} <= places
    assert not places & {"where-used/", "cards/", "offline/"}


def test_second_build_is_the_same_to_the_byte(built, project):
    project.build()
    first = built.held()
    assert project.held() == first
    project.build()
    assert project.held() == first


def test_weight_of_a_page_does_not_grow_with_the_manual(project):
    project.build()
    before = len(project.held()["jobs/set-band/index.html"])
    text = (project.pages / "jobs/raise.md").read_text(encoding="utf-8")
    for number in range(40):
        (project.pages / f"jobs/more-{number}.md").write_text(text, encoding="utf-8")
    project.build()
    assert len(project.held()["jobs/set-band/index.html"]) == before


def test_title_and_summary_cannot_leave_their_place_in_the_template(project):
    hostile = """'</title><script>alert(1)</script>" onload="x'"""
    project.replace("tools/lamp.md", "title: Lamp", f"title: {hostile}")
    project.replace("tools/lamp.md", "summary: For seeing.", f"summary: {hostile}")
    project.build()
    seen = Seen((project.site / "tools/lamp/index.html").read_text(encoding="utf-8"))
    assert "onload" not in seen.attributes
    assert seen.scripts == ["", ""], "the theme's own two scripts, both from files"


class Seen(HTMLParser):
    """What a browser would make of a page: attributes, and the text of its scripts."""

    def __init__(self, html):
        super().__init__()
        self.attributes, self.scripts = set(), []
        self.feed(html)

    def handle_starttag(self, tag, attrs):
        self.attributes.update(name for name, _ in attrs)
        if tag == "script":
            self.scripts.append("")

    def handle_data(self, data):
        if self.lasttag == "script" and self.scripts:
            self.scripts[-1] += data.strip()
