"""The mends that need no thought: edits that findings carry, made in a file's text."""

from underhoist.mends.edits import apply, disjoint

__all__ = ["apply", "disjoint"]
