"""A body as rules see it: code blanked without moving anything, steps told apart."""

import pytest

from underhoist.model import Body
from underhoist.place import Place
from underhoist.prose import prose


def text(body):
    return prose(Body(body, 1)).text


def steps(body):
    return [step.text for step in prose(Body(body, 1)).steps]


@pytest.mark.parametrize(
    ("body", "blanked"),
    [
        ("a `b` c", "a     c"),
        ("a `` b ` c `` d", "a             d"),
        ("a `b c", "a `b c"),
        ("`a` `` `b`", "        b`"),  # fewer of the backticks open one, as on the page
        ("a \\`b` c", "a \\`b` c"),
        ("a \\\\`b` c", "a       c"),
        ("```a`` b ``", "       b ``"),
        ("a ` b\nc ` [d](e) ` f", "a ` b\nc   [d](e) ` f"),  # the first two belong together
        ("- a `b\n- `[c](d)` e", "- a `b\n-  [c](d)` e"),
        ("`<!--` b `-->`", "       b      "),
        ("<!-- ` --> b `c`", "           b    "),
        ("<!--> b -->", "      b -->"),
        ("```py title=a\nb\n\nc\n```", "```py title=a\nb\n\nc\n```"),  # no fence on the page
        ("x\n```\ny\n```\nz", "x\n   \n \n   \nz"),
        ("~~~ text\n```\n~~~\nz", "        \n   \n   \nz"),
        ("```\nopen `a`", "```\nopen  a`"),
        ("``` a ``` b\n`c` d", "          b\n    d"),
        ("    ```\n    y\n    ```\nz", "       \n     \n       \nz"),
        ("a <!-- b\nc --> d", "a       \n      d"),
        ("a <!-- b", "a <!-- b"),
        ("--> a <!-- b --> c <!--", "--> a            c <!--"),
    ],
)
def test_code_and_comments_are_blanked_in_place(body, blanked):
    assert text(body) == blanked
    assert len(text(body)) == len(body)


def test_words_leave_targets_out():
    body = "Raise [the car](procedure:raise-car) by <tool:hoist>."
    assert prose(Body(body, 1)).words == f"Raise [the car{' ' * 21}) by {' ' * 12}."


def test_places_count_from_the_first_line_of_the_body():
    body = prose(Body("ab\ncd\n", 7))
    assert body.place(0, "x.md") == Place("x.md", 7, 1)
    assert body.place(4, "x.md") == Place("x.md", 8, 2)


def test_steps_are_the_items_below_their_heading():
    ours = "## Steps\n\n1. One\n\n    Why: a.\n2. Two\n   more\n\n"
    body = f"1. not this\n\n{ours}## Then\n\n1. not that\n"
    assert steps(body) == ["1. One\n\n    Why: a.\n", "2. Two\n   more"]


def test_a_paragraph_at_the_margin_ends_the_list():
    assert steps("## steps\n\n1. One\n\nText.\n\n1. Other\n") == ["1. One"]


def test_a_list_at_another_level_is_part_of_its_step():
    assert len(steps("## Steps\n\n1. One\n\n    1. a\n    2. b\n\n2. Two\n")) == 2


@pytest.mark.parametrize("body", ["", "## Steps", "## Steps\n- a", "# Steps\n1. a", "1. a"])
def test_no_steps(body):
    assert steps(body) == []


def test_paragraphs_of_a_step():
    body = "## Steps\n\n1. <hazard:a>\n\n    Turn it\n    once.\n\n    Good: b.\n"
    (step,) = prose(Body(body, 1)).steps
    found = list(step.paragraphs())
    assert [paragraph for _, paragraph in found] == [
        "<hazard:a>", "Turn it\n    once.", "Good: b.",
    ]  # fmt: skip
    assert [body[offset:].split(maxsplit=1)[0] for offset, _ in found] == [
        "<hazard:a>",
        "Turn",
        "Good:",
    ]
