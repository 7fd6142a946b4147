"""Universal joints: how unevenly the driven shaft turns, and what two joints leave of it.

Angles in degrees. Rotation counts from where the driving fork lies in the plane of both shafts and
the driven shaft turns fastest, so that tan(driving) = cos(angle) · tan(driven). Seen from the other
fork the same joint starts 90 degrees later, with the cosine on the other side.
"""

from math import acos, asin, atan, atan2, cos, degrees, hypot, radians, sin, sqrt, tan

from attrs import frozen

RIGHT_ANGLE = 90.0


class JointError(ValueError):
    """A joint that cannot turn; the message is a sentence."""


@frozen
class Bend:
    """A joint's true angle, and the direction of its plane seen along the middle shaft."""

    angle: float
    plane: float


def bend(side: float, top: float = 0.0) -> Bend:
    """Give the true angle from both views: tan² = tan² side + tan² top.

    Raises `JointError` from 90 degrees on, where a joint cannot turn.
    """
    if max(abs(side), abs(top)) >= RIGHT_ANGLE:
        msg = "joint cannot turn"
        raise JointError(msg)
    across, along = tan(radians(top)), tan(radians(side))
    return Bend(degrees(atan(hypot(across, along))), degrees(atan2(across, along)))


def speed_ratio(angle: float, rotation: float) -> float:
    """Give driven over driving speed at this rotation of the driving fork."""
    beta, gamma = radians(angle), radians(rotation)
    return cos(beta) / (1 - sin(beta) ** 2 * cos(gamma) ** 2)


def driven_rotation(angle: float, rotation: float) -> float:
    """Give how far the driven fork has turned, for the driving one between -90 and 90 degrees."""
    return degrees(atan(tan(radians(rotation)) / cos(radians(angle))))


def extremes(angle: float) -> tuple[float, float]:
    """Give the lowest and the highest driven speed for one of the driving shaft."""
    return cos(radians(angle)), 1 / cos(radians(angle))


def fluctuation(angle: float) -> float:
    """Give highest less lowest driven speed, as a share of the driving one: tan · sin."""
    return tan(radians(angle)) * sin(radians(angle))


def angle_for(share: float) -> float:
    """Give the joint angle that makes this fluctuation: the inverse of `fluctuation`."""
    return degrees(acos((sqrt(share**2 + 4) - share) / 2))


def equal_speed_rotation(angle: float) -> float:
    """Give the rotation of the driving fork at which both shafts turn equally fast."""
    return degrees(atan(sqrt(cos(radians(angle)))))


def greatest_lead(angle: float) -> float:
    """Give how far the driven fork gets ahead or behind at most."""
    beta = radians(angle)
    return degrees(asin((1 - cos(beta)) / (1 + cos(beta))))


def residual(first: Bend, second: Bend, out_of_line: float = 0.0) -> float:
    """Give the one joint angle that is as uneven as both joints together.

    `out_of_line` is how far the middle shaft's yokes are from lying in line. Exact for any plane:
    a joint scales one direction by cos(angle), so two in a row are a product of 2 x 2 matrices,
    whose singular values give the extremes.
    """
    turned = radians(out_of_line + second.plane - first.plane)
    one, two = cos(radians(first.angle)), cos(radians(second.angle))
    # Written by what it exceeds 1: equal joints must leave exactly nothing.
    excess = ((one - two) * cos(turned)) ** 2 + ((1 - one * two) * sin(turned)) ** 2
    excess /= 2 * one * two
    short = sqrt(excess * (excess + 2)) - excess  # 1 - cos of the angle
    return degrees(2 * asin(sqrt(short / 2)))


def small_angles(first: float, second: float) -> float:
    """Give the workshop's square root of the difference of squares, for yokes in line."""
    return sqrt(abs(first**2 - second**2))
