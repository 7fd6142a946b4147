"""A torque on a page: which unit leads, and what stands beside it."""

import pytest
from attrs import evolve
from underhoist_calculators.units import read_quantity

from underhoist.model import Body, Tool
from underhoist.pages.procedure import procedure_sheet
from underhoist.pages.torque_units import lead
from underhoist.place import Place, Placed

# Exact by definition: 1 lbf·ft = 12 lbf·in; 1 lbf·in = 0.112984829027617 N·m (NIST SP 811).


def wrench(covers, scale):
    from underhoist_calculators.units import read_span

    def placed(value, written):
        return Placed(value, Place("tool.md", 1, 1), written)

    return Tool(
        id="wrench", file="wrench.md", body=Body("", 1),
        title=placed("Wrench", "Wrench"), summary=placed("", ""),
        torque_range=placed(read_span(covers, "torque"), covers), scale=placed(scale, scale),
    )  # fmt: skip


INCH = wrench("30 to 200 lbf*in", "lbf*in")
FOOT = wrench("10 to 100 lbf*ft", "lbf*ft")


@pytest.mark.parametrize(
    ("torque", "tools", "text"),
    [
        ("12 lbf*ft", (), "12 lbf·ft"),
        ("12 lbf*ft", (INCH,), "144 lbf·in"),
        ("12 lbf*ft", (FOOT, INCH), "12 lbf·ft"),
        ("12 lbf*ft", (INCH, FOOT), "144 lbf·in"),
        ("28 lbf*ft", (INCH,), "28 lbf·ft"),
        ("28 lbf*ft", (INCH, FOOT), "28 lbf·ft"),
        ("200 lbf*in", (INCH,), "200 lbf·in"),
        ("40 N*m", (FOOT,), "29.5 lbf·ft"),
    ],
)
def test_scale_of_the_first_wrench_that_covers_it_leads(torque, tools, text):
    assert lead(read_quantity(torque, "torque"), tools).text == text


def test_unit_is_written_in_full_and_the_others_stand_beside_it():
    value = lead(read_quantity("120 lbf*in", "torque"), ())
    assert (value.number, value.words) == ("120", "pound-force inches")
    assert value.others == ("10 lbf·ft", "13.6 N·m", "1.38 kgf·m", "138 kgf·cm")


def test_torque_that_no_step_shows_is_not_lost(site):
    """The check refuses such a page, but its author sees it while he writes."""
    whole = site.manual.procedures["set-band"]
    text = whole.body.text.replace("Lock it: [the nut](torque:band-locknut).", "Lock it.")
    assert text != whole.body.text
    html = procedure_sheet(site, evolve(whole, body=evolve(whole.body, text=text))).html
    values = html.partition('<section class="uh-values">')[2].partition("</section>")[0]
    assert "Band locknut" in values
    assert "Band adjuster seat" not in values
