"""`said-two-ways`: exact wording, and silence where the words are declared or said by others."""

import pytest

FILE = "tools/square-socket.md"


def test_wording(manual):
    manual.body(FILE, "For the kick-down.\n\nThe Kickdown, that is.\n")
    assert manual.found() == [
        (
            f"{FILE}:8:5 said-two-ways (look)",
            "kickdown",
            "The manual says kick-down and kickdown, and no page declares them as one word.",
            "Write one everywhere, or declare it on a page, under words: "
            "kick-down: {also: [kickdown]}.",
        )
    ]


def test_it_points_at_the_word_where_it_stands_first_whatever_stands_beside_it(manual):
    def places():
        return [each[:2] for each in manual.found()]

    first = "tools/slide-hammer.md"
    manual.body(FILE, "A tire. The tyre.\n")
    manual.body(first, "Enter (tires), a *tire*, a tire; none that is tired.\n")
    assert places() == [(f"{first}:6:19 said-two-ways (look)", "tire")]
    manual.body(first, "Enter (tires), *tires*; none that is tired.\n")
    assert places() == [(f"{FILE}:6:3 said-two-ways (look)", "tire")]
    manual.body(FILE, "The tyre.\n")
    assert places() == [(f"{first}:6:8 said-two-ways (look)", "tires")]


def test_words_of_two_countries_on_two_pages(manual):
    manual.body(FILE, "Beside the tyres.\n")
    manual.keys("tools/slide-hammer.md", "summary: Not for a tire.\n")
    assert [each[:3] for each in manual.found()] == [
        (
            "tools/slide-hammer.md:4:10 said-two-ways (look)",
            "tire",
            "The manual says tyre and tire, and no page declares them as one word.",
        )
    ]


@pytest.mark.parametrize(
    "text",
    [
        "The kick-down and again the kick-down.",
        'The tyre. The owner says "the tire".',
        "The kick-down, in code `kickdown`.",
        "A tyre, and tired hands.",
        "To re-seat it: a reseating tool.",
    ],
)
def test_silence(manual, text):
    manual.body(FILE, f"{text}\n")
    assert manual.found() == []


@pytest.mark.parametrize("declared", ["tyre: {heard: [tire]}", "tire: {heard: [tyre]}"])
def test_declared_words_are_known(manual, declared):
    manual.keys("index.md", f"words:\n  {declared}\n")
    manual.body(FILE, "The tyre, the tire.\n")
    assert manual.found() == []
