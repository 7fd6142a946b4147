"""What a torque wrench is set to when an adapter lengthens or shortens its arm.

S = T·L / (L + E·cos θ): US Army TM 9-254, figures 45 and 46, and NAVEDTRA 14315.
"""

from math import cos, radians

from attrs import frozen

from underhoist_calculators.units import Quantity, number_text, show, unit_name


@frozen(kw_only=True)
class Arm:
    """A wrench with an adapter on its drive.

    `wrench`: drive to the middle of the grip. `adapter`: drive to the fastener. `angle`: between
    the two, 0° straight on, 90° square, 180° back along the handle. Raises `ValueError` for an
    adapter longer than the wrench and for an arm of no length.
    """

    wrench: Quantity
    adapter: Quantity
    angle: Quantity

    def __attrs_post_init__(self) -> None:
        if self.adapter > self.wrench:
            msg = (
                f"An adapter of {show(self.adapter)} is longer than the wrench, "
                f"{show(self.wrench)}: the hand no longer pulls where the formula takes it."
            )
            raise ValueError(msg)
        # A thousandth of the wrench is nothing: rounding must not turn it into an arm.
        if self.effective <= self.wrench * 0.001:
            msg = "The effective length must be greater than zero."
            raise ValueError(msg)

    @property
    def effective(self) -> Quantity:
        """Give the length from the fastener to the hand, along the wrench."""
        along = cos(radians(self.angle.m_as("degree")))
        return (self.wrench + self.adapter * along).to(unit_name(self.wrench))

    @property
    def ratio(self) -> float:
        """Give what the wrench reads over what the fastener gets."""
        return (self.wrench / self.effective).m_as("dimensionless")

    def setting(self, torque: Quantity) -> Quantity:
        """Give the setting that puts `torque` on the fastener."""
        return torque * self.ratio

    def applied(self, setting: Quantity) -> Quantity:
        """Give the torque that the fastener gets at `setting`."""
        return setting * (1 / self.ratio)

    def in_numbers(self, torque: Quantity) -> str:
        """Write the formula with its numbers, all lengths in the wrench's unit."""
        unit = unit_name(self.wrench)
        length, adapter = show(self.wrench), show(self.adapter, unit)
        angle = number_text(self.angle.m_as("degree"))
        return f"{show(torque)} × {length} / ({length} + {adapter} × cos {angle}°)"
