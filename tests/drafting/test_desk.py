"""The desk finds what the check finds, draft by draft, and makes the page that the build makes."""

import json
import shutil

import pytest
from cases import SMALLEST, all_cases, checked_on_disk, sources

from underhoist.check import check
from underhoist.drafting import door
from underhoist.drafting.desk import Desk
from underhoist.drafting.difference import difference
from underhoist.drafting.shown import PART, UNFINISHED
from underhoist.drafting.sources import from_json, to_json
from underhoist.pages import make_site, sheets
from underhoist.rules.not_written_yet import CODE as NOT_WRITTEN_YET

CASES = all_cases()
BAND = "kestrel-3/set-band.md"


@pytest.fixture(scope="module")
def smallest():
    return sources()


@pytest.fixture
def desk(smallest, tmp_path):
    return Desk(smallest, tmp_path)


@pytest.fixture(scope="module")
def disk(tmp_path_factory):
    return shutil.copytree(SMALLEST, tmp_path_factory.mktemp("disk") / "manual")


@pytest.fixture(scope="module")
def one_desk(smallest, tmp_path_factory):
    """One desk for all: what a draft leaves behind would show in the next."""
    return Desk(smallest, tmp_path_factory.mktemp("desk"))


def test_there_are_many_cases():
    assert len(CASES) >= 60


@pytest.mark.parametrize(("name", "file", "text"), CASES, ids=[case[0] for case in CASES])
def test_a_draft_has_the_findings_of_the_check(one_desk, disk, name, file, text):
    looked = one_desk.look(file, text)
    wanted = checked_on_disk(disk, file, text)
    assert looked["own"] == [each for each in wanted if each["file"] == file]
    assert looked["elsewhere"] == [each for each in wanted if each["file"] != file]
    one_desk.page()


def test_the_sources_come_back_from_json_as_they_were(smallest):
    assert from_json(to_json(smallest)) == smallest


def test_the_manual_itself_has_no_finding(desk, smallest):
    for file, text in smallest.pages.items():
        assert desk.look(file, text) == {"own": [], "elsewhere": []}


def test_what_a_draft_breaks_elsewhere_is_told_and_ends_with_the_next_draft(desk, smallest):
    text = smallest.pages["tools/slide-hammer.md"]
    looked = desk.look("tools/slide-hammers.md", text)
    assert looked["elsewhere"] == []
    family = smallest.pages["families/kestrel-3.md"].replace("band-seat", "band-seats")
    looked = desk.look("families/kestrel-3.md", family)
    assert {each["file"] for each in looked["elsewhere"]} == {BAND}
    assert {each["code"] for each in looked["elsewhere"]} == {"dead-reference"}
    assert desk.look(BAND, smallest.pages[BAND]) == {"own": [], "elsewhere": []}


def test_a_fault_that_the_manual_has_already_is_not_laid_at_the_draft(tmp_path):
    folder = shutil.copytree(SMALLEST, tmp_path / "manual")
    page = folder / "any-unit" / "leak-check.md"
    page.write_text(page.read_text().replace("minutes:", "minutos:"), encoding="utf-8")
    assert [each.code for each in check(folder).findings]
    desk = Desk(sources(folder), tmp_path / "desk")
    assert desk.look(BAND, desk.sources.pages[BAND])["elsewhere"] == []


def test_the_page_is_the_one_that_the_build_makes(desk, smallest):
    site = make_site(check(SMALLEST).manual, SMALLEST, name="Small")
    built = {sheet.address: sheet for sheet in sheets(site)}
    for file, text in smallest.pages.items():
        desk.look(file, text)
        shown = desk.page()
        assert shown["html"].endswith(str(built[shown["address"]].html)), file


def test_a_page_whose_facts_have_faults_still_shows_its_text(desk, smallest):
    desk.look(BAND, smallest.pages[BAND].replace("minutes:", "minutos:"))
    html = desk.page()["html"]
    assert UNFINISHED in html
    assert '<ol class="uh-steps">' in html


def test_no_markup_of_an_author_comes_through(desk, smallest):
    bad = '<script>alert(1)</script> <img src=x onerror="alert(1)"> [x](javascript:alert(1))'
    desk.look(BAND, smallest.pages[BAND].replace("## Steps", f"{bad}\n\n## Steps"))
    html = desk.page()["html"]
    assert "<script" not in html and "<img src=x" not in html
    assert 'href="javascript' not in html


@pytest.mark.parametrize("file", ["../outside.md", "/outside.md", "a/../../outside.md"])
def test_a_path_out_of_the_manual_is_refused(desk, tmp_path, file):
    with pytest.raises(ValueError, match="leads out of the manual's folder"):
        desk.look(file, "---\nkind: page\n---\n")
    assert not (tmp_path.parent / "outside.md").exists()


def test_a_new_page_of_every_kind_lacks_only_what_the_author_knows(desk, smallest):
    assert smallest.blanks[0].kind == "procedure"
    assert len(smallest.blanks) >= 6
    for each in smallest.blanks:
        file = f"{each.folder}/new-page.md".lstrip("/")
        found = desk.look(file, each.text)["own"]
        assert {finding["code"] for finding in found} == {NOT_WRITTEN_YET}, each.kind
        assert desk.page()["html"]


def test_what_a_page_may_refer_to_is_offered_by_its_shortest_name(desk, smallest):
    desk.look(BAND, smallest.pages[BAND])
    names = desk.names()
    assert {"scheme": "torque", "id": "band-seat", "title": "Band seat"} in [
        {**each, "title": "Band seat"} for each in names
    ]
    assert {each["scheme"] for each in names} >= {"torque", "procedure", "tool", "hazard", "calc"}
    for each in names[:20]:
        text = f"{smallest.pages[BAND]}\n<{each['scheme']}:{each['id']}>\n"
        found = desk.look(BAND, text)["own"]
        assert "dead-reference" not in {finding["code"] for finding in found}


def test_a_difference_is_told_by_lines():
    assert difference("a\nb\nc", "a\nB\nc") == [" a", "-b", "+B", " c"]
    assert difference("a", "a") == []


def test_the_door_answers_in_json_and_refuses_what_it_does_not_know(smallest):
    assert door.open_desk(to_json(smallest)) == "null"
    asked = {"ask": "look", "file": BAND, "text": smallest.pages[BAND] + "\ud800"}
    answer = json.loads(door.ask(json.dumps(asked)))
    assert [each["code"] for each in answer["own"]] == ["unreadable-page"]
    with pytest.raises(ValueError, match=r"Nothing is known of colour\."):
        door.ask('{"ask": "colour"}')


def test_a_faults_order_is_drafted_while_other_facts_cannot_be_read(desk, smallest):
    file = "faults/late-shifts.md"
    text = smallest.pages[file].replace("summary:", "sumary:")
    desk.look(file, text)
    html = desk.page()["html"]
    assert html.startswith(f"<p>{PART}</p>")
    assert "In this order the cause is known after 10 minutes on average" in html


def test_a_fault_without_a_table_is_its_text(desk, smallest):
    file = "faults/late-shifts.md"
    head, _, rest = smallest.pages[file].partition("causes:")
    desk.look(file, f"{head}causes: soon\nchecks:{rest.partition('checks:')[2]}")
    assert UNFINISHED in desk.page()["html"]
