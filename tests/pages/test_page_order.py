"""A built procedure follows DITA's task and IEC/IEEE 82079-1: tests/published/signal_words.json."""

import json
import re
from itertools import pairwise
from pathlib import Path

import pytest
from attrs import evolve

from underhoist.check import check
from underhoist.model import Hazard
from underhoist.pages import make_site
from underhoist.pages.hazard_panel import panel
from underhoist.pages.procedure import procedure_sheet
from underhoist.signal_words import SIGNALS, gravest, has_alert_symbol

ROOT = Path(__file__).parents[2]
FILE = ROOT / "tests/published/signal_words.json"
CASES = {case["id"]: case for case in json.loads(FILE.read_text(encoding="utf-8"))}

TASK = {
    "uh-first": "prereq", "uh-fetch": "prereq", "uh-hazards": "prereq", "uh-prose": "context",
    "uh-values": "context", "uh-work": "steps", "uh-follows": "postreq",
}  # fmt: skip
"""Our sections by the part of DITA's task that they are."""

REQUIREMENTS = {
    "uh-first": "reqconds", "uh-facts": "reqpers", "uh-fetch__tools": "supequip",
    "uh-fetch__fluids": "supplies", "uh-fetch__consumables": "supplies",
    "uh-fetch__parts": "spares", "uh-hazards": "safety",
}  # fmt: skip
"""What must be there before the work, by the part of DITA's preliminary requirements."""

TRIANGLE = '<svg class="uh-sign" viewBox="0 0 28 24"'


@pytest.fixture(scope="module")
def demo():
    """Every procedure of the demo manual, built."""
    checked = check(ROOT / "procedures")
    site = make_site(checked.manual, ROOT / "procedures", name="Demo")
    return {id_: procedure_sheet(site, each) for id_, each in checked.manual.procedures.items()}


def parts(html, names):
    """The parts of a page in their order, by the class of the element that holds them."""
    found = re.findall(r'<(?:section|div|ul|p) class="([\w-]+)', str(html))
    return [names[each] for each in found if each in names]


def sits_in_order(found, order):
    return all(order.index(one) <= order.index(other) for one, other in pairwise(found))


def test_the_parts_of_a_task_in_their_order(demo):
    """SW-12. A context may be interleaved by nothing that comes later."""
    order = CASES["SW-12"]["expected"]["value"]
    assert len(demo) >= 25
    for id_, sheet in demo.items():
        found = parts(sheet.html, TASK)
        assert "steps" in found, id_
        assert sits_in_order(found, order), (id_, found)


def test_the_preliminary_requirements(demo):
    """SW-13. Who may do it stands in the line of facts above; the others keep the order."""
    order = CASES["SW-13"]["expected"]["value"]
    seen = set()
    for id_, sheet in demo.items():
        before = sheet.html.partition('<section class="uh-work">')[0]
        found = parts(before, REQUIREMENTS)
        seen.update(found)
        assert sits_in_order([each for each in found if each != "reqpers"], order), (id_, found)
        assert {"reqpers"} <= set(found), id_
    assert seen == set(order)


def test_conditions_stand_before_and_after_the_work_only(pages):
    """SW-15: reqconds belong to prelreqs and to closereqs."""
    assert CASES["SW-15"]["expected"]["value"] == ["prelreqs", "closereqs"]
    sections = re.findall(r'<section class="([\w-]+)">(.*?)</section>',
                          str(pages["jobs/set-band/"].html), re.DOTALL)  # fmt: skip
    listed = {name for name, inner in sections if 'class="uh-contents"' in inner}
    assert listed - {"uh-used"} == {"uh-first", "uh-follows"}  # who links here is no condition


def hazard(site, signal):
    some = next(iter(site.manual.hazards.values()))
    return evolve(some, signal=evolve(some.signal, value=signal))


def test_several_hazards_in_one_message(site):
    """SW-06: the word of the greatest, and none of the messages left out."""
    words = {"minor or moderate injury": "caution", "damage only, no injury": "notice",
             "death or serious injury (could)": "warning"}  # fmt: skip
    signals = [words[each] for each in CASES["SW-06"]["inputs"]["hazards"]["value"]]
    expected = CASES["SW-06"]["expected"]["value"]
    assert gravest(signals).upper() == expected
    html = panel(*(hazard(site, signal) for signal in signals))
    assert re.findall("DANGER|WARNING|CAUTION|NOTICE", str(html)) == [expected]
    assert html.count("uh-hazard__avoid") == len(signals)


def test_the_alert_symbol_never_goes_with_notice(site):
    """SW-07."""
    words = CASES["SW-07"]["inputs"]["words"]["value"]
    allowed = [has_alert_symbol(word.lower()) for word in words]
    shown = [TRIANGLE in panel(hazard(site, word.lower())) for word in words]
    assert allowed == shown == CASES["SW-07"]["expected"]["value"]


@pytest.mark.parametrize("signal", SIGNALS)
def test_a_hazard_statement_has_a_message_and_a_symbol(site, signal):
    """SW-09."""
    assert CASES["SW-09"]["expected"]["value"] == [
        "messagepanel (one or more)", "hazardsymbol (any number)"
    ]  # fmt: skip
    html = str(panel(hazard(site, signal)))
    assert html.count("uh-hazard__harm") == html.count("uh-hazard__avoid") == 1
    assert html.count("<svg") == 1


def test_the_gravest_caution_stands_first(demo):
    for id_, sheet in demo.items():
        cautions = sheet.html.partition('class="uh-hazards"')[2].partition("</section>")[0]
        words = re.findall(r"uh-hazard--(\w+)", cautions)
        assert words == sorted(words, key=SIGNALS.index), id_


def test_a_step_with_two_cautions_has_one_panel(changed):
    site = changed(
        "jobs/set-band.md",
        ("1. <hazard:hot-fluid>\n", "1. <hazard:flying-chips>\n\n    <hazard:hot-fluid>\n"),
    )
    sheet = procedure_sheet(site, site.manual.procedures["set-band"])
    step = str(sheet.steps[0].html)
    assert step.count("<aside") == 1
    assert 'aria-label="Warning: Flying chips; Hot fluid"' in step
    assert isinstance(sheet.steps[0].hazards[0], Hazard)
