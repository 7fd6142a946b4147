"""How much the fluid expands: volume correction to 15 °C for lubricating oils.

API MPMS 11.1 / ASTM D1250-80, Table 54D, in its short form: alpha = K1/rho with K1 = 0.6278 kg/m³
per °C at 15 °C, VCF = exp(-alpha·dT·(1 + 0.8·alpha·dT)). The standard's K0/rho² is left out: for
lubricating oils K0 = 0.
"""

from math import exp

from underhoist_calculators.units import Quantity, quantity, show

K1 = 0.6278
BASE = quantity(15, "degree_Celsius")

DENSITIES = (
    quantity(800.9, "kilogram_per_cubic_metre"),
    quantity(1163.5, "kilogram_per_cubic_metre"),
)
"""Densities at 15 °C that the lubricant constants are good for."""

TEMPERATURES = quantity(-50, "degree_Celsius"), quantity(150, "degree_Celsius")
"""Fluid temperatures that the correction is good for."""


def correction_factor(temperature: Quantity, density: Quantity) -> float:
    """Give volume at 15 °C over volume at `temperature`; `density` is that at 15 °C.

    Raises `ValueError` outside DENSITIES or TEMPERATURES.
    """
    _within(density, DENSITIES)
    _within(temperature, TEMPERATURES)
    rho = density.m_as("kilogram_per_cubic_metre")
    step = K1 / rho * (temperature.m_as("degree_Celsius") - BASE.magnitude)
    return exp(-step * (1 + 0.8 * step))


def rise(at_15: Quantity, start: Quantity, end: Quantity, density: Quantity) -> Quantity:
    """Give the change of volume between two temperatures of what is `at_15` at 15 °C."""
    return at_15 * (1 / correction_factor(end, density) - 1 / correction_factor(start, density))


def _within(value: Quantity, bounds: tuple[Quantity, Quantity]) -> None:
    low, high = bounds
    if not low <= value <= high:
        msg = f"{show(value)} is outside {show(low)} to {show(high)}, where the correction holds."
        raise ValueError(msg)
