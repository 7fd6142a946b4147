"""The file of a complaint's causes and checks: by unit family, exactly."""

import json

import pytest

from underhoist.check import check
from underhoist.complaints import complaint_of
from underhoist.pages import make_site, sheets
from underhoist.pages.complaint_data import complaint_files

WREN = "families/wren-2.md"


def written(site):
    files = dict(complaint_files(site, {sheet.address: sheet for sheet in sheets(site)}))
    assert list(files) == ["fault/data/late.json"]
    return json.loads(files["fault/data/late.json"])


def test_the_whole_file_exactly(site, pages):
    found = written(site)
    assert found.pop("revision") == pages["faults/late/"].revision
    assert found == {
        "format": 1,
        "id": "late",
        "title": "Shifts up late",
        "complaint": "It hangs on before it changes up.",
        "url": "faults/late/",
        "families": [{"id": "wren-2", "title": "Wren 2"}],
        "by_family": {
            "wren-2": {
                "complaint": {
                    "causes": [
                        {
                            "id": "band",
                            "name": "The band is slack",
                            "share": 0.4,
                            "mend_minutes": 0,
                        },
                        {
                            "id": "none-of-these",
                            "name": "None of these",
                            "share": 0.6,
                            "mend_minutes": 0,
                        },
                    ],
                    "checks": [
                        {
                            "id": "road",
                            "name": "Drive it",
                            "minutes": 20,
                            "access": "on the road",
                            "bad": {"band": 1.0},
                        }
                    ],
                    "levels": [],
                    "confidence": 0.95,
                },
                "levels": {},
                "checks": {
                    "road": {
                        "procedures": [
                            {"id": "road-test", "title": "Road test", "url": "jobs/road-test/"}
                        ],
                        "decided_by": [],
                    }
                },
                "causes": {
                    "band": {
                        "procedures": [
                            {"id": "set-band", "title": "Set the band", "url": "jobs/set-band/"}
                        ]
                    },
                    "none-of-these": {"procedures": []},
                },
            }
        },
    }


@pytest.fixture
def road(changed):
    """The check settled by readings and by a calculator."""

    def settled(told):
        site = changed("faults/late.md", ("rules_out: [band]}", f"rules_out: [band], {told}}}"))
        return written(site)["by_family"]["wren-2"]["checks"]["road"]["decided_by"]

    return settled


def test_answers_of_a_calculator(road):
    told = road("calculators: {shift-check: {bad: [one-shift, scale], good: as-specified}}")
    assert told == [
        {
            "kind": "calculator",
            "calculator": "shift-check",
            "title": "Shift check",
            "bad": ["one-shift", "scale"],
            "good": ["as-specified"],
        }
    ]


def test_readings_of_its_procedures(changed):
    check_ = "procedure: [set-band, road-test], readings: turns, rules_out: [band]"
    site = changed("faults/late.md", ("procedure: road-test, rules_out: [band]", check_))
    road = written(site)["by_family"]["wren-2"]["checks"]["road"]
    assert road["decided_by"] == [{"kind": "reading", "procedure": "set-band", "reading": "turns"}]
    assert [each["id"] for each in road["procedures"]] == ["set-band", "road-test"]


def test_what_an_access_asks(changed):
    access = "access:\n  raised: {minutes: 15, meaning: On stands, procedure: raise}\n"
    changed(
        "index.md",
        (
            "---\nkind: page\n",
            f"---\nkind: page\n{access}  on the road: {{minutes: 5, through: raised}}\n",
        ),
    )
    site = changed("faults/late.md")
    assert written(site)["by_family"]["wren-2"]["levels"] == {
        "raised": {
            "meaning": "On stands",
            "procedure": {"id": "raise", "title": "Raise the vehicle", "url": "jobs/raise/"},
        },
        "on the road": {"meaning": "", "procedure": None},
    }


@pytest.fixture
def two(tmp_path, changed):
    """Two families: one alone has a cause, the other alone has a check."""
    folder = tmp_path / "manual"
    wren = (folder / WREN).read_text(encoding="utf-8")
    finch = wren.replace("Wren 2", "Finch 2").partition("---\n")[2].partition("---\n")[0]
    (folder / "families/finch-2.md").write_text(f"---\n{finch}---\n", encoding="utf-8")
    late = (folder / "faults/late.md").read_text(encoding="utf-8")
    late = late.replace("unit_family: wren-2", "unit_family: [wren-2, finch-2]").replace(
        "causes:\n",
        "causes:\n  hose: {name: Hose split, likelihood: 20 %, unit_family: wren-2, "
        "mend_minutes: 15}\n",
    )
    late = late.replace("likelihood: 60 %", "likelihood: 40 %").replace(
        "checks:\n",
        "checks:\n  pump: {name: Pump it, minutes: 5, access: here, bad_with: {hose: often}, "
        "unit_family: wren-2}\n  turn: {name: Turn it, minutes: 5, access: here, "
        "rules_out: [band, hose], unit_family: any}\n",
    )
    (folder / "faults/late.md").write_text(late, encoding="utf-8")
    return make_site(check(folder).manual, folder, name="Two families")


def test_each_family_has_its_own_causes_and_checks(two):
    by_family = written(two)["by_family"]
    assert {family: list(each["checks"]) for family, each in by_family.items()} == {
        "wren-2": ["pump", "turn", "road"],
        "finch-2": ["turn"],
    }
    assert {family: list(each["causes"]) for family, each in by_family.items()} == {
        "wren-2": ["hose", "band", "none-of-these"],
        "finch-2": ["band", "none-of-these"],
    }


def test_shares_of_a_family_that_lacks_a_cause_make_the_hundred_again(two):
    complaint = complaint_of(two.manual, two.manual.faults["late"], "finch-2")
    assert {each.id: each.share for each in complaint.causes} == pytest.approx(
        {"band": 0.5, "none-of-these": 0.5}
    )
    assert complaint.checks[0].bad == {"band": 1.0}


def test_the_whole_page_for_no_family(two):
    complaint = complaint_of(two.manual, two.manual.faults["late"])
    assert [each.share for each in complaint.causes] == [0.2, 0.4, 0.4]
    assert complaint.causes[0].mend_minutes == 15
