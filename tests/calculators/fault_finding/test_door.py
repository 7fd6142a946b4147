"""The door: plain data in and out, as JSON knows it, and a sentence for whatever is wrong."""

import json

import pytest
from attrs import evolve
from underhoist_calculators.fault_finding.complaint import Complaint, ComplaintError, Level
from underhoist_calculators.fault_finding.door import run
from underhoist_calculators.fault_finding.plain import as_plain, from_plain


@pytest.fixture
def plain(late):
    return json.loads(json.dumps(as_plain(late)))


def test_there_and_back(late, plain):
    assert from_plain(plain) == late


def test_first_check(plain):
    told = run(plain)
    assert told["ok"]
    assert (told["next"]["id"], told["next"]["way_minutes"]) == ("gauge", 10)
    assert [each["id"] for each in told["others"]] == ["drive", "pump"]
    assert told["minutes"] == pytest.approx(43)
    assert (told["exact"], told["gap_minutes"], told["found"]) == (True, 0, None)
    assert json.loads(json.dumps(told)) == told


def test_found(plain):
    told = run(plain, [["pump", "good"], ["gauge", "bad"]])
    assert (told["found"], told["next"], told["others"], told["ask"]) == ("hose", None, [], False)
    assert told["minutes"] == 0
    assert "It is this: Hose split." in told["html"]


def test_contrary(plain):
    told = run(plain, [["gauge", "bad"], ["drive", "bad"]])
    assert (told["ok"], told["found"], told["causes"], told["ask"]) == (True, None, [], True)


def test_what_comes_from_outside_is_escaped(late):
    named = evolve(late.checks[1], name="<b>Gauge</b>")
    html = run(as_plain(evolve(late, checks=(named,))))["html"]
    assert "&lt;b&gt;Gauge&lt;/b&gt;" in html
    assert "<b>" not in html


@pytest.mark.parametrize(
    ("results", "wrong"),
    [
        ([["ear", "good"]], "ear is no check here"),
        ([["pump", "fine"]], "['pump', 'fine'] is not a check with good, bad or not done"),
        ([["pump", "good"], ["pump", "bad"]], "pump has two results"),
        ("pump", "the results are not a list"),
        ([3], "3 is not a check with good, bad or not done"),
    ],
)
def test_bad_results(plain, results, wrong):
    told = run(plain, results)
    assert (told["ok"], told["wrong"]) == (False, f"Nothing can be worked out: {wrong}.")


@pytest.mark.parametrize(
    ("change", "wrong"),
    [
        (lambda data: 3, "the complaint is not an object"),
        (lambda data: data | {"causes": 3}, "causes is not a list"),
        (lambda data: data | {"checks": [3]}, "checks 1 is not an object"),
        (lambda data: data | {"causes": [{"id": "a"}]}, "name of a is no text"),
        (lambda data: data | {"levels": [{"name": "a"}]}, "minutes of a is no number"),
        (lambda data: data | {"confidence": 2}, "confidence 2 is not above 0 and at most 1"),
        (lambda data: data | {"causes": []}, "check drive names governor, which is no cause here"),
        (
            lambda data: data | {"causes": data["causes"] * 2},
            "cause hose is there twice",
        ),
        (
            lambda data: data | {"causes": data["causes"][1:]},
            "check gauge names hose, which is no cause here",
        ),
    ],
)
def test_bad_complaints(plain, change, wrong):
    assert run(change(plain))["wrong"] == f"Nothing can be worked out: {wrong}."


def test_shares_that_do_not_add_up(late):
    with pytest.raises(ComplaintError, match=r"the shares make 110.0%, not exactly 100 %"):
        evolve(late, causes=(evolve(late.causes[0], share=0.6), *late.causes[1:]))


def test_a_way_through_itself():
    levels = {"a": Level(name="a", minutes=1, through="a")}
    with pytest.raises(ComplaintError, match="access a leads through itself"):
        Complaint(causes=(), checks=(), levels=levels)
