"""Writing quantities: rounding, fractions of a turn, words."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from underhoist_calculators.units import (
    UnitError,
    convert,
    number_text,
    quantity,
    read_quantity,
    show,
    show_number,
    unit_symbol,
    unit_words,
)


@pytest.mark.parametrize(
    ("text", "unit", "shown"),
    [
        ("120 lbf·in", "N·m", "13.6 N·m"),
        ("120 lbf·in", "lbf·ft", "10 lbf·ft"),
        ("120 lbf·in", None, "120 lbf·in"),
        ("1.38255 kgf·m", None, "1.38255 kgf·m"),
        ("1234 lbf·in", "N·m", "139 N·m"),
        ("1200 kgf·cm", "lbf·in", "1042 lbf·in"),
        ("1.5 turns", None, "1 1/2 turns"),
        ("0.5 turns", None, "1/2 turn"),
        ("1 turn", None, "1 turn"),
        ("1.6 turns", None, "1.6 turns"),
        ("540 deg", "turn", "1 1/2 turns"),
        ("90 deg", None, "90°"),
        ("0.5 below full", None, "0.5 mark below full"),
        ("-0.0001 L", "L", "\N{MINUS SIGN}0.0001 L"),
        ("2.92", None, "2.92"),
    ],
)
def test_show(text, unit, shown):
    kind = "ratio" if text == "2.92" else None
    assert show(read_quantity(text, kind), unit) == shown


def test_decimals_are_kept_where_asked():
    assert show(quantity(3.8, "litre"), digits=2) == "3.80 L"
    assert show_number(quantity(1.5, "turn"), digits=2) == "1.50"


@pytest.mark.parametrize(
    ("value", "digits", "text"),
    [
        (16.5, 0, "17"),
        (2.5, 0, "3"),
        (0.045, 2, "0.05"),
        (-0.001, 2, "0.00"),
        (1e6, None, "1000000"),
    ],
)
def test_numbers_round_half_up(value, digits, text):
    # SP-11 in the check values: Python's own round() takes 16.5 to 16.
    assert number_text(value, digits) == text


def test_words():
    assert unit_words("lbf*in") == "pound-force inches"
    assert unit_symbol("foot pounds") == "lbf·ft"
    with pytest.raises(UnitError, match='"florp" is not a unit known here'):
        unit_words("florp")


def test_other_kinds_are_not_converted():
    with pytest.raises(UnitError) as refused:
        convert(quantity(9, "newton_metre"), "L")
    assert str(refused.value) == "9 N·m cannot be given in L. Ask for a unit of a torque."


def test_what_is_not_finite_is_not_written():
    with pytest.raises(ValueError, match="cannot be written"):
        number_text(float("inf"))


@given(st.floats(-1e6, 1e6).filter(lambda x: x == 0 or abs(x) > 1e-6))
def test_what_is_shown_can_be_read_again(value):
    litres = quantity(value, "litre")
    again = read_quantity(show(litres))
    assert again.magnitude == pytest.approx(value, rel=5e-6)


@given(st.integers(-320, 320).filter(bool))
def test_fractions_of_a_turn_are_exact(sixteenths):
    turns = quantity(sixteenths / 16, "turn")
    assert read_quantity(show(turns)).magnitude == sixteenths / 16
