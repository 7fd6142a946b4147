"""Own drawings in one visual language: described, legible on a phone, their numbers explained."""

import re
from pathlib import Path

import pytest

PROCEDURES = Path(__file__).resolve().parents[2] / "procedures"
DRAWINGS = sorted((PROCEDURES / "drawings").glob("*.svg"))
PAPER_AND_INK = {"#FBF8F1", "#15242C"}
AN_ORDER = {"pan-bolt-order"}
"""Drawings whose numbers are an order of work, told in a sentence."""


def numbers_in(svg: str) -> set[int]:
    return {int(number) for number in re.findall(r">(\d+)</text>", svg)}


def test_there_are_at_least_fifteen():
    assert len(DRAWINGS) >= 15


@pytest.mark.parametrize("file", DRAWINGS, ids=lambda file: file.stem)
class TestDrawing:
    def test_says_what_it_is_and_what_it_shows(self, file):
        svg = file.read_text("utf-8")
        assert 'role="img"' in svg
        assert re.search(r"<title [^>]*>.{5,}</title>", svg)
        assert re.search(r"<desc [^>]*>.{60,}</desc>", svg)

    def test_is_drawn_for_a_phone_in_ink_on_paper(self, file):
        svg = file.read_text("utf-8")
        assert 'width="340"' in svg
        assert all(int(size) >= 16 for size in re.findall(r'font-size="(\d+)"', svg))
        assert set(re.findall(r"#[0-9A-Fa-f]{6}\b", svg)) <= PAPER_AND_INK

    def test_every_number_is_explained_below_it(self, file):
        pages = [page.read_text("utf-8") for page in PROCEDURES.rglob("*.md")]
        shown = [page for page in pages if f"/{file.name})" in page]
        assert shown
        numbers = numbers_in(file.read_text("utf-8"))
        if file.stem in AN_ORDER or not numbers:
            return
        below = shown[0].partition(f"/{file.name})")[2]
        told = re.match(r"\n\n(?:\D.*\n\n)?((?:\d+\. .*\n(?: .*\n)*)+)", below)
        assert told, "no numbered list below the drawing"
        assert numbers == {int(each) for each in re.findall(r"(?m)^(\d+)\. ", told[1])}
