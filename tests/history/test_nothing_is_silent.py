"""Whatever differs is told: values of the demo manual are changed, one at a time, and lines."""

from pathlib import Path
from typing import Literal, get_args, get_origin

import pytest
from attrs import evolve, fields, has
from hypothesis import given
from hypothesis import strategies as st
from underhoist_calculators.registry import Quantity, Span
from underhoist_calculators.units import quantity, show, show_number, unit_name

from underhoist.check import check
from underhoist.history import compare, key_of, revision
from underhoist.history.compare import REWORDED
from underhoist.history.texts import texts
from underhoist.links import uses_of, weave, words_said
from underhoist.pages.portraits import painter
from underhoist.place import Placed

DEMO = Path(__file__).parents[2] / "procedures"
FLOOR = 1_000
"""Values that the demo manual has at least: fewer, and the walk has lost its way."""

BY_LINKS = ("before", "after")
"""What comes first and what follows counts for both pages: it has a test of its own."""


@pytest.fixture(scope="module")
def demo():
    return check(DEMO).manual


@pytest.fixture(scope="module")
def paint(demo):
    return painter(demo, weave(demo), DEMO)


def larger(value):
    return quantity(value.magnitude * 1.5 + 1, unit_name(value))


def mutated(placed, kind):
    """The same value changed, and a text by which the words must tell it."""
    value = placed.value
    choices = get_args(kind) if get_origin(kind) is Literal else ()
    if choices:
        other = next(each for each in choices if each != value)
        return Placed(other, placed.at, other), other
    if isinstance(value, Quantity):
        other = larger(value)
        return Placed(other, placed.at, show(other)), show_number(other)
    if isinstance(value, Span):
        other = Span(value.low, larger(value.high))
        return Placed(other, placed.at, "x"), show_number(other.high)
    if isinstance(value, str):
        other = f"{value}-mutant" if value.replace("-", "").isalnum() else f"{value} mutant"
        return Placed(other, placed.at, other), "mutant"
    return Placed(value, placed.at, f"{value}7"), f"{value}7"


def mutants(thing, kind=None, way=()):
    """Every copy of the thing in which one value is different, what must be told, and its way.

    The way is of the model's names alone: values of one way differ by their place in a list.
    """
    if isinstance(thing, Placed):
        yield *mutated(thing, kind), way
    elif isinstance(thing, dict):
        for key, each in thing.items():
            for new, *more in mutants(each, item(kind), way):
                yield {**thing, key: new}, *more
    elif isinstance(thing, tuple):
        for at, each in enumerate(thing):
            for new, *more in mutants(each, item(kind), way):
                yield (*thing[:at], new, *thing[at + 1 :]), *more
    elif has(type(thing)):
        for attribute in fields(type(thing)):
            if attribute.name in BY_LINKS:
                continue
            value = getattr(thing, attribute.name)
            for new, *more in mutants(value, item(attribute.type), (*way, attribute.name)):
                yield evolve(thing, **{attribute.name: new}), *more


def first_and_last(page):
    """Of the values of one way on a page, the first and the last: those between are told alike."""
    ways = {}
    for other, said, way in mutants(page):
        ways.setdefault(way, []).append((other, said))
    for alike in ways.values():
        yield alike[0]
        yield from alike[1:][-1:]


def item(kind):
    """The type inside a list, a mapping, an optional or a placed value."""
    inner = [each for each in get_args(kind) if each not in (type(None), str, ...)]
    if get_origin(kind) is Literal or not inner:
        return kind
    return item(inner[-1]) if get_origin(inner[-1]) else inner[-1]


def test_changed_values_of_every_sort_on_every_page_are_told(demo, paint):
    count, silent = 0, []
    for page in demo.pages():
        before = paint.portrait(page)
        for other, said in first_and_last(page):
            count += 1
            told = [change.words for change in compare(before, paint.portrait(other))]
            if not any(said in words for words in told) or told == [REWORDED]:
                silent.append((key_of(page), said, told))
    assert count >= FLOOR
    assert silent == []


def woven_again(manual, page, links):
    """The links of a manual in which one page differs: what other pages name is as it was."""
    uses = {**links.uses, page.file: uses_of(manual, page)}
    return weave(manual, uses, {**links.says, page.file: words_said(manual, page)})


def test_every_lost_neighbour_of_the_demo_manual_is_told(demo, paint):
    count = 0
    for id_, page in demo.procedures.items():
        alone = evolve(page, before=(), after=())
        other = evolve(demo, procedures={**demo.procedures, id_: alone})
        links = woven_again(other, alone, paint.links)
        told = [
            change.words
            for change in compare(paint.portrait(page), painter(other, links, DEMO).portrait(alone))
        ]
        for side, now, was in (
            ("before", links.before, paint.links.before),
            ("after", links.follows, paint.links.follows),
        ):
            for lost in set(was[id_]) - set(now[id_]):
                count += 1
                title = demo.procedures[lost].title.value
                assert f"procedure {side} {title} taken out" in told
    assert count > len(demo.procedures) / 2


BODY = ("steps", "text", "names")
"""What a portrait has from a page's body; the mark of a changed line names nothing new."""


def as_portrait(body, before):
    """That part of the portrait which a body makes, with the names of before."""
    made = texts(body)
    parts = {"steps": made.steps, "text": made.sections, "names": before.get("names")}
    return {name: part for name, part in parts.items() if part}


def is_heading(line):
    return line.startswith("#")


def unheld(page, before, lines):
    """Those of these lines, by their number, that the portrait lacks when all are marked."""
    marks = {at: f"mutant{at}." for at in lines}
    text = "\n".join(
        f"{line} {marks[at]}" if at in marks else line
        for at, line in enumerate(page.body.text.split("\n"))
    )
    held = repr(as_portrait(evolve(page.body, text=text), before))
    return [lines[at] for at, mark in marks.items() if mark not in held]


def test_every_line_of_the_demo_manual_is_in_its_portrait(demo, paint):
    """All lines of a page are marked at once, each its own way; headings apart, since they rule.

    That whatever differs between two portraits is told in words, the last test here says.
    """
    count, silent = 0, []
    for page in demo.pages():
        before = {name: part for name, part in paint.portrait(page).items() if name in BODY}
        assert before == as_portrait(page.body, before)
        numbered = enumerate(page.body.text.split("\n"))
        lines = {at: line for at, line in numbered if line.strip()}
        for of_headings in (False, True):
            some = {at: line for at, line in lines.items() if is_heading(line) == of_headings}
            silent += [(key_of(page), line) for line in unheld(page, before, some)]
        count += len(lines)
    assert count >= FLOOR
    assert silent == []


def test_a_manual_beside_itself_says_nothing(demo, paint):
    for page in demo.pages():
        assert compare(paint.portrait(page), paint.portrait(page)) == ()


TEXTS = st.text("ab7 .:", max_size=12) | st.sampled_from(["9 lbf·ft", "tool:hoist", "hazard:x"])
TREES = st.recursive(
    TEXTS,
    lambda inner: (
        st.lists(inner, max_size=4) | st.dictionaries(st.sampled_from("abcname"), inner, max_size=4)
    ),
    max_leaves=12,
)
PORTRAITS = st.fixed_dictionaries(
    {},
    optional={
        "facts": st.dictionaries(st.sampled_from(["tools", "fluid", "causes", "x"]), TREES),
        "order": st.dictionaries(st.sampled_from(["before", "after"]), st.lists(TEXTS)),
        "steps": st.lists(st.lists(TEXTS, max_size=3), max_size=4),
        "text": st.dictionaries(TEXTS, st.lists(TEXTS, max_size=3), max_size=3),
        "shows": st.dictionaries(TEXTS, st.dictionaries(TEXTS, TEXTS, max_size=2), max_size=3),
        "names": st.dictionaries(TEXTS, TEXTS, max_size=3),
    },
)


@given(PORTRAITS)
def test_any_portrait_beside_itself_says_nothing(portrait):
    assert compare(portrait, portrait) == ()


@given(PORTRAITS, PORTRAITS)
def test_there_are_words_exactly_where_the_revision_differs(old, new):
    assert bool(compare(old, new)) == (revision(old) != revision(new))
