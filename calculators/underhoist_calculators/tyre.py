"""Tyre sizes to rolling circumference. Which convention was used stands in the answer."""

import re

from attrs import frozen

from underhoist_calculators.units import (
    Quantity,
    UnitError,
    quantity,
    read_quantity,
    show,
)

RADIAL_FACTOR = 3.05
"""Rolling circumference over diameter of a loaded radial tyre: ETRTO practice, from memory."""

_METRIC = re.compile(
    r"(?:P|LT)?\s*(\d{3})\s*/\s*(\d{2})\s*-?\s*(?:[A-Z]?R|B|D)?\s*(\d{2,3}(?:\.5)?)C?(?:\s+\d{2,3}[A-Z])?",
    re.IGNORECASE,
)
_NO_ASPECT = re.compile(r"(\d{3})\s*(?:[A-Z]?R|-)\s*(\d{2})C?", re.IGNORECASE)
_FLOTATION = re.compile(
    r"(\d{2}(?:\.\d+)?)\s*[x×]\s*\d{1,2}(?:\.\d+)?\s*(?:R|-)\s*\d{2}", re.IGNORECASE
)
_ASK = (
    "Write the size as on the tyre wall, e.g. 205/70 R 14, or a rolled circumference, e.g. 1.95 m."
)


@frozen
class Tyre:
    """A tyre by its rolling circumference, and in words how that was found.

    `diameter` is the nominal one, None where the circumference was rolled.
    """

    written: str
    circumference: Quantity
    how: str
    diameter: Quantity | None = None

    @property
    def rolled(self) -> bool:
        """Say whether the circumference was measured over one turn."""
        return self.diameter is None


def read_tyre(text: str) -> Tyre:
    """Read "205/70 R 14", "31x10.5 R 15" or a rolled circumference such as "1.95 m".

    Rims above 100 are in millimetres. Raises `UnitError` for anything else, and for a size
    without an aspect ratio, which is 80 % or 82 % by maker.
    """
    written = " ".join(text.split())
    if found := _METRIC.fullmatch(written):
        width, aspect, rim = found.groups()
        return _from_diameter(written, metric_diameter(float(width), float(aspect), float(rim)))
    if found := _FLOTATION.fullmatch(written):
        return _from_diameter(written, quantity(float(found[1]), "inch"))
    if found := _NO_ASPECT.fullmatch(written):
        wrong = "This size does not state its aspect ratio, which is 80 or 82 by maker."
        width, rim = found.groups()
        mend = f"Write {width}/80 R {rim} or {width}/82 R {rim}, or roll one turn and write metres."
        raise UnitError("unit-ambiguous", written, wrong, mend)
    return _rolled(written)


def metric_diameter(width: float, aspect: float, rim: float) -> Quantity:
    """Nominal diameter: rim + 2 x aspect x width; width in mm, aspect in %, rim in in or mm."""
    rim_mm = rim if rim > 100 else rim * 25.4
    return quantity(rim_mm + 2 * width * aspect / 100, "millimetre")


def _from_diameter(written: str, diameter: Quantity) -> Tyre:
    """Turn a nominal diameter into a circumference; refuse what fits no road vehicle."""
    metres = diameter.m_as("metre")
    if not 0.4 <= metres <= 1.3:
        wrong = f"This size makes a diameter of {show(diameter, 'millimetre', 0)}."
        raise UnitError("impossible-range", written, wrong, _ASK)
    circumference = quantity(RADIAL_FACTOR * metres, "metre")
    return Tyre(written, circumference, f"3.05 x {show(diameter, 'millimetre', 1)}", diameter)


def _rolled(written: str) -> Tyre:
    """Read a rolled circumference, between 1.2 m and 4 m."""
    try:
        length = read_quantity(written, "length")
    except UnitError as error:
        if error.code in {"unit-missing", "unit-wrong-kind"} or "comma" in error.wrong:
            raise
        raise UnitError(
            "not-a-number", written, "This is not a tyre size known here.", _ASK
        ) from None
    if not 1.2 <= length.m_as("metre") <= 4:
        wrong = f"{show(length)} is not the rolling circumference of a road vehicle's tyre."
        raise UnitError("impossible-range", written, wrong, _ASK)
    return Tyre(written, length.to("metre"), f"rolled, {show(length)}")
