"""Bytes as characters of a page: one each, as a page in windows-1252 reads every byte.

The file's half is assets/pack/dense.js. Base64 would take a third more.
"""

import re

CHARSET = "windows-1252"
"""In it every byte is a character, and no two are the same (WHATWG Encoding Standard)."""

_MARK, _SHIFT = b"=", 64
_CHANGED = b"=\x00\r<"
"""What a page does not give back as it is, or takes for the end of its element; the mark first."""
_NOT_ASCII = re.compile(r"[^\x00-\x7f]")


def dense(content: bytes) -> bytes:
    """Return what stands in the page: a byte that a page would change is marked and shifted."""
    for byte in _CHANGED:
        content = content.replace(bytes([byte]), _MARK + bytes([byte + _SHIFT]))
    return content


def ascii_script(text: str) -> str:
    """Write JavaScript in ASCII; only its strings, patterns and comments may hold anything else."""
    return _NOT_ASCII.sub(_units, text)


def ascii_style(text: str) -> str:
    """Write CSS in ASCII (CSS Syntax Module Level 3, escapes)."""
    return _NOT_ASCII.sub(lambda found: f"\\{ord(found[0]):x} ", text)


def _units(found: re.Match[str]) -> str:
    units = found[0].encode("utf-16-be").hex()
    return "".join(f"\\u{units[at : at + 4]}" for at in range(0, len(units), 4))
