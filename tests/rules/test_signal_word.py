"""`signal-word`: exact wording, and silence where nothing is wrong.

The meanings of the words: ANSI Z535.4-2007 / Z535.6, paraphrased (check values SW-01 to SW-03).
"""

import pytest

FILE = "hazards/flying-parts.md"


def harm(manual, signal, text):
    manual.keys(FILE, f"signal: {signal}\nharm: {text}\n")
    return manual.found()


def test_death_under_caution(manual):
    assert harm(manual, "caution", "It falls and crushes whoever is below.") == [
        (
            f"{FILE}:7:9 signal-word (stop)",
            "caution",
            "The harm says “crushes whoever”: death or serious injury is at least WARNING.",
            "Write warning, or danger where it will happen unless avoided.",
        )
    ]


def test_injury_under_notice(manual):
    assert harm(manual, "notice", "It scalds.") == [
        (
            f"{FILE}:7:9 signal-word (stop)",
            "notice",
            "The harm says “scalds”: minor or moderate injury is at least CAUTION.",
            "Write caution.",
        )
    ]


@pytest.mark.parametrize(
    ("signal", "text"),
    [
        ("danger", "It kills."),
        ("warning", "It kills."),
        ("caution", "It cuts hands."),
        ("danger", "It cuts hands."),
        ("notice", "The clutches slip and burn, and the engine dies."),
        ("notice", "A tooth breaks and the shaft kills the engine."),
    ],
)
def test_strong_enough(manual, signal, text):
    assert harm(manual, signal, text) == []
