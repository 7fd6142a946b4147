"""What is different between two texts of a page, line by line."""

from difflib import unified_diff

AROUND = 2
"""Lines before and after a change that are told as well."""


def difference(old: str, new: str) -> list[str]:
    """List the lines: `-` before one that is gone, `+` before a new one, a space before others."""
    lines = unified_diff(old.split("\n"), new.split("\n"), n=AROUND, lineterm="")
    return [line for line in list(lines)[2:] if not line.startswith("@@")]
