"""Calculators filled in with what a family states."""

from urllib.parse import parse_qs, urlsplit

import pytest

from underhoist.pages.here import Here
from underhoist.pages.presets import address, for_adjustment, for_family, for_page, query
from underhoist.pages.torque_units import CALCULATOR, FIELD


def entries(site, name):
    way = address(site.calculators[name], for_family(site.manual.families["wren-2"]))
    return {key: texts[0] for key, texts in parse_qs(urlsplit(way).query, True).items()}


def test_every_value_of_the_family_is_typed_text_with_its_unit(site):
    values = for_family(site.manual.families["wren-2"])
    assert values["fluid.accepts"] == "Dunmere D3"
    assert values["fluid.service_fill"] == "4.5 L"
    assert values["fluid.level.temperature"] == "65 to 80 °C"
    assert values["window.1-2.light"] == "16 to 22 km/h"
    assert values["reference.tyre"] == "215/75 R 15"
    assert values["modulator.turn"] == "0.6 inHg"
    assert values["modulator.cut_off"] == "17 inHg"
    assert values["governor.2.speed"] == "60 km/h"
    assert values["governor.2.pressure"] == "31 psi"
    assert values["signal"] == "vacuum"
    # Its points begin above its 1-2 window at light throttle.
    assert values["governor.law"] == "plain"


def test_torque_opens_a_field_that_takes_one(site):
    field = site.calculators[CALCULATOR].field(FIELD)
    assert field.fills_from == "torque"


def test_every_dotted_name_that_a_field_asks_for_is_known(site):
    known = for_family(site.manual.families["wren-2"])
    for calculator in site.calculators.values():
        for field in calculator.fields:
            wanted = field.fills_from or ""
            if wanted.startswith(("fluid.", "reference.", "modulator.")):
                assert wanted in known, f"{calculator.name}: {wanted}"


def test_link_fills_what_the_family_has_and_empties_what_it_has_not(site):
    found = entries(site, "shift-check")
    assert found["window-1-2-light"] == "16 to 22 km/h"
    assert found["window-2-3-full"] == ""


def test_filled_entries_are_read_by_the_calculator(site):
    from underhoist_calculators import door

    for name in ("staged-fill", "shift-check"):
        given = {key: text for key, text in entries(site, name).items() if text}
        errors = door.run(name, {**door.example(name), **given})["errors"]
        assert not errors.keys() & given.keys(), errors


def test_calculator_that_asks_nothing_of_a_family_has_no_link(site):
    values = for_family(site.manual.families["wren-2"])
    assert address(site.calculators["torque-units"], values) is None


def test_band_setting_gives_seat_turns_and_pitch(site):
    family = site.manual.families["wren-2"]
    # Twenty threads an inch: 25.4 / 20 mm, by the definition of the inch.
    assert for_adjustment(family, family.adjustments["front-band"]) == {
        "adjustment.back_off": "1 1/2 turns",
        "adjustment.seat": "120 lbf·in",
        "adjustment.pitch": "1.27 mm",
    }


def test_calculator_opens_filled_in_from_a_page_of_one_family(site):
    here = Here.on(site, site.manual.procedures["road-test"])
    way = here.shown("calc", "shift-check").href
    assert way.startswith("../../calculators/shift-check/?window-1-2-light=16+to+22+km/h&")
    assert here.shown("calc", "torque-units").href == "../../calculators/torque-units/"


def test_calculator_opens_with_its_example_where_no_family_is_meant(changed):
    site = changed("jobs/road-test.md", ("unit_family: [wren-2]", "unit_family: any"))
    here = Here.on(site, site.manual.procedures["road-test"])
    assert here.shown("calc", "shift-check").href == "../../calculators/shift-check/"


def test_procedure_that_seats_the_band_brings_its_setting_along(site):
    manual = site.manual
    setting = for_page(manual, manual.procedures["set-band"])
    assert setting["adjustment.seat"] == "120 lbf·in"
    assert setting["fluid.service_fill"] == "4.5 L"
    assert "adjustment.seat" not in for_page(manual, manual.procedures["road-test"])


@pytest.mark.parametrize(
    ("thread", "pitch"),
    [("M8 x 1.25", "1.25 mm"), ("M10×1", "1 mm"), ("7/16-14 UNC", "1.81429 mm"), ("G 1/4", "")],
)
def test_pitch_is_read_from_the_name_of_the_thread(changed, thread, pitch):
    site = changed("families/wren-2.md", ("1/2-20 UNF", thread))
    family = site.manual.families["wren-2"]
    found = for_adjustment(family, family.adjustments["front-band"])
    assert found["adjustment.pitch"] == pitch


def test_entries_are_typed_in_plain_letters():
    assert query({"torque": "9 lbf·ft", "thread": "1/2-20"}) == "torque=9+lbf*ft&thread=1/2-20"
