"""References: found in a body with their places, resolved on the page they stand on."""

from pathlib import Path

import pytest

from underhoist.check import check
from underhoist.model import Body, Fastener, Reading
from underhoist.place import Place
from underhoist.references import candidates, families_of, find, matches, resolve

GOOD = Path(__file__).parents[1] / "good"


@pytest.fixture(scope="module")
def manual():
    return check(GOOD / "smallest").manual


@pytest.fixture(scope="module")
def two_families():
    return check(GOOD / "two-families" / "pages").manual


def only(text):
    return list(find(Body(text, 10), "a.md"))


def target(manual, page, text):
    (reference,) = find(Body(text, 1), page.file)
    return resolve(manual, page, reference)


def test_both_forms_are_found_with_their_places():
    short, long, image = only("Take <torque:a>\nor [seat *it*](torque:b/c) ![x](part:d).\n")
    assert (short.scheme, short.id, short.label, short.at) == (
        "torque", "a", "", Place("a.md", 10, 6),
    )  # fmt: skip
    assert (long.scheme, long.id, long.label, long.at) == (
        "torque", "b/c", "seat *it*", Place("a.md", 11, 4),
    )  # fmt: skip
    assert (image.scheme, image.at.column, image.offset) == ("part", 28, 43)


def test_references_by_definition_are_found():
    assert [each.id for each in only("See [it][1].\n\n[1]: procedure:set-band\n")] == ["set-band"]


def test_no_reference():
    assert (
        only("`<torque:a>` https://a.b <https://a.b> [a](b.md) torque:a <!-- <torque:a> -->") == []
    )
    assert only("~~~\n<torque:a>\n~~~\n``x ` <torque:b>``") == []


def test_escaped_brackets_are_text():
    assert only(r"\<torque:a> \[b](torque:c) [d\](torque:e)") == []
    assert only("](torque:f)") == []
    assert [each.id for each in only(r"[a \[b\] c](torque:d) \\<tool:e>")] == ["d", "e"]


def test_a_label_without_end_hides_no_link():
    (reference,) = only(f"[{'x' * 5_000}](torque:a)")
    assert (reference.id, reference.label) == ("a", "")


def test_offset_is_the_place_in_the_body():
    text = "`x` <!-- y --> ü <tool:a> [[b] c](tool:d)"
    assert [text[each.offset] for each in only(text)] == ["<", "["]
    assert [each.label for each in only(text)] == ["", "[b] c"]


def test_a_torque_of_the_family(manual):
    page = manual.procedures["set-band"]
    found = target(manual, page, "<torque:band-seat>")
    assert (found.scheme, found.id, found.title) == (
        "torque", "kestrel-3/band-seat", "Band adjuster seat",
    )  # fmt: skip
    assert isinstance(found.thing, Fastener)
    assert found == target(manual, page, "<torque:kestrel-3/band-seat>")
    assert target(manual, manual.procedures["leak-check"], "<torque:band-seat>") is None


def test_a_family_and_a_fault_know_their_own(manual):
    for page in (manual.families["kestrel-3"], manual.faults["late-shifts"]):
        assert target(manual, page, "<torque:band-seat>").id == "kestrel-3/band-seat"
        assert target(manual, page, "<part:rear-seal>").title == "Rear seal"


def test_two_families_make_a_short_name_ambiguous(two_families):
    page = two_families.procedures["seat-both"]
    assert [each.id for each in families_of(two_families, page)] == ["kestrel-3", "heron-4"]
    found = matches(two_families, page, "torque", "band-seat")
    assert [each.id for each in found] == ["kestrel-3/band-seat", "heron-4/band-seat"]
    assert target(two_families, page, "<torque:band-seat>") is None
    assert target(two_families, page, "<torque:heron-4/band-seat>").id == "heron-4/band-seat"


def test_a_reading_here_and_elsewhere(manual):
    here, there = manual.procedures["count-turns"], manual.procedures["set-band"]
    found = target(manual, here, "<reading:turns-to-seat>")
    assert found.id == "count-turns/turns-to-seat"
    assert isinstance(found.thing, Reading)
    assert target(manual, there, "<reading:turns-to-seat>") is None
    assert target(manual, there, "<reading:count-turns/turns-to-seat>") == found


@pytest.mark.parametrize(
    ("text", "full", "title"),
    [
        ("<procedure:set-band>", "set-band", "Set the front band"),
        ("<tool:square-socket>", "square-socket", "Square socket"),
        ("<hazard:hot-fluid>", "hot-fluid", "Hot fluid"),
        ("<family:kestrel-3>", "kestrel-3", "Kestrel 3"),
        ("<fault:late-shifts>", "late-shifts", "Shifts up late"),
    ],
)
def test_pages(manual, text, full, title):
    found = target(manual, manual.plain["index"], text)
    assert (found.id, found.title) == (full, title)
    assert target(manual, manual.plain["index"], text.replace(">", "x>")) is None


def test_a_calculator(manual):
    found = target(manual, manual.plain["index"], "<calc:torque-units>")
    assert found.id == "torque-units"
    assert found.title and found.title == found.thing.title


def test_candidates_are_what_resolves(manual, two_families):
    for whole in (manual, two_families):
        for page in whole.pages():
            for scheme in ("torque", "part", "reading", "procedure", "tool", "calc"):
                for name in candidates(whole, page, scheme):
                    assert matches(whole, page, scheme, name), (page.file, scheme, name)


def test_candidates_begin_with_the_nearest(manual):
    page = manual.procedures["set-band"]
    assert candidates(manual, page, "torque") == [
        "band-seat", "band-locknut", "kestrel-3/band-seat", "kestrel-3/band-locknut",
    ]  # fmt: skip
    assert candidates(manual, page, "reading") == ["count-turns/turns-to-seat"]
