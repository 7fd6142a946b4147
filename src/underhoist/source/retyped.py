"""Edits of the front matter: another text in place of a plain one, where both are surely plain."""

import re

from underhoist.finding import Edit
from underhoist.source.nodes import Scalar

_PLAIN = re.compile(r"[\w(][\w .·*/%+()°'-]*")
"""Texts that mean themselves without quotes wherever they stand."""


def retyped(scalar: Scalar, text: str) -> Edit | None:
    """Write this text in place of the scalar's; None where quotes or lines would have to change."""
    return in_place_of(scalar, text) if _PLAIN.fullmatch(text) else None


def in_place_of(scalar: Scalar, source: str) -> Edit | None:
    """Write this piece of YAML in place of a plain scalar on one line; None for any other."""
    if not scalar.until:
        return None
    at = scalar.at
    return Edit(at.file, at.line, at.column, at.line, scalar.until, source)


def quoted(text: str) -> str | None:
    """Return the text in straight quotes; None where it holds signs that mean something there."""
    return None if '"' in text or "\\" in text else f'"{text}"'
