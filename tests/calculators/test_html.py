"""Forms and answers as HTML: structure, escaping and nothing lost of what was typed."""

import re
from html.parser import HTMLParser

import pytest
from attrs import evolve
from underhoist_calculators import all_calculators, door, get, html
from underhoist_calculators.answer import Answer, Exact, Plate, Table
from underhoist_calculators.unrounded import unrounded

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


def exact_values(name, entries):
    """The items under "Exact value", one tuple a plate that has them."""
    shown = door.run(name, entries)["answer_html"]
    parts = shown.split('<details class="uh-plate__exact"><summary>Exact value</summary><ul>')[1:]
    return [tuple(re.findall("<li>(.*?)</li>", part.split("</details>")[0])) for part in parts]


def test_an_exact_value_is_one_tap_away_in_every_unit_of_the_plate():
    # By definition: 120 lbf·in = 120 x 0.112984829027617 N·m, and 9.80665 N·m to the kgf·m.
    assert exact_values("torque-units", {"torque": "120 lbf·in"}) == [
        (
            "120 pound-force inches",
            "13.5581794833 newton metres",
            "10 pound-force feet",
            "1.38254954376 kilogram-force metres",
            "138.254954376 kilogram-force centimetres",
        )
    ]


def test_a_plate_that_shows_its_value_whole_has_nothing_to_tap():
    plate = Plate(
        name="Back off", number="1 1/2", unit="turns", others=("540°",),
        exact=Exact(1.5, "turn"), exact_others=(Exact(540.0, "degree"),),
    )  # fmt: skip
    assert unrounded(plate) == ()
    assert unrounded(evolve(plate, exact=Exact(1.51, "turn"))) == ("1.51 turns", "540 degrees")


def test_a_range_gives_both_ends_exactly():
    plate = Plate(
        name="Loads it to", number="39 to 66", unit="per cent",
        exact=Exact(65.82, "percent"), exact_low=Exact(39.49, "percent"),
    )  # fmt: skip
    assert unrounded(plate) == ("39.49 to 65.82 per cent",)


def test_a_direction_told_in_words_is_not_told_again_by_a_sign():
    plate = Plate(name="Reverse", number="2.355", unit="backwards", exact=Exact(-2.3548, ""))
    assert unrounded(plate) == ("2.3548 backwards",)
    signed = evolve(plate, number="\u22122.355", unit="turns")
    assert unrounded(signed) == ("\u22122.3548 turns",)


def test_the_exact_pour_is_the_one_before_the_jug():
    # By hand: 4.41 L out less 0.5 L is 3.91 L; a jug shows 3.9 L.
    (pour,) = exact_values("staged-fill", {**door.example("staged-fill"), "drained": "4.41 L"})
    assert pour[0] == "3.91 litres"


def test_the_exact_top_up_and_what_is_taken_out_are_the_ones_before_the_jug():
    at = {**door.example("staged-fill"), "fluid-temperature": "70 °C"}
    # By hand: 0.6278 / 860 x 55 = 0.04015; exp(−0.04015 x 1.03212) = 0.95941; 0.7 x 0.5 L x that.
    (add,) = exact_values("staged-fill", {**at, "level": "0.7 below full"})
    assert add[0].startswith("0.33579")
    # Taken out warm, so measured as it is: 0.73 of half a litre.
    assert exact_values("staged-fill", {**at, "level": "0.73 above full"})[0][0] == "0.365 litres"


def test_a_table_that_fits_across_a_phone_is_marked():
    def css(*cells):
        table = Table(title="T", heads=("Throttle and vacuum", "Lost"), rows=(cells,))
        shown = html.answer(get("torque-units"), Answer(summary="S.", tables=(table,)), {})
        return re.findall('<table class="(.*?)">', shown)

    assert css("light, 16 inHg", "x" * 20) == ["uh-table uh-table--narrow"]
    assert css("light, 16 inHg", "x" * 21) == ["uh-table"]


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
    assert (
        '<span class="uh-more__hold">service fill '
        '<span data-value-of="service-fill">4.5 L</span></span> '
    ) in line
    assert 'dry fill <span data-value-of="dry-fill">8.8 L</span>' in line
    assert 'volume between the marks <span data-value-of="between-marks"></span>' in line


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
