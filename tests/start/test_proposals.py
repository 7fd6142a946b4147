"""What is proposed is what the rules ask for, on every procedure of the demo manual."""

from pathlib import Path

import attrs
import pytest

from underhoist.check import check
from underhoist.model import Body
from underhoist.rules import tool_without_hazard, wrench_out_of_range
from underhoist.start.proposals import required_hazards, wrenches

DEMO = Path(__file__).parents[2] / "procedures"


@pytest.fixture(scope="module")
def manual():
    return check(DEMO).manual


def test_the_cautions_are_those_that_the_rule_misses(manual):
    wrong = {}
    for name in manual.procedures:
        procedure = attrs.evolve(manual.procedures[name], cautions=(), body=Body("", 1))
        alone = attrs.evolve(manual, procedures={name: procedure})
        missed = {found.mend for found in tool_without_hazard.check_page(alone, procedure)}
        proposed = required_hazards(
            manual,
            [each.value for each in procedure.tools],
            [procedure.area.value],
            [each.value for each in procedure.fluids],
        )
        if {f"Add {each} to cautions." for each in proposed} != missed:
            wrong[name] = (proposed, missed)
    assert manual.procedures
    assert wrong == {}


def test_every_torque_of_the_demo_has_a_wrench_that_the_rule_takes(manual):
    uncovered = []
    for family in manual.families.values():
        for name, fastener in family.fasteners.items():
            (wrench,) = wrenches(manual, [fastener.torque.value])
            span = manual.tools[wrench].torque_range.value
            if not wrench_out_of_range._covered(fastener.torque.value, [span]):
                uncovered.append((family.id, name))
    assert manual.families
    assert uncovered == []


def test_the_wrench_that_reads_the_torque_s_own_unit_goes_first(manual):
    fasteners = manual.families["kestrel-3"].fasteners
    assert wrenches(manual, [fasteners["band-seat"].torque.value]) == ("inch-pound-wrench",)
    assert wrenches(manual, [fasteners["band-locknut"].torque.value]) == ("foot-pound-wrench",)


def test_without_a_wrench_that_covers_it_there_is_none(manual):
    few = attrs.evolve(manual, tools={})
    torque = manual.families["kestrel-3"].fasteners["band-seat"].torque.value
    assert wrenches(few, [torque]) == ()
