"""A revision changes when the page would read differently, and only then."""

import json
import re

from underhoist.pages.card_data import card_files, cards_of
from underhoist.pages.revisions import revision_of


def revision(site, id_="set-band"):
    return revision_of(site, site.manual.procedures[id_])


def test_revision_is_ten_hexadecimal_digits(site):
    assert re.fullmatch("[0-9a-f]{10}", revision(site))


def test_own_text_changes_it(site, changed):
    assert revision(changed("jobs/set-band.md", ("Wipe the case.", "Clean it."))) != revision(site)


def test_torque_that_stands_elsewhere_changes_it(site, changed):
    other = changed("families/wren-2.md", ("120 lbf*in", "110 lbf*in"))
    assert revision(other) != revision(site)
    assert revision(other, "raise") == revision(site, "raise")


def test_harm_of_a_hazard_changes_it(site, changed):
    assert revision(changed("hazards/hot-fluid.md", ("Fluid scalds.", "Burns."))) != revision(site)


def test_line_ends_and_a_byte_order_mark_do_not_change_it(site, changed):
    other = changed("jobs/set-band.md")
    file = other.folder / "jobs/set-band.md"
    text = file.read_text(encoding="utf-8")
    file.write_bytes(b"\xef\xbb\xbf" + text.replace("\n", "  \r\n").encode())
    assert revision(other) == revision(site)


def test_card_has_the_revision_of_the_page(site, pages):
    files = dict(card_files(site, cards_of(site, pages)))
    card = json.loads(files["cards/data/set-band.json"])
    assert card["revision"] == pages["jobs/set-band/"].revision
    listed = json.loads(files["cards/data/index.json"])["procedures"]
    assert {each["id"]: each["revision"] for each in listed}["set-band"] == card["revision"]
