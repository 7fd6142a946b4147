"""What grows with the manual goes into parts: no page gets longer, and nothing is left out."""

import re

import pytest

from underhoist.check import check
from underhoist.pages import make_site, sheets

MANY = 130
ENTRY = re.compile(r'<li><a href="([^"#]+)"')


@pytest.fixture
def grown(changed):
    """The pages of the small manual with many procedures that all start from one."""
    folder = changed("index.md").folder
    text = (folder / "jobs/raise.md").read_text(encoding="utf-8")
    text = re.sub(r"\nbefore:.*", "", text).replace("\n---\n", "\nbefore: [raise]\n---\n", 1)
    for number in range(MANY):
        title = f"title: Job {number:03}, "
        (folder / f"jobs/more-{number:03}.md").write_text(text.replace("title: ", title))
    made = sheets(make_site(check(folder).manual, folder, name="x"))
    return {sheet.address: sheet for sheet in made}


def entries(sheet):
    """Last part of each address that a list of the page leads to."""
    return [way.strip("/").rpartition("/")[2] for way in ENTRY.findall(sheet.html)]


def test_an_area_is_in_parts_that_hold_every_procedure_once(grown):
    parts = [grown[f"areas/lifting/{part}"] for part in ("", "part-2/", "part-3/")]
    assert "areas/lifting/part-4/" not in grown
    found = [
        name for part in parts for name in entries(part) if not name.startswith(("part", ".."))
    ]
    assert [name for name in found if name.startswith("more-")] == [
        f"more-{number:03}" for number in range(MANY)
    ]
    assert max(sheet.html.count("<li>") for sheet in parts) <= 60 + 3
    assert [sheet.title for sheet in parts] == ["Lifting", "Lifting, part 2", "Lifting, part 3"]


def test_parts_lead_to_each_other_by_first_and_last_name(grown):
    html = grown["areas/lifting/part-2/"].html
    assert "<li>Job 060, Raise the vehicle to Job 119, Raise the vehicle</li>" in html
    assert '<a href="../part-3/">Job 120, Raise the vehicle to Raise the vehicle</a>' in html
    assert '<a href="../">Job 000, Raise the vehicle to Job 059, Raise the vehicle</a>' in html


def test_a_procedure_before_everything_names_a_few_and_leads_to_all(grown):
    html = grown["jobs/raise/"].html
    follows = html.partition("What follows</h2>")[2].partition("</section>")[0]
    assert len(ENTRY.findall(follows)) == 12
    way = '<a href="../../where-used/procedures/raise/">All 131 procedures, among the pages that'
    assert way in follows
    assert len(entries(grown["where-used/procedures/raise/"])) >= MANY


def test_lists_of_the_work_name_areas_and_a_few_procedures_of_each(grown):
    few = "; ".join(f"Job {number:03}, Raise the vehicle" for number in range(4))
    for address in ("procedures/", "families/wren-2/"):
        lists = re.findall(r'<ul class="uh-contents">.*?</ul>', grown[address].html, re.DOTALL)
        [work] = [each for each in lists if "areas/" in each]
        assert work.count("<li>") == 3, address
        assert f">Lifting</a><p>{few}; 127 more</p></li>" in work
