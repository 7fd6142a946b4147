"""The edits that rules offer, and where they offer none because a meaning might change."""

import pytest

from underhoist.check import check
from underhoist.mends import apply

BAND = "kestrel-3/set-band.md"


def mended(manual, file=BAND):
    """The page's lines that the offered edits change."""
    text = (manual.folder / file).read_text(encoding="utf-8")
    edits = [each.edit for each in check(manual.folder).findings if each.edit]
    new = apply(text, edits)
    return [line for line in new.split("\n") if line not in text.split("\n")]


@pytest.mark.parametrize(
    ("written", "wanted"),
    [
        ("cautions: [raised-vehicle]", ["cautions: [raised-vehicle, flying-parts]"]),
        ("cautions:\n  - raised-vehicle", ["  - flying-parts"]),
        ("cautions:\n- raised-vehicle", ["- flying-parts"]),
        ("cautions: raised-vehicle", []),
        ('cautions: ["raised-vehicle"]', []),
        ("cautions: []", []),
    ],
)
def test_a_caution_is_added_where_it_is_plain_how_the_list_is_written(manual, written, wanted):
    manual.keys(BAND, f"tools: [inch-pound-wrench, slide-hammer]\n{written}\n")
    assert [line for line in mended(manual) if "flying" in line] == wanted


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("Seat it to <torque:band-seet>.", "Seat it to <torque:band-seat>."),
        ("[Band-seet](torque:band-seet) it.", "[Band-seet](torque:band-seat) it."),
        ("Seat it to <torque:wheel-nut>.", None),
    ],
)
def test_a_misspelt_id_in_the_text(manual, text, wanted):
    manual.body(BAND, f"## Steps\n\n1. {text}\n\n    Second check: Look.\n")
    found = [line for line in mended(manual) if "torque:" in line]
    assert found == ([f"1. {wanted}"] if wanted else [])


@pytest.mark.parametrize(
    ("value", "wanted"),
    [("9 lbf·ft", None), ("120 lbf·in", "<torque:band-seat>"), ("10 lbf·ft", "<torque:band-seat>")],
)
def test_a_torque_of_the_same_value_becomes_the_reference(manual, value, wanted):
    family = (manual.folder / "families/kestrel-3.md").read_text(encoding="utf-8")
    assert "band-seat" in family
    seat = next(line for line in family.split("\n") if "band-seat:" in line)
    torque = seat.split("torque: ")[1].split(",")[0].rstrip("}")
    manual.page(
        "families/kestrel-3.md", family.replace(f"torque: {torque}", "torque: 120 lbf*in", 1)
    )
    body = (
        f"## Steps\n\n1. Seat it to {value}, see <torque:band-seat>.\n\n    Second check: Look.\n"
    )
    manual.body(BAND, body)
    found = [line for line in mended(manual) if "Seat it" in line]
    assert found == ([f"1. Seat it to {wanted}, see <torque:band-seat>."] if wanted else [])
