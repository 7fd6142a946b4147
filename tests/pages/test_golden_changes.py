"""What changed between two builds, exactly as it stands on the pages."""

import os
from pathlib import Path

import pytest
from attrs import evolve

from underhoist.check import check
from underhoist.history import Earlier
from underhoist.pages import make_site, sheets
from underhoist.pages.changes import change_files

from .conftest import MANUAL

GOLDEN = Path(__file__).parent / "golden_changes"
ADDRESSES = {
    "overview": "changes/",
    "build": "changes/2/",
    "procedure": "jobs/set-band/",
    "torque": "torques/wren-2/band-seat/",
    "torque-as-it-was": "torques/wren-2/band-locknut/",
    "page-as-it-was": "jobs/raise/",
}
FIRST, SECOND = "1790000000", "1800000000"
"""21 September 2026 and 15 January 2027, as SOURCE_DATE_EPOCH."""


@pytest.fixture
def second_build(changed, monkeypatch):
    """The pages after a torque, a fill, a caution and a step were changed."""
    monkeypatch.setenv("SOURCE_DATE_EPOCH", FIRST)
    name = "A small manual"
    first = make_site(check(MANUAL).manual, MANUAL, name=name, earlier=Earlier())
    monkeypatch.setenv("SOURCE_DATE_EPOCH", SECOND)
    changed("jobs/set-band.md", ("Wipe the case.", "Wipe the case <b>well</b>."))
    changed("hazards/hot-fluid.md", ("harm: Fluid scalds.", "harm: It burns."))
    now = changed(
        "families/wren-2.md",
        ("120 lbf*in", "124 lbf*in"),
        ("service_fill: 4.5 L", "service_fill: 4.7 L"),
    )
    assert first.history is not None
    before = Earlier(record=first.history.record)
    site = make_site(now.manual, now.folder, name=name, earlier=before)
    return evolve(site, calculators=now.calculators)


@pytest.mark.parametrize("name", ADDRESSES)
def test_page_is_written_exactly(name, second_build):
    made = {sheet.address: sheet for sheet in sheets(second_build)}
    sheet = made[ADDRESSES[name]]
    head = f"{sheet.kind} | {sheet.title} | {sheet.since} | {sheet.author}\n"
    html = sheet.html
    if name not in {"overview", "build"}:
        html = html[html.find('<section class="uh-used">') :]
    golden = GOLDEN / f"{name}.html"
    if os.environ.get("UNDERHOIST_GOLDEN") == "write":
        golden.write_text(f"{head}{html}\n", encoding="utf-8")
    assert f"{head}{html}\n" == golden.read_text(encoding="utf-8")


def test_every_golden_page_belongs_to_a_test():
    assert {file.stem for file in GOLDEN.glob("*.html")} == ADDRESSES.keys()


def test_record_and_cards_data_are_the_only_files(second_build):
    names = set(dict(change_files(second_build, {})))
    cards = {f"changes/data/{id_}.json" for id_ in second_build.manual.procedures}
    assert names == {"changes/record.json", *cards}
