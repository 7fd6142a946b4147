"""A manual in one file, to be handed over by cable or message and opened without a server."""

from underhoist.pack.file import Packed, pack

__all__ = ["Packed", "pack"]
