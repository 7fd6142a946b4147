"""Labels, read back from paper: symbols by ISO/IEC 18004, decoded by another library (ZXing)."""

import numpy as np
import pypdfium2
import pytest
import zxingcpp

from underhoist.bound.headless import printed
from underhoist.labels import Wanted, base_address, labels, sheet
from underhoist.labels.symbol import SMALLEST, symbol
from underhoist.project import Unusable

BASE = "https://manual.example.org/shop/"
MM = 25.4


@pytest.fixture(scope="module")
def made(demo):
    wanted = Wanted(families=("kestrel-3",), procedures=("set-band", "raise-vehicle"),
                    tools=("inch-pound-wrench",))  # fmt: skip
    return labels(demo.manual, BASE, wanted)


@pytest.fixture(scope="module")
def picture(demo, modules, made, printer):
    """The first page as a scanner with 200 dots an inch sees it."""
    pdf = pypdfium2.PdfDocument(printed(sheet(demo, made, modules)))
    assert len(pdf) == 1
    return pdf[0].render(scale=200 / 72, grayscale=True).to_numpy().reshape(2339, -1)


@pytest.mark.browser
def test_every_symbol_gives_its_address(picture, made):
    found = zxingcpp.read_barcodes(picture)
    assert {each.text for each in found} == {
        f"{BASE}families/kestrel-3/",
        f"{BASE}kestrel-3/set-band/",
        f"{BASE}any-unit/raise-vehicle/",
        f"{BASE}tools/inch-pound-wrench/",
    }
    assert len(found) == len(made)


@pytest.mark.browser
def test_a_symbol_is_large_enough_has_its_quiet_zone_and_level_q(picture):
    """ISO/IEC 18004: a quiet zone of four modules; level Q restores about 25 % of the codewords."""
    for each in zxingcpp.read_barcodes(picture):
        corner, right = each.position.top_left, each.position.top_right
        dark = (right.x - corner.x) / 200 * MM
        assert dark > SMALLEST
        assert each.ec_level in {"Q", "H"}
        quiet = round(4 * 0.6 / MM * 200) - 2
        left = picture[corner.y : corner.y + 40, corner.x - quiet : corner.x - 2]
        assert left.min() > 200


@pytest.mark.browser
def test_a_scratched_label_is_still_read(picture):
    """A tenth of each symbol's height is gone, across its middle."""
    scratched = np.array(picture)
    for each in zxingcpp.read_barcodes(picture):
        top, bottom = each.position.top_left, each.position.bottom_right
        middle, height = (top.y + bottom.y) // 2, bottom.y - top.y
        scratched[middle : middle + height // 12, top.x + height // 4 : bottom.x] = 255
    before = {each.text for each in zxingcpp.read_barcodes(picture)}
    assert {each.text for each in zxingcpp.read_barcodes(scratched)} == before


def test_the_labels_say_title_family_and_address_in_text(demo, modules, made):
    html = sheet(demo, made, modules)
    for words in ("Set the front band", "Kestrel 3", "Any unit", "Invented figures",
                  "manual.example.org/shop/kestrel-3/set-band"):  # fmt: skip
        assert words in html


def test_without_a_choice_there_is_one_for_each(demo):
    manual = demo.manual
    count = len(manual.families) + len(manual.procedures) + len(manual.tools)
    assert len(labels(manual, BASE, Wanted())) == count


def test_a_name_that_is_not_there(demo):
    with pytest.raises(Unusable, match="torchh: the manual has no tool of that name"):
        labels(demo.manual, BASE, Wanted(tools=("torchh",)))


@pytest.mark.parametrize(
    ("given", "taken"),
    [
        ("https://manual.example.org", "https://manual.example.org/"),
        (" https://manual.example.org:8443/shop ", "https://manual.example.org:8443/shop/"),
    ],
)
def test_addresses_that_are_taken(given, taken):
    assert base_address(given) == taken


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ("", "--address https://manual.example.org/"),
        ("http://manual.example.org/", "beginning with https://"),
        ("manual.example.org", "beginning with https://"),
        ("https://", "beginning with https://"),
        ("https://a.example/?x=1", "beginning with https://"),
        ("https://user@a.example/", "beginning with https://"),
        ("https://localhost/", "each phone takes this for itself"),
        ("https://[::1/", "this is no address"),
        ("javascript:alert(1)", "beginning with https://"),
    ],
)
def test_addresses_that_are_refused(given, said):
    with pytest.raises(Unusable) as caught:
        base_address(given)
    assert said in str(caught.value)


def test_a_short_address_is_not_drawn_smaller_than_a_phone_reads():
    assert symbol("https://a.example/")[1] >= SMALLEST
