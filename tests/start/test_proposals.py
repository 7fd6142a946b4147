"""What is proposed is what the rules ask for, on every procedure of the demo manual."""

from pathlib import Path

import attrs
import pytest

from underhoist.check import check
from underhoist.model import Body
from underhoist.rules import tool_without_hazard, wrench_out_of_range
from underhoist.start.proposals import required_hazards, wrenches

DEMO = Path(__file__).parents[2] / "procedures"
MANUAL = check(DEMO).manual


@pytest.mark.parametrize("name", MANUAL.procedures)
def test_the_cautions_are_those_that_the_rule_misses(name):
    procedure = attrs.evolve(MANUAL.procedures[name], cautions=(), body=Body("", 1))
    manual = attrs.evolve(MANUAL, procedures={name: procedure})
    missed = {found.mend for found in tool_without_hazard.check_page(manual, procedure)}
    proposed = required_hazards(
        MANUAL,
        [each.value for each in procedure.tools],
        [procedure.area.value],
        [each.value for each in procedure.fluids],
    )
    assert {f"Add {each} to cautions." for each in proposed} == missed


@pytest.mark.parametrize("name", MANUAL.families)
def test_every_torque_of_the_demo_has_a_wrench_that_the_rule_takes(name):
    for fastener in MANUAL.families[name].fasteners.values():
        (wrench,) = wrenches(MANUAL, [fastener.torque.value])
        span = MANUAL.tools[wrench].torque_range.value
        assert wrench_out_of_range._covered(fastener.torque.value, [span])


def test_the_wrench_that_reads_the_torque_s_own_unit_goes_first():
    fasteners = MANUAL.families["kestrel-3"].fasteners
    assert wrenches(MANUAL, [fasteners["band-seat"].torque.value]) == ("inch-pound-wrench",)
    assert wrenches(MANUAL, [fasteners["band-locknut"].torque.value]) == ("foot-pound-wrench",)


def test_without_a_wrench_that_covers_it_there_is_none():
    few = attrs.evolve(MANUAL, tools={})
    torque = MANUAL.families["kestrel-3"].fasteners["band-seat"].torque.value
    assert wrenches(few, [torque]) == ()
