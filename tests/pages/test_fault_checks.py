"""A complaint's checks: how each is done, where each result leads, and the order as written."""

import re

import pytest

from underhoist.pages.fault import fault_sheet

CHECKS = """checks:
  road: {name: Drive it, minutes: 20, access: road, procedure: road-test, rules_out: [band]}
  hose: {name: Hose whole, minutes: 5, access: hoist, rules_out: [hose]}
  gauge: {name: Gauge, minutes: 5, access: hoist, bad_with: {hose: mostly, diaphragm: mostly}}
  pump: {name: Holds a vacuum, minutes: 5, access: hoist, rules_out: [diaphragm]}
---"""
CAUSES = """causes:
  hose: {name: Hose split, likelihood: 30 %}
  diaphragm: {name: Diaphragm leaking, likelihood: 20 %}
"""


def whole(site):
    return str(fault_sheet(site, site.manual.faults["late"]).html)


def body(site):
    """What the page says below its live part."""
    return whole(site).partition('<section class="uh-checks">')[2]


@pytest.fixture
def four(changed):
    """The complaint with four checks and a way that three of them share."""
    text = "checks:\n  road: {name: Drive it, minutes: 20, access: on the road, "
    text += "procedure: road-test, rules_out: [band]}\n---"
    return body(
        changed(
            "faults/late.md",
            (text, CHECKS),
            ("causes:\n", CAUSES),
            ("likelihood: 60 %", "likelihood: 10 %"),
        )
    )


def test_the_only_procedure_is_the_link_of_the_check(site):
    html = body(site)
    assert '</span> <a href="../../jobs/road-test/">Drive it</a><span' in html
    assert "How:" not in html


def test_several_procedures_are_listed_by_their_titles(changed):
    site = changed("faults/late.md", ("procedure: road-test", "procedure: [road-test, set-band]"))
    html = body(site)
    assert '</span> Drive it<span class="uh-order__how">How: <a ' in html
    assert html.count("</a>, <a ") == 1


def test_a_check_without_a_procedure_is_told_all_the_same(changed):
    html = body(changed("faults/late.md", (", procedure: road-test", "")))
    assert "</span> Drive it<span" in html
    assert "How:" not in html


def test_one_order_is_said_once(site):
    html = body(site)
    assert html.startswith("\n<h2>Checks, in this order</h2>")
    assert "as written" not in html


def test_another_order_than_the_written_one_has_that_beside_it(four):
    names = re.findall(r'__number">\d+</span> (?:<a [^>]*>)?([^<]+)', four)
    assert names[0] != "Drive it"
    assert sorted(names[:3]) == ["Drive it", "Holds a vacuum", "Hose whole"]
    written = four.partition("<h2>Checks as written</h2>")[2]
    assert written.index("Drive it") < written.index("Hose whole") < written.index("Holds a")
    assert "; in the order as written below, after " in four


def test_every_step_that_a_result_leads_to_is_there(four):
    led = set(re.findall(r'href="#(step-\d+|cause-[a-z-]+)"', four))
    assert {"step-2", "cause-hose", "cause-diaphragm", "cause-band"} <= led
    assert led <= set(re.findall(r' id="([^"]+)"', four))


def test_it_ends_by_asking(four):
    assert four.count("none of these: stop and ask") == 1


def test_how_often_a_check_tells_is_in_the_written_list(four):
    assert "Bad mostly with: Hose split; Diaphragm leaking." in four


def test_the_live_part_shows_the_first_check_before_any_script(site):
    live = whole(site).partition('<section class="uh-checks">')[0]
    assert '<section class="uh-find" id="fault" data-fault="late">' in live
    assert '<span class="uh-next__word">Next check</span> Drive it</h3>' in live
    assert '<p>How: <a href="../../jobs/road-test/">' in live
    assert "<button" not in live
    assert "style=" not in live


def test_families_that_differ_have_a_table_each(changed, tmp_path):
    families = tmp_path / "manual" / "families"
    wren = (families / "wren-2.md").read_text(encoding="utf-8")
    robin = wren.replace("Wren 2", "Robin 3").replace("wren-2", "robin-3")
    (families / "robin-3.md").write_text(robin, encoding="utf-8")
    only_wren = "checks:\n  hose: {name: Hose whole, minutes: 5, access: hoist, "
    only_wren += "rules_out: [hose], unit_family: wren-2}\n"
    cause = "causes:\n  hose: {name: Hose split, likelihood: 20 %, unit_family: wren-2}\n"
    site = changed(
        "faults/late.md",
        ("procedure: road-test, ", ""),
        ("checks:\n", only_wren),
        ("causes:\n", cause),
        ("likelihood: 60 %", "likelihood: 40 %"),
        ("unit_family: wren-2\ncauses", "unit_family: [wren-2, robin-3]\ncauses"),
    )
    html = whole(site)
    assert re.findall(r"<h3>(\w+ \d)</h3>", html) == ["Wren 2", "Robin 3"]
    assert re.findall(r'<tr id="(step-[^"]+)"', html) == [
        "step-wren-2-1",
        "step-wren-2-2",
        "step-robin-3-1",
    ]
    assert '<option value="robin-3">Robin 3</option>' in html
