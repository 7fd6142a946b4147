"""Every pair of colours that can meet on a page, computed from the one file that holds them.

The formula for relative luminance and contrast ratio is WCAG 2.2, "contrast ratio"; 7:1 is its
criterion 1.4.6 (text), 3:1 its criterion 1.4.11 (lines and shapes that carry meaning).
"""

import re
from itertools import product
from pathlib import Path

import pytest

STYLES = Path(__file__).parents[2] / "site_overrides" / "assets" / "styles"
SCHEMES = ("light", "dark", "paper")
TEXT = ("ink", "soft", "accent")
GROUND = ("paper", "panel")
SIGNAL = {
    "danger": "on-dark-signal",
    "warning": "on-light-signal",
    "caution": "on-light-signal",
    "notice": "on-dark-signal",
}


def colours(scheme: str) -> dict[str, str]:
    """The tokens of a scheme; "paper" is what the print styles lay over the light one."""
    text = (STYLES / "tokens.css").read_text()
    blocks = re.findall(r":root(\[data-paper=\"dark\"\])? \{(.*?)\}", text, re.S)
    found: dict[str, str] = {}
    for dark, body in blocks:
        if not dark or scheme == "dark":
            found |= dict(re.findall(r"--([\w-]+): (#[0-9a-f]{6});", body))
    if scheme == "paper":
        found |= dict(
            re.findall(r"--([\w-]+): (#[0-9a-f]{6});", (STYLES / "print.css").read_text())
        )
    return found


def luminance(colour: str) -> float:
    parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    linear = [p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: str, other: str) -> float:
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_the_formula_gives_the_two_ends_of_the_scale() -> None:
    assert contrast("#000000", "#ffffff") == pytest.approx(21)  # WCAG 2.2, definition
    assert contrast("#777777", "#777777") == pytest.approx(1)


@pytest.mark.parametrize(("scheme", "text", "ground"), list(product(SCHEMES, TEXT, GROUND)))
def test_text_stands_out_seven_to_one(scheme: str, text: str, ground: str) -> None:
    tokens = colours(scheme)
    assert contrast(tokens[text], tokens[ground]) >= 7


@pytest.mark.parametrize(("scheme", "ground"), list(product(SCHEMES, GROUND)))
def test_lines_stand_out_three_to_one(scheme: str, ground: str) -> None:
    tokens = colours(scheme)
    assert contrast(tokens["line"], tokens[ground]) >= 3


@pytest.mark.parametrize("scheme", ("light", "dark"))
def test_words_on_a_button_stand_out_seven_to_one(scheme: str) -> None:
    tokens = colours(scheme)
    assert contrast(tokens["on-accent"], tokens["accent"]) >= 7


@pytest.mark.parametrize(("signal", "word"), list(SIGNAL.items()))
def test_signal_words_stand_out_seven_to_one(signal: str, word: str) -> None:
    tokens = colours("light")
    assert contrast(tokens[word], tokens[signal]) >= 7


@pytest.mark.parametrize("signal", list(SIGNAL))
def test_safety_colours_are_the_same_on_both_papers(signal: str) -> None:
    assert colours("light")[signal] == colours("dark")[signal]


def test_safety_colours_appear_in_signal_panels_only() -> None:
    used = {
        file.name
        for file in STYLES.glob("*.css")
        if re.search(r"var\(--(danger|warning|caution|notice)\)", file.read_text())
    }
    assert used == {"hazard.css"}


def test_no_colour_is_written_outside_the_tokens() -> None:
    """White and black on paper, and the pale ground under a drawing, are the exceptions."""
    allowed = {"tokens.css": None, "print.css": {"#ffffff", "#000000", "#595959"}}
    allowed["drawing.css"] = {"#fbf8f1"}
    strays = {
        (file.name, colour)
        for file in STYLES.glob("*.css")
        if allowed.get(file.name, set()) is not None
        for colour in re.findall(r"(?<![\w(%])#[0-9a-fA-F]{3,8}\b", file.read_text())
        if colour not in (allowed.get(file.name) or set())
    }
    assert strays == set()
