"""Reading quantities: what is understood, and the exact words of what is refused."""

import pytest
from underhoist_calculators.units import (
    KINDS,
    UnitError,
    kind_of,
    read_quantity,
    read_span,
    show,
    unit_name,
    units_of,
)


@pytest.mark.parametrize(
    ("text", "kind", "value", "unit"),
    [
        ("9 lbf*ft", "torque", 9, "pound_force_foot"),
        ("9 lbf·ft", None, 9, "pound_force_foot"),
        ("10 ft-lb", "torque", 10, "pound_force_foot"),
        ("10 ft. lbs.", "torque", 10, "pound_force_foot"),
        ("10 foot pounds", "torque", 10, "pound_force_foot"),
        ("120 in lb", None, 120, "pound_force_inch"),
        ("120 inch pounds", None, 120, "pound_force_inch"),
        ("12 Nm", None, 12, "newton_metre"),
        ("12N·m", None, 12, "newton_metre"),
        ("2 kg·m", "torque", 2, "kilogram_force_metre"),
        ("1 1/2 turns", "turns", 1.5, "turn"),
        ("1½ turns", "turns", 1.5, "turn"),
        ("3/4 turn", "turns", 0.75, "turn"),
        ("90 deg", "turns", 90, "degree"),
        ("4 qt US", "volume", 4, "US_quart"),
        ("4 US qt", "volume", 4, "US_quart"),
        ("4 qt imperial", "volume", 4, "imperial_quart"),
        ("17 inHg", "pressure", 17, "conventional_inch_of_mercury"),
        ("17 in. Hg", "pressure", 17, "conventional_inch_of_mercury"),
        ("2 kg/cm²", "pressure", 2, "kilogram_force_per_square_centimetre"),
        ("80 °C", "temperature", 80, "degree_Celsius"),
        ("\N{MINUS SIGN}5 degC", None, -5, "degree_Celsius"),
        ("10 degC", "temperature_difference", 10, "delta_degree_Celsius"),
        ("2.92", "ratio", 2.92, "dimensionless"),
        ("40 %", "ratio", 40, "percent"),
        ("0.5 below full", "level", 0.5, "mark_below_full"),
        ('5/16"', "length", 0.3125, "inch"),
        (".5 mm", None, 0.5, "millimetre"),
        ("60 mph", "speed", 60, "mile_per_hour"),
    ],
)
def test_understood(text, kind, value, unit):
    found = read_quantity(text, kind)
    assert (found.magnitude, unit_name(found)) == (pytest.approx(value), unit)


@pytest.mark.parametrize(
    ("text", "kind", "code", "said"),
    [
        ("12 lb", "torque", "unit-wrong-kind",
         "lb is a unit of a mass, not of a torque. Write 12 N·m, 12 lbf·ft or 12 lbf·in."),
        ("4 quarts", "volume", "unit-ambiguous",
         '"quarts" can be US or imperial. Write 4 qt US or 4 qt imperial.'),
        ("4 fl oz", None, "unit-ambiguous",
         '"fl oz" can be US or imperial. Write 4 fl oz US or 4 fl oz imperial.'),
        ("4", "torque", "unit-missing",
         "The unit is missing. Write 4 N·m, 4 lbf·ft or 4 lbf·in."),
        ("4", None, "unit-missing",
         "The unit is missing. Write 4 lbf·ft, 4 L or 4 km/h."),
        ("4,2 L", "volume", "not-a-number",
         "A comma in a number can mean two things. Write 4.2 L."),
        ("1,200 N·m", None, "not-a-number",
         "A comma in a number can mean two things. Write 1200 N·m or 1.200 N·m."),
        ("nan L", "volume", "not-a-number",
         'No number can be read at the start of "nan L". Write a number and its unit, e.g. 2 L.'),
        ("inf L", "volume", "not-a-number",
         'No number can be read at the start of "inf L". Write a number and its unit, e.g. 2 L.'),
        ("1e999 L", "volume", "not-a-number",
         "The number is too large to be meant. Write a number and its unit, e.g. 2 L."),
        ("1e-300 L", "volume", "not-a-number",
         "The number is too small to be meant. Write a number and its unit, e.g. 2 L."),
        ("1/0 turn", "turns", "not-a-number",
         "A fraction cannot be divided by nothing. Write a number and its unit, e.g. 2 turns."),
        ("", "ratio", "not-a-number",
         "Nothing is written. Write a number, e.g. 2."),
        ("12.5.1 L", None, "not-a-number",
         'No number can be read at the start of "12.5.1 L". '
         "Write a number and its unit, e.g. 2 lbf·ft."),
        ("4 litrs", "volume", "unit-unknown",
         '"litrs" is not a unit known here. Write 4 L, if that is meant.'),
        ("4 US dry quarts", "volume", "unit-wrong-kind",
         '"US dry quarts" is a dry measure, for grain, and not the same as one for fluid. '
         "Write 4 L, 4 US qt or 4 imp qt."),
        ("4 florps", "speed", "unit-unknown",
         '"florps" is not a unit known here. Write 4 km/h, 4 mph or 4 m/s.'),
    ],
)  # fmt: skip
def test_refused(text, kind, code, said):
    with pytest.raises(UnitError) as refused:
        read_quantity(text, kind)
    assert (refused.value.code, str(refused.value)) == (code, said)
    assert refused.value.written == text


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("65 to 80 degC", "65 °C", "80 °C"),
        ("16-22 km/h", "16 km/h", "22 km/h"),
        ("16 \N{EN DASH} 22 km/h", "16 km/h", "22 km/h"),
        ("1 1/4 to 2 turns", "1 1/4 turns", "2 turns"),
        ("-10 to 5 °C", "\N{MINUS SIGN}10 °C", "5 °C"),
        ("10 degC to 100 degF", "10 °C", "100 °F"),
        ("0 to 0.1 mm", "0 mm", "0.1 mm"),
    ],
)
def test_spans(text, low, high):
    span = read_span(text)
    assert (show(span.low), show(span.high)) == (low, high)


@pytest.mark.parametrize(
    ("text", "code", "said"),
    [
        ("22 to 16 km/h", "impossible-range",
         "The low end 22 is above the high end 16. Write 16 to 22 km/h."),
        ("16 km/h", "not-a-number",
         'This is not a range with two ends. Write two numbers with "to" between them, '
         "e.g. 2 to 4 km/h."),
        ("10 to 20", "unit-missing",
         "The unit is missing. Write 10 to 20 km/h, 10 to 20 mph or 10 to 20 m/s."),
        ("4,5 to 6 km/h", "not-a-number",
         "A comma in a number can mean two things. Write 4.5 to 6 km/h."),
        ("10 to 20 L", "unit-wrong-kind",
         "L is a unit of a volume, not of a road speed. "
         "Write 10 to 20 km/h, 10 to 20 mph or 10 to 20 m/s."),
    ],
)  # fmt: skip
def test_spans_refused(text, code, said):
    with pytest.raises(UnitError) as refused:
        read_span(text, "speed")
    assert (refused.value.code, str(refused.value)) == (code, said)


def test_ends_of_different_kinds_are_refused():
    with pytest.raises(UnitError, match="L and N·m are units of different things"):
        read_span("1 L to 2 N·m")


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_every_unit_is_read_by_its_symbol_and_its_words(kind):
    for unit in units_of(kind):
        if unit.name == "dimensionless":
            continue
        for spelling in (unit.symbol, unit.one, unit.many, unit.name):
            found = read_quantity(f"3 {spelling}", kind)
            assert (unit_name(found), kind_of(found)) == (unit.name, kind)


def test_a_difference_is_not_a_temperature():
    with pytest.raises(UnitError, match="is a unit of a temperature difference"):
        read_quantity("5 degC difference", "temperature")
