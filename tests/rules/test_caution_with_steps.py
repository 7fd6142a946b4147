"""`caution-with-steps`: exact wording, and silence where nothing is wrong.

A warning is concise and holds no complete process: EN 82079-1 as summarised (check value SW-18).
"""

import pytest

FILE = "hazards/hot-fluid.md"
MEND = "Move the steps to the procedure, and keep in the caution what to avoid."


def avoid(manual, text):
    manual.keys(FILE, f'avoid: "{text}"\n')
    return manual.found()


def test_numbered(manual):
    assert avoid(manual, "1. Switch off. 2. Wait.") == [
        (
            f"{FILE}:8:8 caution-with-steps (look)",
            "1. Switch off. 2. Wait.",
            "The caution holds numbered steps.",
            MEND,
        )
    ]


def test_many_sentences(manual):
    assert avoid(manual, "Stop. Look. Wait. Touch. Go.") == [
        (
            f"{FILE}:8:8 caution-with-steps (look)",
            "Stop. Look. Wait. Touch. Go.",
            "The caution has 5 sentences here: nobody reads so many before an action.",
            MEND,
        )
    ]


def test_many_words(manual):
    ((_, _, wrong, mend),) = avoid(manual, " ".join(["wait"] * 61))
    assert wrong == "The caution has 61 words here: nobody reads so many before an action."
    assert mend == MEND


@pytest.mark.parametrize(
    "text", ["Stop. Look. Wait. Go.", " ".join(["wait"] * 60), "Keep 1.5 m away, or 2."]
)
def test_short(manual, text):
    assert avoid(manual, text) == []
