"""Where a staged fill changes its mind, either side of each limit: common practice, no source."""

import pytest
from attrs import evolve
from underhoist_calculators.answer import Working
from underhoist_calculators.fill_answers import Drained, Filled, Stick, by_the_stick
from underhoist_calculators.filling import Sump, level_at_rule, rule_temperature
from underhoist_calculators.fluid_choice import FluidChoice
from underhoist_calculators.units import Span, quantity

SUMP = Sump(
    service_fill=quantity(4.2, "litre"),
    dry_fill=quantity(8.6, "litre"),
    between_marks=quantity(0.5, "litre"),
    rule=Span(quantity(65, "degree_Celsius"), quantity(80, "degree_Celsius")),
    density=quantity(860, "kilogram_per_cubic_metre"),
)
HOW = Working(what="Came out", formula="out = drained", numbers="4.3 L", result="4.3 L")


def stick(marks, celsius):
    """A reading in marks above full, and what it comes to at the rule's temperature."""
    read, temperature = quantity(marks, "mark_above_full"), quantity(celsius, "degree_Celsius")
    return Stick(
        read=read,
        temperature=temperature,
        at=rule_temperature(temperature, SUMP.rule),
        level=level_at_rule(read, temperature, SUMP),
    )


def answer(marks, celsius=70, *, added=None, sump=SUMP):
    out = Drained(volume=quantity(4.3, "litre"), measured=True, how=HOW)
    filled = Filled(
        fluid=FluidChoice(container=(), unknown=()),
        added=None if added is None else quantity(added, "litre"),
        level_before=None,
    )
    return by_the_stick(sump, out, stick(marks, celsius), filled)


@pytest.mark.parametrize(("marks", "leaves"), [(-0.1004, False), (-0.0999, True)])
def test_a_tenth_of_a_mark_is_what_a_film_hides_below(marks, leaves):
    # Two litres between the marks, or the jug's own 0.05 L would be what decides.
    found = answer(marks, sump=evolve(SUMP, between_marks=quantity(2, "litre")))
    assert found.summary.startswith("Leave it") is leaves


@pytest.mark.parametrize(("marks", "leaves"), [(0.1004, False), (0.0999, True)])
def test_a_tenth_of_a_mark_is_what_a_film_hides_above(marks, leaves):
    found = answer(marks)
    assert found.summary.startswith("Leave it") is leaves


@pytest.mark.parametrize(
    ("added", "begins"),
    [
        (4.5995, None),
        (4.6005, "0.30 L more goes in than came out."),
        (4.0005, None),
        (3.9995, "0.30 L less goes in than came out."),
    ],
)
def test_a_gap_has_a_name_beyond_three_tenths_of_a_litre(added, begins):
    told = answer(0, added=added).warnings
    assert [each.startswith(begins) for each in told] == ([True] if begins else [])


@pytest.mark.parametrize(("celsius", "warms"), [(44.9, True), (45.1, False)])
def test_far_below_the_rule_is_twenty_degrees(celsius, warms):
    # The rule begins at 65 °C. Over full even there, so nothing but the temperature decides.
    assert answer(1, celsius).summary.startswith("Warm the fluid") is warms


@pytest.mark.parametrize(("marks", "warns"), [(-1.01, True), (-1, False), (-0.9, False)])
def test_below_the_low_mark_a_stick_is_a_guess(marks, warns):
    guess = "Below the low mark the dipstick is a guess. Add the first step, then read again."
    assert (guess in answer(marks).warnings) is warns
