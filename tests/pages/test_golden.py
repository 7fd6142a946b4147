"""One page of every kind, exactly. UNDERHOIST_GOLDEN=write writes them anew: read what changed."""

import os
from pathlib import Path

import pytest

GOLDEN = Path(__file__).parent / "golden"
ADDRESSES = {
    "front": "",
    "procedure": "jobs/set-band/",
    "procedure-of-any-unit": "jobs/raise/",
    "family": "families/wren-2/",
    "fault": "faults/late/",
    "tool": "tools/inch-wrench/",
    "tool-nobody-uses": "tools/lamp/",
    "hazard": "hazards/hot-fluid/",
    "hazard-of-a-tool": "hazards/flying-chips/",
    "torque": "torques/wren-2/band-seat/",
    "torques": "torques/",
    "part": "parts/wren-2/rear-seal/",
    "parts": "parts/",
    "procedures": "procedures/",
    "area": "areas/bands/",
    "area-of-a-family": "areas/bands/wren-2/",
    "calculators": "calculators/",
    "where-used": "where-used/",
    "where-used-tools": "where-used/tools/",
    "where-used-fluids": "where-used/fluids/",
    "fluid": "fluids/dunmere-d2/",
    "fluids": "fluids/",
    "changes-without-a-record": "changes/",
    "front-matter": "front-matter/",
    "front-matter-of-a-tool": "front-matter/tool/",
    "rule": "rules/unit-missing/",
    "cards": "cards/",
    "offline": "offline/",
    "drafting": "drafting/",
}


@pytest.mark.parametrize("name", ADDRESSES)
def test_page_is_written_exactly(name, pages):
    sheet = pages[ADDRESSES[name]]
    made = f"{sheet.kind} | {sheet.title} | {sheet.summary} | {sheet.trail}\n{sheet.html}\n"
    golden = GOLDEN / f"{name}.html"
    if os.environ.get("UNDERHOIST_GOLDEN") == "write":
        golden.write_text(made, encoding="utf-8")
    assert made == golden.read_text(encoding="utf-8")


def test_every_golden_page_belongs_to_a_test():
    assert {file.stem for file in GOLDEN.glob("*.html")} == ADDRESSES.keys()
