"""Finds the calculators: every module of the calculators folder that has a CALCULATOR."""

from difflib import get_close_matches
from functools import cache
from importlib import import_module
from pkgutil import iter_modules

from underhoist_calculators.declare import Calculator


class NoSuchCalculatorError(LookupError):
    """No calculator has this name; the message offers the nearest."""


@cache
def all_calculators() -> tuple[Calculator, ...]:
    """Give every calculator, by group and name."""
    package = import_module("underhoist_calculators.calculators")
    modules = (
        import_module(f"{package.__name__}.{m.name}") for m in iter_modules(package.__path__)
    )
    found: list[Calculator] = [module.CALCULATOR for module in modules]
    return tuple(sorted(found, key=lambda calculator: (calculator.group, calculator.name)))


def get(name: str) -> Calculator:
    """Give the calculator of this name; raises `NoSuchCalculatorError`."""
    for calculator in all_calculators():
        if calculator.name == name:
            return calculator
    names = [calculator.name for calculator in all_calculators()]
    near = get_close_matches(name, names, n=1, cutoff=0.4)
    offer = f"Did you mean {near[0]}?" if near else f"There are: {', '.join(names)}."
    msg = f"There is no calculator {name}. {offer}"
    raise NoSuchCalculatorError(msg)
