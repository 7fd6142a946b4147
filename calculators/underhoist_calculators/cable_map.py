"""The shift map of a unit with a throttle cable, gathered from the entries.

The balance is the modulator's: in place of the vacuum stands the wire that is still to come until
full throttle. A cable too tight takes of it, as a leak takes of the vacuum.
"""

from collections.abc import Mapping

from underhoist_calculators.inputs import EntryError, Inputs
from underhoist_calculators.shift_lines import Line, ShiftMap
from underhoist_calculators.shift_map_lines import lines_given, unit_of_windows
from underhoist_calculators.signal_fields import signal_given

ROUNDED = 1e-9
"""What the arithmetic of a share may add, mm."""


def cable_map(inputs: Inputs) -> ShiftMap:
    """Gather the map; raises `EntryError` without the wire's travel, or for a wire beyond full."""
    signal = signal_given(inputs)
    if not signal.has_size:
        wrong = "Without the travel of the wire there is nothing to draw the speeds against."
        mend = "Write it from the family page. shift-check tells the direction without it."
        raise EntryError("cable-travel", wrong, mend)
    whole = signal.levels["full"]
    to_come = {throttle: whole - out for throttle, out in signal.levels.items()}
    return ShiftMap(
        lines=_lines(inputs, to_come),
        levels=to_come,
        source=_source(inputs, whole, to_come["light"]),
        loss=_off(inputs, whole),
        uncertainty=inputs.quantity("uncertainty").m_as("kilometre_per_hour"),
        turn=signal.turn,
        unit=unit_of_windows(inputs),
        whole=whole,
    )


def _lines(inputs: Inputs, to_come: Mapping[str, float]) -> tuple[Line, ...]:
    """Calibrate the shifts; raises `EntryError` for one that is not known up to full throttle."""
    lines = lines_given(inputs, to_come)
    for line in lines:
        if "full" not in line.windows:
            wrong = "Without this window nothing is known between half and full throttle."
            mend = "Write it from the family page, or leave this shift's windows empty."
            raise EntryError(f"window-{line.shift}-full", wrong, mend)
    return lines


def _source(inputs: Inputs, whole: float, light: float) -> float:
    """Give the wire still to come while the shifts were measured, in mm."""
    share = inputs.maybe("wire-measured")
    if share is None:
        return light
    source = whole * (1 - (share / inputs.quantity("wire-full")).m_as("dimensionless"))
    if not -ROUNDED <= source <= light + ROUNDED:
        wrong = "Below light throttle and beyond full throttle nothing is known of the shifts."
        mend = "Write a share between light and full throttle's, or leave it empty."
        raise EntryError("wire-measured", wrong, mend)
    return min(max(source, 0.0), light)


def _off(inputs: Inputs, whole: float) -> float:
    """Give how much too tight a cable is to be shown, in mm; below zero too slack."""
    off = inputs.quantity("cable-off").m_as("millimetre")
    if abs(off) >= whole:
        wrong = "This is more than the travel of the wire."
        raise EntryError("cable-off", wrong, "Write less, or 0 mm to show none.")
    return off
