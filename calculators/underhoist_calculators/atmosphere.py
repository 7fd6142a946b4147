"""Standard atmosphere by ISO 2533, as high as roads go, and what it does to manifold vacuum.

Altitude is geopotential; taken as geometric it differs by 0.02 % at 2 000 m.
"""

from underhoist_calculators.units import Quantity, quantity

SEA_LEVEL = quantity(101.325, "kilopascal")
"""Standard pressure at sea level."""

_KELVIN, _LAPSE = 288.15, 0.0065
_EXPONENT = 9.80665 / (287.05287 * _LAPSE)
"""Gravity over gas constant and lapse rate, ISO 2533 table 1."""

TOP = quantity(11_000, "metre")
"""End of the troposphere, where this formula ends."""

LOWEST = quantity(-2_000, "metre")
"""Where ISO 2533's tables begin."""


class AltitudeError(ValueError):
    """An altitude or a pressure outside the troposphere; the message is a sentence."""


def standard_pressure(altitude: Quantity) -> Quantity:
    """Give the standard pressure at a geopotential altitude from -2 000 m to 11 000 m."""
    if not LOWEST <= altitude <= TOP:
        msg = "The formula holds from \u22122000 m to 11 000 m."
        raise AltitudeError(msg)
    warmth = 1 - _LAPSE * altitude.m_as("metre") / _KELVIN
    return SEA_LEVEL * warmth**_EXPONENT


def altitude_of(pressure: Quantity) -> Quantity:
    """Give the altitude where this is the standard pressure: the inverse of standard_pressure."""
    if not standard_pressure(TOP) <= pressure <= standard_pressure(LOWEST):
        msg = "No altitude of the formula has this pressure."
        raise AltitudeError(msg)
    share = pressure.m_as("kilopascal") / SEA_LEVEL.m_as("kilopascal")
    return quantity(_KELVIN / _LAPSE * (1 - share ** (1 / _EXPONENT)), "metre")


def vacuum_here(at_sea_level: Quantity, ambient: Quantity, *, proportional: bool) -> Quantity:
    """Give the vacuum that an engine shows at this ambient pressure, from its sea-level one.

    Either the absolute manifold pressure stays as it is, as it nearly does at idle, or vacuum
    falls in proportion to the ambient pressure. Below zero there is no vacuum left.
    """
    if proportional:
        return at_sea_level * (ambient / SEA_LEVEL).m_as("dimensionless")
    return at_sea_level - (SEA_LEVEL - ambient)


def absolute(vacuum: Quantity, ambient: Quantity) -> Quantity:
    """Give the absolute pressure under a vacuum; raises `ValueError` where it exceeds ambient."""
    if vacuum > ambient:
        msg = "vacuum exceeds ambient pressure"
        raise ValueError(msg)
    return ambient - vacuum
