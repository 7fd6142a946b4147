"""The record is input: it is believed whole or not at all, and why not is said."""

import json

import pytest

from underhoist.check import check
from underhoist.history import Earlier, History, advance, earlier, present, record
from underhoist.links import weave
from underhoist.pages.portraits import painter

from .conftest import MANUAL


def build(folder=MANUAL, before=None) -> History:
    manual = check(folder).manual
    return advance(
        before or Earlier(),
        present(manual.pages(), painter(manual, weave(manual), folder)),
        "A small manual",
    )


@pytest.fixture(scope="module")
def text():
    return record.write(build().record)


def changed(text, change):
    held = json.loads(text)
    change(held)
    return json.dumps(held)


def test_record_is_read_back_as_it_was_written(text):
    assert record.parse(text) == build().record
    assert record.write(record.parse(text)) == text


def test_record_with_changes_is_read_back(edited, text):
    edited.replace("families/wren-2.md", ("120 lbf*in", "124 lbf*in"))
    history = build(edited.folder, Earlier(record=record.parse(text)))
    assert history.build == 2
    assert record.parse(record.write(history.record)) == history.record


def test_every_page_of_the_record_is_a_line(text):
    assert len(text.splitlines()) == len(json.loads(text)["pages"]) + 2


def deep(held):
    portrait = held["pages"]["tool:lamp"]["portrait"]
    inner = portrait["facts"] = {}
    for _ in range(30):
        inner["x"] = inner = {}


@pytest.mark.parametrize(
    ("change", "why"),
    [
        (lambda held: held.update(made_by="another"), "it was not made by underhoist build"),
        (lambda held: held.pop("format"), "it does not say its format"),
        (lambda held: held.update(format=True), "it does not say its format"),
        (lambda held: held.update(format=2), "it was made by a newer version of underhoist"),
        (lambda held: held.update(format=0), "its format 0 is not known"),
        (lambda held: held.pop("pages"), "its shape is wrong ("),
        (lambda held: held.update(more=1), "its shape is wrong ("),
        (lambda held: held["builds"][0].update(number=-1), "its shape is wrong ("),
        (lambda held: held["builds"][0].update(number="1"), "its shape is wrong ("),
        (lambda held: held["pages"]["tool:lamp"].update(title=[]), "its shape is wrong ("),
        (lambda held: held["pages"]["tool:lamp"].update(portrait=[]), "its shape is wrong ("),
        (lambda held: held["pages"]["tool:lamp"]["portrait"].update(facts=7), "its shape is wrong"),
        (deep, "its shape is wrong ("),
        (lambda held: held["pages"]["tool:lamp"].update(entries=[]), "what it says of tool:lamp"),
        (lambda held: held["pages"]["tool:lamp"]["portrait"]["facts"].update(title="Torch"),
         "what it says of tool:lamp and its revision do not belong together"),
    ],
)  # fmt: skip
def test_record_that_is_not_whole_is_refused(text, change, why):
    with pytest.raises(record.NoRecordError) as problem:
        record.parse(changed(text, change))
    assert str(problem.value).startswith(why)


@pytest.mark.parametrize("held", ["", "{", "[]", "null", "7", "[" * 100_000, '{"made_by": 1}'])
def test_text_that_is_no_record_is_refused(held):
    with pytest.raises(record.NoRecordError):
        record.parse(held)


def test_cut_off_record_is_refused(text):
    with pytest.raises(record.NoRecordError, match="it is no JSON: the file may be cut off"):
        record.parse(text[:-100])


def test_older_format_is_brought_up(text, monkeypatch):
    def older(held):
        held["format"] = 0
        held["name"] = held.pop("manual")

    def bring_up(held):
        return {**{key: held[key] for key in held if key != "name"}, "manual": held["name"]}

    monkeypatch.setattr(record, "MIGRATIONS", {0: bring_up})
    assert record.parse(changed(text, older)) == record.parse(text)


def test_site_without_a_record_is_nothing_to_complain_of(tmp_path):
    assert earlier(tmp_path) == Earlier()


def test_record_that_was_named_and_is_not_there_is_told(tmp_path):
    said = f"The record of earlier builds in {tmp_path} cannot be used: there is none."
    assert earlier(tmp_path / "site", since=tmp_path).problem == said


def test_record_of_another_manual_is_told(text):
    other = changed(text, lambda held: held.update(pages={"tool:x": held["pages"]["tool:lamp"]}))
    history = build(before=Earlier(record=record.parse(other)))
    assert (
        history.problem == "The record of earlier builds is that of another manual, A small manual."
    )
    assert not history.compared
    assert history.build == 1
