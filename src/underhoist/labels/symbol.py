"""A QR symbol by ISO/IEC 18004, for a label that gets oil and scratches."""

from io import BytesIO

import segno
from markupsafe import Markup

QUIET = 4
"""Modules of empty border on each side, as ISO/IEC 18004 asks."""
SMALLEST = 20.0
"""Least width in mm, quiet zone included: a phone reads it at arm's length."""
_MODULE = 0.6  # mm; smaller ones run together under a scratch


def symbol(text: str) -> tuple[Markup, float]:
    """Return the symbol as SVG and its width in mm, quiet zone included.

    Level Q (a quarter of the codewords may be lost), or H where that makes it no larger.
    """
    code = segno.make_qr(text, error="q", boost_error=True)
    modules = code.symbol_size(border=QUIET)[0]
    width = max(SMALLEST, modules * _MODULE)
    out = BytesIO()
    code.save(
        out, kind="svg", border=QUIET, xmldecl=False, omitsize=True, svgclass=None, lineclass=None,
        light="white",
    )  # fmt: skip
    return Markup(out.getvalue().decode().strip()), width  # noqa: S704 - drawn here
