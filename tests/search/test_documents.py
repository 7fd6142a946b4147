"""What the search is told of a page: its places with their words, nothing that repeats others."""

import json
from pathlib import Path

import pytest

from underhoist.check import check
from underhoist.pages import make_site, sheets
from underhoist.search import search_files
from underhoist.search.documents import documents
from underhoist.search.texts import parts_of, plain

MANUAL = Path(__file__).parents[1] / "good" / "smallest"


@pytest.fixture(scope="module")
def made():
    manual = check(MANUAL).manual
    site = make_site(manual, MANUAL, name="Small")
    return site, {each.address: each for each in sheets(site)}


@pytest.fixture(scope="module")
def pages(made):
    site, by_address = made
    return {each["address"]: each for each in documents(site.manual, by_address)["pages"]}


def told(html):
    return [(p.at, p.label, plain(p.do), plain(p.prose)) for p in parts_of(html)]


def test_a_heading_with_an_anchor_begins_a_place():
    html = '<p>Before.</p><h2 id="look">Look at it</h2><p>One<b>two</b>.</p><p>Three.</p>'
    assert told(html) == [("", "", "", "Before."), ("look", "Look at it", "", "Onetwo. Three.")]


def test_a_step_is_a_place_with_what_to_do_apart_from_the_rest():
    html = (
        '<ol><li class="uh-step" id="step-2"><div class="uh-step__number">2</div>'
        '<p class="uh-step__do">Drive <a href="x">it</a> in.</p><p>Why: it is loose.</p></li></ol>'
    )
    assert told(html) == [("step-2", "Step 2", "Drive it in.", "Why: it is loose.")]


@pytest.mark.parametrize(
    "html",
    [
        '<section class="uh-used"><h2>Where used</h2><p>Elsewhere</p></section>',
        '<footer class="uh-safety"><p>Follow the maker</p></footer>',
        "<svg><title>Sign</title></svg><script>let x</script>",
        '<aside class="uh-hazard"><p>HOT</p></aside>',
        "<select><option>one</option></select>",
    ],
)
def test_what_repeats_or_is_not_read_is_left_out(html):
    assert told(f"<p>Kept.</p>{html}<p>Too.</p>") == [("", "", "", "Kept. Too.")]


def test_a_word_is_a_place_without_its_other_names():
    html = (
        '<dl><div id="word-bush"><dt>bush</dt><dd>It runs in it.</dd>'
        '<dd class="uh-words__others">Also: bushing</dd></div></dl>'
    )
    assert told(html) == [("word-bush", "", "", "bush It runs in it.")]


def test_procedure(pages):
    page = pages["kestrel-3/set-band/"]
    assert (page["kind"], page["note"]) == ("procedure", "Procedure · Kestrel 3")
    steps = [each for each in page["parts"] if each["at"].startswith("step-")]
    assert steps and all(each["do"] for each in steps)


def test_fault_says_the_owners_words(pages):
    fault = check(MANUAL).manual.faults["late-shifts"]
    assert pages["faults/late-shifts/"]["said"] == fault.complaint.value


def test_lists_are_known_by_their_title_alone(pages):
    assert pages["procedures/"]["parts"] == []


def test_what_only_repeats_is_not_known_at_all(pages):
    assert {"", "kestrel-3/set-band/", "torques/kestrel-3/band-seat/"} <= pages.keys()
    assert not pages.keys() & {"where-used/", "cards/", "offline/"}


def test_words_are_told_with_their_address(manual_with_words):
    told = documents(manual_with_words, {})["words"]
    assert told == [
        {"name": "bush", "at": "#word-bush", "also": ["bushing"], "heard": ["sleeve"]},
    ]


@pytest.fixture
def manual_with_words(tmp_path):
    text = (MANUAL / "index.md").read_text()
    words = "words:\n  bush: {also: [bushing], heard: [sleeve]}\n"
    (tmp_path / "index.md").write_text(text.replace("kind: page\n", f"kind: page\n{words}"))
    return check(tmp_path).manual


def test_the_file_is_the_same_at_every_build(made):
    site, by_address = made
    (first,), (second,) = (list(search_files(site, by_address)) for _ in range(2))
    assert first == second
    assert first[0] == "search/documents.json"
    assert set(json.loads(first[1])) == {"words", "pages"}
