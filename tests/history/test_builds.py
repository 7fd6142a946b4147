"""What a site and its record say after one build, two, and more."""

import json
import re

import pytest

from underhoist.history import history as builds
from underhoist.history import record
from underhoist.history.between import between
from underhoist.project import Unusable

from ..plugin.conftest import Project

DAYS = {"first": "1790000000", "later": "1800000000"}
"""Seconds of SOURCE_DATE_EPOCH: 21 September 2026 and 15 January 2027."""


@pytest.fixture(scope="module")
def first(tmp_path_factory):
    """A project as its first build left it, which nobody changes: each test has a copy."""
    made = Project(tmp_path_factory.mktemp("first") / "project")
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("SOURCE_DATE_EPOCH", DAYS["first"])
        made.build()
    return made


@pytest.fixture
def project(first, tmp_path, monkeypatch):
    monkeypatch.setenv("SOURCE_DATE_EPOCH", DAYS["later"])
    return Project(tmp_path / "project", like=first)


def text_of(project, address):
    html = (project.site / address / "index.html").read_text(encoding="utf-8")
    return " ".join(re.sub(r"<[^>]+>", " ", html).split())


def card(project, id_="set-band"):
    return json.loads((project.site / f"changes/data/{id_}.json").read_bytes())


def test_first_build_has_nothing_to_compare_with(project):
    assert text_of(project, "changes").count("There is no earlier build to compare with.") == 1
    said = "First built on 21 September 2026. There is no earlier build to compare with."
    assert said in text_of(project, "jobs/set-band")
    assert card(project) == [
        {
            "revision": card(project)[0]["revision"],
            "date": "2026-09-21",
            "author": "RB",
            "words": [],
        }
    ]


def test_same_pages_again_make_the_same_site(project):
    before = project.held()
    history = project.build().history
    assert history.build is None
    assert history.compared
    assert project.held() == before


def test_changed_torque_is_told_wherever_it_is_shown(project):
    old = card(project)
    project.replace("families/wren-2.md", "120 lbf*in", "124 lbf*in")
    project.replace("families/wren-2.md", "service_fill: 4.5 L", "service_fill: 4.7 L")
    history = project.build().history
    words = "Band adjuster seat (band-seat): 120 -> 124 lbf·in"
    shown = words.replace("->", "→")  # the space after it does not break; text_of makes it plain
    assert history.build == 2
    assert card(project)[0]["words"] == [words]
    assert card(project)[0]["date"] == "2027-01-15"
    assert card(project)[1:] == old
    assert f"15 January 2027, RB {shown}" in text_of(project, "jobs/set-band")
    assert shown in text_of(project, "torques/wren-2/band-seat")
    assert shown not in text_of(project, "torques/wren-2/band-locknut")
    overview = text_of(project, "changes")
    assert f"15 January 2027 Wren 2: {shown} Wren 2: service fill: 4.5 → 4.7 L" in overview
    assert shown in text_of(project, "changes/2")
    assert "First built 15 January 2027" in text_of(project, "jobs/set-band")
    assert "First built 21 September 2026" in text_of(project, "jobs/raise")


def test_torque_changed_in_every_build_is_told_first_in_each(project):
    for new in ("121", "122", "123"):
        project.replace("families/wren-2.md", "120 lbf*in", f"{new} lbf*in")
        project.build()
        project.replace("families/wren-2.md", f"{new} lbf*in", "120 lbf*in")
    told = [entry["words"] for entry in card(project)]
    name = "Band adjuster seat (band-seat)"
    assert told[:3] == [
        [f"{name}: {way} lbf·in"] for way in ("122 -> 123", "121 -> 122", "120 -> 121")
    ]


def test_page_and_card_have_the_revision_of_the_record(project):
    kept = record.read(project.site).pages["procedure:set-band"]
    held = json.loads((project.site / "cards/data/set-band.json").read_bytes())
    assert held["revision"] == kept.entries[0].revision == card(project)[0]["revision"]
    assert held["date"] == "2026-09-21"
    assert held["author"] == "RB"
    assert f"Revision {held['revision']}" in text_of(project, "jobs/set-band")


def test_new_gone_and_renamed_pages_are_told(project):
    (project.pages / "tools/lamp.md").rename(project.pages / "tools/torch.md")
    (project.pages / "jobs/road-test.md").unlink()
    text = (project.pages / "tools/hammer.md").read_text(encoding="utf-8")
    new = project.pages / "tools/mallet.md"
    new.write_text(re.sub("title: .*", "title: Mallet", text) + "\nSoft head, of hide.\n", "utf-8")
    project.replace("faults/late.md", "procedure: road-test", "procedure: set-band")
    project.replace("index.md", "tools/lamp.md", "tools/torch.md")
    project.build()
    overview, page = text_of(project, "changes"), text_of(project, "changes/2")
    assert "1 page new, 1 page gone" in overview
    assert "The page moved: tools/lamp.md → tools/torch.md" in page
    assert "Mallet The page is new." in page
    assert "Went away Road test (jobs/road-test.md)" in page


def test_revision_that_came_back_is_told_as_a_change(project):
    first = card(project)[0]["revision"]
    for old, new in (("Wipe the case.", "Clean it."), ("Clean it.", "Wipe the case.")):
        project.replace("jobs/set-band.md", old, new)
        project.build()
    assert [each["revision"] for each in card(project)][::2] == [first, first]
    assert [each["words"] for each in card(project)] == [
        ["step 1 now says “Wipe the case.” (was “Clean it.”)"],
        ["step 1 now says “Clean it.” (was “Wipe the case.”)"],
        [],
    ]


def test_broken_record_is_told_and_the_site_is_built(project):
    (project.site / record.FILE).write_text("{", encoding="utf-8")
    history = project.build().history
    assert history.problem == (
        f"The record of earlier builds in {project.site} cannot be used: "
        "it is no JSON: the file may be cut off."
    )
    assert not history.compared
    assert record.read(project.site).builds[0].number == 1


def test_record_that_was_kept_elsewhere_is_used(project, tmp_path):
    kept = tmp_path / "kept.json"
    (project.site / record.FILE).rename(kept)
    project.replace("jobs/set-band.md", "Wipe the case.", "Clean it.")
    assert project.build(since=kept).history.build == 2
    assert len(card(project)) == 2


def test_old_builds_are_forgotten_and_pages_keep_their_revision(project, monkeypatch):
    monkeypatch.setattr(builds, "BUILDS", 2)
    for number in range(4):
        project.replace("jobs/set-band.md", "Wipe", f"Well{number}, wipe".replace("wipe", "Wipe"))
        project.build()
    held = record.read(project.site)
    assert [each.number for each in held.builds] == [5, 4]
    assert [each.build for each in held.pages["procedure:set-band"].entries] == [5, 4]
    assert held.pages["procedure:raise"].entries[0].date == "2026-09-21"


def test_page_that_is_as_before_is_not_written_anew_after_many_builds(monkeypatch):
    """Its first revision is older than all builds that are remembered: that makes no other page."""
    monkeypatch.setattr(builds, "BUILDS", 2)

    def page(name, minutes):
        portrait = {"minutes": minutes}
        return builds.Present(title=name, file=f"{name}.md", author="RB", portrait=portrait)

    before = builds.advance(builds.Earlier(), {"a": page("a", "0"), "b": page("b", "0")}, "m")
    for minutes in "1234":
        now = {"a": page("a", minutes), "b": page("b", "0")}
        after = builds.advance(builds.Earlier(record=before.record), now, "m", same={"b"})
        assert after.record.pages["b"] is before.record.pages["b"]
        before = after
    assert [each.number for each in before.record.builds] == [5, 4]
    assert [each.build for each in before.record.pages["a"].entries] == [5, 4]


def test_two_states_are_compared_on_the_command_line(project):
    project.replace("families/wren-2.md", "120 lbf*in", "124 lbf*in")
    said = [
        "Wren 2: Band adjuster seat (band-seat): 120 -> 124 lbf·in",
        "New revisions only because of what they show: Set the band",
    ]
    assert between(project.site, project.folder) == said
    assert between(project.site / record.FILE, project.pages) == said
    assert between(project.folder, project.folder) == []


def test_manual_that_cannot_be_read_whole_is_not_compared(project):
    project.replace("jobs/set-band.md", "minutes: 25", "minutes: soon")
    with pytest.raises(Unusable) as problem:
        between(project.site, project.folder)
    assert str(problem.value) == (
        f"{project.folder}: jobs/set-band.md cannot be read yet. "
        "Run underhoist check, mend that, compare then."
    )


def test_what_is_no_manual_is_refused(project, tmp_path):
    other = tmp_path / "other.json"
    other.write_text("[]", encoding="utf-8")
    with pytest.raises(Unusable, match="holds no record of a build: it was not made by"):
        between(project.site, other)
