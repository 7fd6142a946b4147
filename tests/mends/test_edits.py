"""Edits made in a text: what they do, and that nothing else of it changes."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from underhoist.finding import Edit
from underhoist.mends import apply, disjoint


def edit(line: int, column: int, end_line: int, end_column: int, text: str) -> Edit:
    return Edit("page.md", line, column, end_line, end_column, text)


@pytest.mark.parametrize(
    ("text", "edits", "wanted"),
    [
        ("one\ntwo\n", [edit(2, 1, 2, 4, "2")], "one\n2\n"),
        ("one\ntwo\n", [edit(1, 4, 1, 4, "!")], "one!\ntwo\n"),
        ("one\ntwo", [edit(2, 4, 2, 4, "\nthree")], "one\ntwo\nthree"),
        ("one\r\ntwo\r\n", [edit(2, 4, 2, 4, "\nthree")], "one\r\ntwo\r\nthree\r\n"),
        ("one\rtwo", [edit(1, 1, 2, 1, "")], "two"),
        ("\ufeffone\n", [edit(1, 1, 1, 4, "1")], "\ufeff1\n"),
        ("a b c", [edit(1, 5, 1, 6, "C"), edit(1, 1, 1, 2, "A")], "A b C"),
        ("", [edit(1, 1, 1, 1, "new")], "new"),
        ("same", [], "same"),
    ],
)
def test_an_edit_changes_what_it_names(text, edits, wanted):
    assert apply(text, edits) == wanted


def test_of_two_that_meet_the_first_is_made():
    first, second = edit(1, 1, 1, 3, "x"), edit(1, 3, 1, 4, "y")
    assert disjoint([second, first, first]) == [first]
    assert apply("abcd", [second, first]) == "xcd"


@pytest.mark.parametrize(
    "outside",
    [edit(3, 1, 3, 1, ""), edit(1, 6, 1, 6, ""), edit(0, 1, 0, 1, ""), edit(2, 2, 1, 1, "")],
)
def test_an_edit_outside_the_text_is_refused(outside):
    with pytest.raises(ValueError, match=r"no line|no column|ends before"):
        apply("four\nfive", [outside])


@st.composite
def edited(draw):
    """A text with any line ends, and edits of it as (start, end, new) offsets."""
    sign = st.sampled_from(["a", "é", "\U0001f527", " ", "\n", "\r\n", "\r"])
    text = draw(st.sampled_from(["", "\ufeff"])) + "".join(draw(st.lists(sign, max_size=30)))
    return text, draw(st.lists(st.tuples(st.integers(0, 30), st.integers(0, 5)), max_size=4))


@given(case=edited())
def test_everything_outside_the_edits_stays(case):
    text, wanted = case
    lines = re.split("\r\n|\r|\n", text.removeprefix("\ufeff"))
    edits = []
    for place, width in wanted:
        row = place % len(lines)
        column = min(place, len(lines[row])) + 1
        edits.append(edit(row + 1, column, row + 1, min(column + width, len(lines[row]) + 1), "<>"))
    made = apply(text, edits)
    kept = made.split("<>")
    assert len(kept) == len(disjoint(edits)) + 1
    rest = text
    for piece in kept:
        assert piece in rest
        rest = rest[rest.index(piece) + len(piece) :]
    ends = re.findall("\r\n|\r|\n", text)
    assert re.findall("\r\n|\r|\n", made) == ends
    assert made.startswith("\ufeff") == text.startswith("\ufeff")
