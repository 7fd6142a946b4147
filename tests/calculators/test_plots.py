"""The drawings: true to scale, whole, described in words, and safe."""

import re
from itertools import pairwise
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st
from underhoist_calculators import adapter_plot, dipstick_plot, door
from underhoist_calculators.adapter import Arm
from underhoist_calculators.dipstick_plot import Shown
from underhoist_calculators.units import quantity

SVG = "{http://www.w3.org/2000/svg}"


def arm(adapter, angle):
    return Arm(
        wrench=quantity(300, "millimetre"),
        adapter=quantity(adapter, "millimetre"),
        angle=quantity(angle, "degree"),
    )


def read(svg):
    root = ElementTree.fromstring(svg)  # noqa: S314 - our own text
    return root, [text.text for text in root.iter(f"{SVG}text")]


def inside(root, *, letters=9):
    """Every label with room for its letters, every round thing and line: within the drawing."""
    width, height = (float(n) for n in root.attrib["viewBox"].split()[2:])
    for text in root.iter(f"{SVG}text"):
        x, y = float(text.attrib["x"]), float(text.attrib["y"])
        long = letters * len(text.text or "")
        shift = {"middle": long / 2, "end": long}.get(text.attrib.get("text-anchor", ""), 0)
        assert x - shift >= 0, text.text
        assert x - shift + long <= width, text.text
        assert 14 <= y <= height, text.text
    for circle in root.iter(f"{SVG}circle"):
        assert float(circle.attrib["cx"]) >= 9
        assert float(circle.attrib["cx"]) + 9 <= width
        assert float(circle.attrib["cy"]) >= 9


def fastener(root):
    head = next(root.iter(f"{SVG}circle"))
    return float(head.attrib["cx"]), float(head.attrib["cy"])


def drive(root):
    (square,) = (
        p.attrib["d"] for p in root.iter(f"{SVG}path") if p.attrib["d"].endswith("h14v14h-14z")
    )
    x, y = re.match(r"M([\d.]+) ([\d.]+)", square).groups()
    return float(x) + 7, float(y) + 7


@given(st.floats(0, 299), st.floats(0, 180))
def test_an_adapter_fits_its_drawing(adapter, angle):
    root, _ = read(adapter_plot.draw(arm(round(adapter), round(angle))))
    inside(root, letters=7.5)


@pytest.mark.parametrize(("angle", "way"), [(0, (1, 0)), (90, (0, -1)), (180, (-1, 0))])
def test_the_adapter_points_as_stated(angle, way):
    root, _ = read(adapter_plot.draw(arm(75, angle)))
    (x, y), (x0, y0) = fastener(root), drive(root)
    reach = ((x - x0) ** 2 + (y - y0) ** 2) ** 0.5
    assert ((x - x0) / reach, (y - y0) / reach) == pytest.approx(way, abs=0.01)
    # 75 of 300 mm, true to scale; the hand is at 40.
    assert reach / (x0 - 40) == pytest.approx(0.25, rel=0.01)


def test_the_adapter_in_words():
    assert adapter_plot.describe(arm(75, 180)) == (
        "The wrench is 300 mm from grip to drive, the adapter 75 mm from drive to fastener at "
        "180°. From hand to fastener, along the wrench: 225 mm."
    )
    _, texts = read(adapter_plot.draw(arm(75, 180)))
    assert texts == ["L 300 mm", "225 mm to the fastener", "E 75 mm, θ 180°"]


LEVELS = st.lists(st.floats(-3, 3), min_size=1, max_size=3)


@given(LEVELS)
def test_levels_fit_and_their_labels_stay_apart(marks):
    levels = [Shown(mark, f"at {n}00 °C", now=n == 0) for n, mark in enumerate(marks)]
    root, texts = read(dipstick_plot.draw(levels, "Words."))
    inside(root, letters=8)
    assert texts == ["Full", "Low", *(level.label for level in levels)]
    heights = sorted(float(text.attrib["y"]) for text in list(root.iter(f"{SVG}text"))[2:])
    assert all(b - a >= 23 for a, b in pairwise(heights))


def line_of(root, css):
    return [float(p.attrib["d"].split()[1].split("H")[0])
            for p in root.iter(f"{SVG}path") if p.attrib.get("class") == css]  # fmt: skip


def test_levels_stand_where_the_marks_are():
    levels = (Shown(-1, "now", now=True), Shown(0, "warm"), Shown(-0.5, "between"))
    root, texts = read(dipstick_plot.draw(levels, "Words."))
    ((low,), (full, half)) = (
        line_of(root, "uh-plot__measured"), line_of(root, "uh-plot__curve"),
    )  # fmt: skip
    drawn = [p.attrib["d"] for p in root.iter(f"{SVG}path")]
    assert any(re.fullmatch(rf"M\d+ {full:.0f}H\d+", d) for d in drawn)
    assert any(re.fullmatch(rf"M\d+ {low:.0f}H\d+", d) for d in drawn)
    assert half == pytest.approx((full + low) / 2)
    assert texts[:2] == ["Full", "Low"]


@pytest.mark.parametrize("name", ["adapter-setting", "level-temperature"])
def test_the_answer_carries_its_drawing_with_words(name):
    result = door.run(name, door.example(name))
    picture = result["answer"]["picture"]
    root, _ = read(picture)
    assert root.find(f"{SVG}title").text
    assert root.find(f"{SVG}desc").text.endswith(".")
    assert f'<figure class="uh-plot">{picture}</figure>' in result["answer_html"]


def test_texts_are_escaped():
    picture = dipstick_plot.draw([Shown(0, "<b>&")], "<script>")
    assert "<b>" not in picture
    assert "<script>" not in picture
    assert read(picture)[1][-1] == "<b>&"
