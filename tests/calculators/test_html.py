"""Forms and answers as HTML: structure, escaping and nothing lost of what was typed."""

from html.parser import HTMLParser

import pytest
from underhoist_calculators import all_calculators, door, get, html
from underhoist_calculators.answer import Answer

NAMES = [calculator.name for calculator in all_calculators()]


class Page(HTMLParser):
    """Keeps start tags with their attributes, and checks that tags are closed in order."""

    VOID = frozenset({"input", "br"})

    def __init__(self, html):
        super().__init__()
        self.tags = []
        self.open = []
        self.feed(html)
        assert self.open == []

    def handle_starttag(self, tag, attrs):
        self.tags.append((tag, dict(attrs)))
        if tag not in self.VOID:
            self.open.append(tag)

    def handle_endtag(self, tag):
        assert self.open.pop() == tag

    def all(self, tag):
        return [attributes for name, attributes in self.tags if name == tag]

    def named(self, name):
        return next(attributes for _, attributes in self.tags if attributes.get("name") == name)


@pytest.mark.parametrize("name", NAMES)
def test_a_form_is_well_formed_and_every_control_is_labelled(name):
    page = Page(door.form(name))
    ids = [attributes["id"] for _, attributes in page.tags if "id" in attributes]
    assert len(set(ids)) == len(ids)
    labelled = {label["for"] for label in page.all("label")}
    for control in (*page.all("input"), *page.all("select")):
        assert control.get("id") in labelled or control["aria-label"].startswith("Unit of ")
        for described in control.get("aria-describedby", "").split():
            assert described in ids


@pytest.mark.parametrize("name", NAMES)
def test_an_answer_is_well_formed_and_announced(name):
    page = Page(door.run(name, door.example(name))["answer_html"])
    assert page.tags[0] == (
        "section",
        {"class": "uh-answer", "aria-live": "polite", "aria-label": "Answer"},
    )
    assert any(attributes.get("class") == "uh-sources" for _, attributes in page.tags)
    assert any(attributes.get("class") == "uh-working" for _, attributes in page.tags)


def test_a_number_and_its_unit_are_parted():
    form = door.form("torque-units", {"torque": "9 lbf*ft"})
    page = Page(form)
    assert page.named("torque")["value"] == "9"
    assert '<option value="lbf·ft" selected>' in form


def test_a_range_and_its_unit_are_parted():
    page = Page(door.form("staged-fill", {"level-temperature": "150 to 175 °F"}))
    assert page.named("level-temperature")["value"] == "150 to 175"


@pytest.mark.parametrize("typed", ["4,2 L", "12 lb", "120 ozf·in", "<b>", "nan"])
def test_what_cannot_be_parted_is_kept_as_typed(typed):
    assert Page(door.form("torque-units", {"torque": typed})).named("torque")["value"] == typed


def test_what_was_typed_is_escaped():
    hostile = '"><script>alert(1)</script>'
    result = door.run("torque-units", {"torque": hostile, hostile: "1"})
    for shown in (result["answer_html"], door.form("torque-units", {"torque": hostile})):
        assert "<script" not in shown


def test_errors_link_to_their_fields():
    shown = door.run("torque-units", {"torque": "12 lb"})["answer_html"]
    assert "No answer yet. Mend these entries first." in shown
    assert '<a href="#torque">Torque</a>: lb is a unit of a mass' in shown


def test_a_plate_carries_its_exact_value():
    shown = door.run("torque-units", {"torque": "120 lbf·in"})["answer_html"]
    assert '<data class="uh-plate__number" value="120.0">120</data>' in shown
    assert '<span class="uh-plate__unit">pound-force inches</span>' in shown


def test_table_cells_carry_their_heading():
    shown = door.run("shift-check", door.example("shift-check"))["answer_html"]
    assert '<td data-label="Verdict">inside</td>' in shown


def test_rows_without_a_window_are_put_away():
    form = door.form("shift-check", {"window-1-2-light": "16 to 22 km/h"})
    shown, _, away = form.partition('<details class="uh-more">')
    assert "1-2, light throttle" in shown
    assert "1-2, half throttle" not in shown
    assert "1-2, half throttle" in away
    assert form.count('<details class="uh-more">') == 2


def test_what_the_family_fills_is_folded_under_a_line_that_says_it():
    form = door.form("staged-fill", {"service-fill": "4.5 L", "dry-fill": "8.8 L"})
    start = form.index('<details class="uh-more uh-more--given"><summary>From the family page: ')
    line = form[start : form.index("</summary>", start)]
    assert 'service fill <span data-value-of="service-fill">4.5 L</span>, ' in line
    assert 'dry fill <span data-value-of="dry-fill">8.8 L</span>, ' in line
    assert '<span data-value-of="between-marks">not given</span>' in line


def test_the_worked_example_is_marked_as_such_and_a_convention_is_not():
    page = Page(door.form("staged-fill"))
    assert "data-example" in page.named("drained")
    assert "data-example" in page.named("selector")
    assert "data-example" not in page.named("density")
    assert "data-example" not in page.named("level")
    assert "data-example" not in Page(door.form("staged-fill", {"drained": "4 L"})).named("drained")


def test_a_picture_stands_in_the_answer_as_drawn():
    drawn = Answer(summary="Drawn.", picture="<svg><title>A plot</title></svg>")
    shown = html.answer(get("torque-units"), drawn, {})
    assert '<figure class="uh-plot"><svg><title>A plot</title></svg></figure>' in shown


def test_a_default_stands_in_the_form_until_it_is_cleared():
    assert Page(door.form("staged-fill", {})).named("density")["value"] == "860"
    assert Page(door.form("staged-fill", {"density": ""})).named("density")["value"] == ""
