"""Workshop calculators: pure functions on quantities, each with its working and its sources."""

from underhoist_calculators.shelf import NoSuchCalculatorError, all_calculators, get

__all__ = ["NoSuchCalculatorError", "all_calculators", "get"]
