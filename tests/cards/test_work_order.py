"""The one order of all procedures, and what a procedure brings along onto a card."""

import random
from pathlib import Path

import pytest

from underhoist.cards.work_order import goes_with, work_order
from underhoist.check import check
from underhoist.model import Manual

DEMO = Path(__file__).parents[2] / "procedures"


def page(title: str, **keys: list[str]) -> str:
    lines = "".join(f"{key}: [{', '.join(ids)}]\n" for key, ids in keys.items())
    return (
        f"---\nkind: procedure\ntitle: {title}\nsummary: S.\nunit_family: any\narea: a\n"
        f"minutes: 5\nwho: apprentice\n{lines}---\n\n## Steps\n\n1. Do it.\n"
    )


@pytest.fixture
def manual(tmp_path):
    def made(**pages: dict[str, list[str]]) -> Manual:
        for id_, keys in pages.items():
            (tmp_path / f"{id_}.md").write_text(page(id_, **keys), encoding="utf-8")
        return check(tmp_path).manual

    return made


def test_what_comes_first_does_whatever_the_names(manual):
    made = manual(a={"before": ["c"]}, b={"after": ["c"]}, c={}, d={})
    assert work_order(made) == ("b", "c", "a", "d")


def test_what_ends_another_waits_for_all_that_waited_for_it(manual):
    made = manual(
        lower={"ends": ["lift"]},
        lift={},
        oil={"before": ["lift"]},
        seal={"before": ["oil"]},
        refill={"before": ["lower", "oil"]},
    )
    order = work_order(made)
    assert order == ("lift", "oil", "seal", "lower", "refill")


def test_a_card_takes_in_what_is_needed_and_what_ends_it(manual):
    made = manual(
        lift={"needs": ["look"]}, lower={"ends": ["lift"]}, look={}, oil={"needs": ["lift"]}, x={}
    )
    assert goes_with(made)["oil"] == ("lift", "look", "lower")
    assert goes_with(made)["x"] == ()


def test_needs_in_a_circle_bring_each_other_once(manual):
    made = manual(a={"needs": ["b"]}, b={"needs": ["a"]})
    assert goes_with(made) == {"a": ("b",), "b": ("a",)}


def test_every_before_and_after_of_the_demo_is_kept():
    made = check(DEMO).manual
    place = {id_: number for number, id_ in enumerate(work_order(made))}
    assert set(place) == set(made.procedures)
    for id_, procedure in made.procedures.items():
        assert all(place[each.value] < place[id_] for each in procedure.before), id_
        assert all(place[id_] < place[each.value] for each in procedure.after), id_
        assert all(place[each.value] < place[id_] for each in procedure.ends), id_


@pytest.mark.parametrize("seed", range(40))
def test_any_manual_without_a_circle_has_an_order(manual, seed):
    roll = random.Random(seed)  # noqa: S311 - no secret
    ids = [f"p{number}" for number in range(9)]
    pages: dict[str, dict[str, list[str]]] = {id_: {"before": []} for id_ in ids}
    for later in range(1, 9):
        pages[ids[later]]["before"] = roll.sample(ids[:later], roll.randint(0, min(later, 2)))
    begun = roll.randint(0, 7)
    pages[ids[roll.randint(begun + 1, 8)]]["ends"] = [ids[begun]]
    made = manual(**pages)
    place = {id_: number for number, id_ in enumerate(work_order(made))}
    for id_, procedure in made.procedures.items():
        assert all(place[each.value] < place[id_] for each in (*procedure.before, *procedure.ends))
