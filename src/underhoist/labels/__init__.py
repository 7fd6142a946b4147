"""Labels for toolbox and wall: a QR symbol each that opens a page of the manual's site."""

from underhoist.labels.address import base_address
from underhoist.labels.sheet import Label, Wanted, labels, sheet

__all__ = ["Label", "Wanted", "base_address", "labels", "sheet"]
