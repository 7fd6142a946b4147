"""Quantities of the trade: read from text, converted exactly, written for people.

The door to registry.py, unit_table.py, quantity_text.py and quantity_show.py.
"""

from underhoist_calculators.quantity_show import (
    convert,
    kind_of,
    number_text,
    show,
    show_number,
    unit_symbol,
    unit_words,
)
from underhoist_calculators.quantity_text import read_quantity, read_span, unit_named
from underhoist_calculators.registry import Quantity, Span, quantity, same_dimension, unit_name
from underhoist_calculators.unit_error import UnitError, UnitErrorCode
from underhoist_calculators.unit_table import KIND_WORDS, Unit, units_of

KINDS = frozenset(KIND_WORDS)
"""Kinds of quantity: torque, volume, temperature, temperature_difference, speed and so on."""

__all__ = [
    "KINDS", "KIND_WORDS", "Quantity", "Span", "Unit", "UnitError", "UnitErrorCode",
    "convert", "kind_of", "number_text", "quantity", "read_quantity", "read_span",
    "same_dimension", "show", "show_number", "unit_name", "unit_named", "unit_symbol",
    "unit_words", "units_of",
]  # fmt: skip
