"""Ranges and plain numbers as the pages write them."""

from underhoist_calculators.units import Span, number_text, show, show_number, unit_name


def show_span(span: Span) -> str:
    """Write both ends in the unit they were written in: "65 to 80 °C"."""
    if unit_name(span.low) == unit_name(span.high):
        return f"{show_number(span.low)} to {show(span.high)}"
    return f"{show(span.low)} to {show(span.high)}"


def decimal(value: float, places: int) -> str:
    """Return a number with so many decimals, rounded half up."""
    return number_text(value, places)
