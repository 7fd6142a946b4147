"""Where the cursor stands, in pages as people write them: the bar is the cursor."""

import pytest

from underhoist.editor.cursor import InKeys, InReference, spot

PAGE = """\
---
kind: procedure
title: A
readings:
  turns:
    name: Turns
    {0}
tools: [{1}
fluid: {{level: {{selector: park, {2}}}}}
variants:
  - name: Early
    measures:
      {3}
{4}
---
Text {5}
"""


def at(number, typed):
    """The page with this typed at one of its places, and the cursor behind it."""
    places = [typed if each == number else "" for each in range(6)]
    before = PAGE.format(*places)
    marked = PAGE.format(*(f"{typed}\0" if each == number else "" for each in range(6)))
    row = next(n for n, line in enumerate(marked.split("\n")) if "\0" in line)
    column = marked.split("\n")[row].index("\0")
    return spot(before.split("\n"), row, column)


@pytest.mark.parametrize(
    ("number", "typed", "path", "key", "begun"),
    [
        (0, "un", ("readings", "turns"), None, "un"),
        (0, "unit: tu", ("readings", "turns"), "unit", "tu"),
        (1, "inch-p", (), "tools", "inch-p"),
        (1, "a, inch-p", (), "tools", "inch-p"),
        (2, "temp", ("fluid", "level"), None, "temp"),
        (2, "temperature: 6", ("fluid", "level"), "temperature", "6"),
        (3, "bore: ", ("variants", "measures"), "bore", ""),
        (4, "wh", (), None, "wh"),
        (4, "who: ", (), "who", ""),
        (4, "parts: [a, {name: x, te", ("parts",), None, "te"),
    ],
)
def test_in_the_front_matter(number, typed, path, key, begun):
    here = at(number, typed)
    assert isinstance(here, InKeys)
    assert (here.path, here.key, here.typed) == (path, key, begun)


def test_what_is_there_already_is_known():
    assert at(4, "").beside == {"kind", "title", "readings", "tools", "fluid", "variants"}
    assert at(0, "").beside == {"name"}


@pytest.mark.parametrize("typed", ["<torque:band-s", "[the band](torque:band-s"])
def test_in_a_reference(typed):
    assert at(5, typed) == InReference("torque", "band-s")


def test_in_plain_text_there_is_nothing():
    assert at(5, "Tools: ") is None
    assert spot(["Text: a"], 0, 3) is None
    assert spot([], 0, 0) is None


def test_a_front_matter_without_its_end_is_one():
    assert spot(["---", "ki"], 1, 2) == InKeys((), None, "ki")
