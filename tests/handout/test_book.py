"""A set as a book, read back from its PDF: numbers, procedures, torques."""

from io import BytesIO

import pypdfium2
import pytest
from chromium import CHROMIUM
from pypdf import PdfReader

from underhoist.book import book
from underhoist.book.forms import form_parts
from underhoist.book.index import index
from underhoist.book.numbers import read
from underhoist.book.torques import torque_rows
from underhoist.bound import Choice, chosen, grouped, headless, name_of
from underhoist.project import Unusable

pytestmark = pytest.mark.browser
SET = ("set-band", "fit-pan-gasket", "raise-vehicle")


def flat(text):
    """The words alone: a PDF keeps neither the spaces nor the lines of the text."""
    return "".join(text.split())


@pytest.fixture(scope="module")
def sheets(demo):
    return chosen(demo, Choice(procedures=SET))


@pytest.fixture(scope="module")
def pdf(demo, modules, sheets, printer):
    """Printed by the tests' Chromium, which opens no windows; the labels take an installed one."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv(headless.VARIABLE, CHROMIUM or printer)
        return book(demo, sheets, modules, subject="Bands and pan").pdf


@pytest.fixture(scope="module")
def pages(pdf):
    """The text of each page; the cover is page 1."""
    texts = (page.get_textpage().get_text_bounded() for page in pypdfium2.PdfDocument(pdf))
    return ["", *map(flat, texts)]


def contents(pages, first_torque):
    return "".join(pages[2:first_torque])


def test_every_entry_of_the_contents_has_its_page(pdf, pages, sheets):
    numbers = read(pdf)
    listed = contents(pages, numbers["torques"])
    held = [each for each in sheets if each.kind != "torque" and each.address]
    assert len(held) > 10
    for sheet in held:
        number = numbers[name_of(sheet.address)]
        assert flat(sheet.title) in pages[number], sheet.title
        assert f"{flat(sheet.title)}{number}" in listed, sheet.title
        assert str(number) == pages[number][-len(str(number)) :] or str(number) in pages[number]


def test_the_outline_leads_to_the_same_pages(pdf, sheets):
    reader, numbers = PdfReader(BytesIO(pdf)), read(pdf)
    found = {}
    for item in reader.outline:
        for each in item if isinstance(item, list) else [item]:
            found[each.title] = reader.get_destination_page_number(each) + 1
    for sheet in sheets:
        if sheet.kind == "procedure":
            assert found[sheet.title] == numbers[name_of(sheet.address)]


def test_every_procedure_of_the_set_is_in_with_all_its_steps(demo, pages, sheets):
    text = "".join(pages)
    for sheet in sheets:
        if sheet.kind == "procedure":
            assert [step.text for step in sheet.steps if flat(step.text) not in text] == []


def test_all_torques_of_the_set_are_in_the_table_with_their_unit_in_words(demo, pdf, pages, sheets):
    numbers = read(pdf)
    rows = [row for part in torque_rows(demo, sheets) for row in part.rows]
    assert len(rows) >= len(demo.manual.families["kestrel-3"].fasteners)
    start = numbers["torques"]
    table = "".join(pages[start : numbers["families/kestrel-3"]])
    for row in rows:
        assert flat(f"{row.number} {row.words} {row.mark}") in table, row.name
        assert flat(row.name) in table
    assert {row.mark for row in rows} >= {"INCH", "FOOT"}


def test_an_inch_pound_is_marked_inch_and_a_foot_pound_foot(demo, sheets):
    for part in torque_rows(demo, sheets):
        for row in part.rows:
            wanted = {"pound-force inches": "INCH", "pound-force feet": "FOOT"}.get(row.words, "")
            assert row.mark == wanted


def test_cover_running_head_and_page_number(demo, pages):
    assert flat(demo.name) in pages[1]
    assert flat("Bands and pan") in pages[1]
    assert flat("Its figures are invented") in pages[1]
    assert "Contents" in pages[2]
    assert all(str(number) in text for number, text in enumerate(pages) if number > 1)


def test_no_page_is_empty(pages):
    foot = 60  # characters of head and foot
    assert [number for number, text in enumerate(pages) if number and len(text) < foot] == []


def test_the_chapters_stand_in_the_order_of_their_kinds(pdf, sheets):
    numbers = read(pdf)
    at = [
        min(numbers[name_of(each.address)] for each in group.sheets)
        for group in grouped(sheets)
        if group.kind != "torque"
    ]
    assert at == sorted(at)


def test_the_index_names_the_pages_that_use_a_thing_and_leads_from_other_names(demo, sheets):
    entries = {each.name: each for letter in index(demo, sheets) for each in letter.entries}
    wrench = entries["Inch-pound torque wrench"]
    assert wrench.place == "tools/inch-pound-wrench"
    assert "kestrel-3/set-band" in wrench.users
    there = {name_of(each.address) for each in sheets}
    assert there >= {user for each in entries.values() for user in each.users}
    assert (entries["hood"].see, entries["hood"].place) == ("bonnet", "words.word-bonnet")
    assert "Throttle cable, Heron 4" not in entries, "no page of the set tells what it is"


def test_the_index_is_printed_with_the_numbers_of_the_pages(pdf, pages):
    numbers = read(pdf)
    printed = "".join(pages[numbers["index"] : numbers["job-sheet"]])
    at = numbers["tools/inch-pound-wrench"]
    assert flat(f"Inch-pound torque wrench {at}, ") in printed
    assert "888" not in printed


def test_a_calculator_is_its_worked_example_and_a_form_to_fill_in(demo, pdf, pages):
    number = read(pdf)["calculators/torque-units"]
    text = "".join(pages[number : number + 2])
    assert flat("120 lbf·in is 13.6 N·m") in text
    assert flat("1 lbf·in = 0.112984829 N·m") in text
    assert flat("To fill in by hand") in text
    assert flat("Work it out") not in text
    calculator = demo.calculators["torque-units"]
    rows = [row for part in form_parts(calculator) for row in part.rows]
    assert [row.name for row in rows] == [field.label for field in calculator.fields]
    assert rows[0].example == "120 lbf·in"


def test_what_follows_stands_on_the_page_of_the_last_step(pages, sheets):
    for sheet in sheets:
        if sheet.steps:
            last = flat(sheet.steps[-1].text)
            assert any(last in text and "Whatfollows" in text for text in pages), sheet.title


def test_the_pdf_is_tagged_and_says_its_language_and_title(pdf):
    root = PdfReader(BytesIO(pdf)).trailer["/Root"]
    assert root["/MarkInfo"]["/Marked"]
    assert root["/StructTreeRoot"]
    assert root["/Lang"] == "en-GB"
    assert PdfReader(BytesIO(pdf)).metadata.title == "Saltmarsh Lane manual, Bands and pan"


def test_without_a_chromium_it_says_how_to_get_one(monkeypatch):
    monkeypatch.delenv(headless.VARIABLE, raising=False)
    monkeypatch.setattr(headless.shutil, "which", lambda name: None)
    with pytest.raises(Unusable, match="sudo apt install chromium"):
        headless.chromium()


def test_a_chromium_that_is_named_must_be_there(monkeypatch):
    monkeypatch.setenv(headless.VARIABLE, "/nowhere/chromium")
    with pytest.raises(Unusable, match="names /nowhere/chromium, and there is no such program"):
        headless.chromium()
