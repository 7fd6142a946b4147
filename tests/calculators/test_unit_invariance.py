"""The same physical entry in another unit gives the same physical answer, on every field."""

import pytest
from underhoist_calculators import all_calculators, door
from underhoist_calculators.units import quantity, read_quantity, unit_symbol

FIELDS = [
    pytest.param(calculator.name, field.name, field.example or field.default, unit,
                 id=f"{calculator.name} {field.name} in {unit}")
    for calculator in all_calculators()
    for field in calculator.fields
    for unit in field.units
    if (field.example or field.default) and not field.span
]  # fmt: skip


def same(one, other):
    """Say whether two exact values are the same quantity; both may be words."""
    if isinstance(one, str) or isinstance(other, str):
        return one == other
    there = quantity(other["value"], other["unit"]).m_as(one["unit"])
    return there == pytest.approx(one["value"], rel=1e-9, abs=1e-9)


@pytest.mark.parametrize(("calculator", "field", "written", "unit"), FIELDS)
def test_another_unit_changes_nothing(calculator, field, written, unit):
    entries = door.example(calculator)
    kind = next(f["kind"] for f in door.describe(calculator)["fields"] if f["name"] == field)
    number = read_quantity(written, kind).m_as(unit)
    text = f"{number:.15g} {unit_symbol(unit)}".strip()
    first = door.run(calculator, entries)
    second = door.run(calculator, {**entries, field: text})
    assert second["errors"] == first["errors"] == {}
    values, others = first["answer"]["values"], second["answer"]["values"]
    assert values.keys() == others.keys()
    assert [name for name in values if not same(values[name], others[name])] == []
