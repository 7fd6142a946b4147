"""`caution-in-prose`: exact wording, and silence where nothing is wrong."""

import pytest

FILE = "kestrel-3/clean-adjuster.md"


def step(manual, text):
    manual.body(FILE, f"## Steps\n\n1. Wipe it.\n\n    {text}\n")
    return manual.found()


@pytest.mark.parametrize(
    ("text", "column", "written"),
    [
        ("Warning: It is hot.", 5, "Warning: It is hot."),
        ("**CAUTION** : It is hot.", 7, "CAUTION** : It is hot."),
        ("DANGER!", 5, "DANGER!"),
        ("Notice", 5, "Notice"),
        ("!!! warning", 9, "warning"),
    ],
)
def test_in_a_step(manual, text, column, written):
    assert step(manual, text) == [
        (
            f"{FILE}:21:{column} caution-in-prose (stop)",
            written,
            "A caution in the text has no panel of its own: it is easily read over.",
            "Write <hazard:…> first in the step, with the id of the hazard's page.",
        )
    ]


def test_as_the_action_itself(manual):
    manual.body(FILE, "## Steps\n\n1. Caution: it is hot.\n")
    assert manual.codes() == ["caution-in-prose"]


@pytest.mark.parametrize("text", ["Caution is worth its minute.", "The word danger: see below.",
                                  "Note: It is cold."])  # fmt: skip
def test_in_a_sentence(manual, text):
    assert step(manual, text) == []


def test_a_plain_page_may_explain_the_words(manual):
    manual.body("index.md", "Warning: death or serious injury.\n")
    assert manual.found() == []
