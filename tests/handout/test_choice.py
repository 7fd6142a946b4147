"""Which pages go into a document: all, or a set with the things that it names."""

import pytest

from underhoist.bound import Choice, chosen, grouped
from underhoist.project import Unusable


def addresses(sheets):
    return {sheet.address for sheet in sheets}


@pytest.fixture(scope="module")
def all_pages(demo):
    return chosen(demo, Choice())


def test_all_of_them_without_the_lists_and_what_only_a_site_has(demo, all_pages):
    kinds = {sheet.kind for sheet in all_pages}
    assert {"procedure", "fault", "torque", "calculator", "page"} <= kinds
    assert not kinds & {"index", "rule", "cards", "offline", "drafting", "changes"}
    assert sum(sheet.kind == "procedure" for sheet in all_pages) == len(demo.manual.procedures)


def test_a_procedure_brings_the_things_it_names_and_no_other_procedure(demo):
    found = chosen(demo, Choice(procedures=("set-band",)))
    assert {"kestrel-3/set-band/", "tools/inch-pound-wrench/", "calculators/torque-units/",
            "words/"} <= addresses(found)  # fmt: skip
    assert [each.address for each in found if each.kind == "procedure"] == ["kestrel-3/set-band/"]


def test_a_family_brings_what_is_done_on_it_and_nothing_of_another(demo):
    found = chosen(demo, Choice(families=("plover-2",)))
    assert {"families/plover-2/", "any-unit/raise-vehicle/"} <= addresses(found)
    assert [at for at in addresses(found) if "kestrel-3" in at or "heron-4" in at] == []


def test_a_folder_may_stay_out(demo, all_pages):
    found = addresses(chosen(demo, Choice(left_out=("writing",))))
    assert {at for at in addresses(all_pages) if at not in found} == {
        at for at in addresses(all_pages) if at.startswith("writing/")
    }


def kind(sheets, wanted):
    return [each.address for each in sheets if each.kind == wanted]


def test_families_and_their_work_stand_in_the_order_in_which_they_were_named(demo):
    found = chosen(demo, Choice(families=("plover-2", "heron-4")))
    assert kind(found, "unit-family") == ["families/plover-2/", "families/heron-4/"]
    folders = [at.split("/")[0] for at in kind(found, "procedure")]
    assert folders.index("heron-4") > max(
        at for at, name in enumerate(folders) if name == "plover-2"
    )
    owners = [at.split("/")[1] for at in kind(found, "torque")]
    assert owners == sorted(owners, key=["plover-2", "heron-4"].index)


def test_procedures_stand_in_the_order_in_which_they_were_named(demo):
    found = chosen(demo, Choice(procedures=("set-band", "raise-vehicle", "fit-pan-gasket")))
    assert kind(found, "procedure") == [
        "kestrel-3/set-band/", "any-unit/raise-vehicle/", "kestrel-3/fit-pan-gasket/",
    ]  # fmt: skip


def test_without_a_choice_procedures_stand_by_area_and_title(demo, all_pages):
    work = {page.title.value: page.area.value for page in demo.manual.procedures.values()}
    shown = [(work[each.title], each.title) for each in all_pages if each.kind == "procedure"]
    assert shown == sorted(shown)


@pytest.mark.parametrize(
    ("choice", "said"),
    [
        (Choice(procedures=("sett-band",)),
         "sett-band: the manual has no procedure of that name. Did you mean set-band?"),
        (Choice(families=("kestrel3",)),
         "kestrel3: the manual has no unit family of that name. Did you mean kestrel-3?"),
        (Choice(left_out=("../writing",)),
         "../writing: the manual has no folder of pages of that name. Did you mean writing?"),
    ],
)  # fmt: skip
def test_a_name_that_is_not_there_is_told_with_the_nearest(demo, choice, said):
    with pytest.raises(Unusable) as caught:
        chosen(demo, choice)
    assert str(caught.value) == said


def test_the_groups_hold_every_page_once(all_pages):
    held = [sheet for group in grouped(all_pages) for sheet in group.sheets]
    assert len(held) == len(all_pages)
    assert addresses(held) == addresses(all_pages)
