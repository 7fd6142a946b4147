"""From the engine to the road: converter slip, gear, axle, tyre."""

from attrs import frozen

from underhoist_calculators.units import Quantity, quantity


@frozen
class Driveline:
    """What lies behind the converter: gear and axle as plain ratios, metres a turn of the wheel."""

    gear: float
    axle: float
    circumference: Quantity

    def turbine(self, road: Quantity) -> Quantity:
        """Give the speed of the converter's turbine at this road speed."""
        wheel = road.m_as("metre_per_second") / self.circumference.m_as("metre")
        return quantity(60 * wheel * self.gear * self.axle, "revolution_per_minute")

    def road(self, turbine: Quantity) -> Quantity:
        """Give the road speed at this speed of the turbine."""
        wheel = turbine.m_as("revolution_per_minute") / (60 * self.gear * self.axle)
        metres_per_second = quantity(wheel * self.circumference.m_as("metre"), "metre_per_second")
        return metres_per_second.to("kilometre_per_hour")


def turbine_of(engine: Quantity, slip: Quantity) -> Quantity:
    """Give the turbine's speed behind a slipping converter; below zero slip it is overdriven."""
    return engine * (1 - slip.m_as("dimensionless"))


def engine_of(turbine: Quantity, slip: Quantity) -> Quantity:
    """Give the engine's speed before a slipping converter; raises `ValueError` at full slip."""
    left = 1 - slip.m_as("dimensionless")
    if left <= 0:
        msg = "at full slip the vehicle stands at any engine speed"
        raise ValueError(msg)
    return quantity(turbine.m_as("revolution_per_minute") / left, "revolution_per_minute")


def slip_of(engine: Quantity, turbine: Quantity) -> Quantity:
    """Give 1 - turbine/engine; raises `ValueError` where the engine stands."""
    impeller = engine.m_as("revolution_per_minute")
    if impeller <= 0:
        msg = "impeller speed must be greater than zero"
        raise ValueError(msg)
    return quantity(100 * (1 - turbine.m_as("revolution_per_minute") / impeller), "percent")
