"""From a folder of Markdown to a manual: every value with its place, every fault collected."""

from underhoist.source.load import Loaded, files_of, load, manual_of
from underhoist.source.read import KINDS, Read, read, read_file
from underhoist.source.walk import is_page

__all__ = [
    "KINDS", "Loaded", "Read", "files_of", "is_page", "load", "manual_of", "read", "read_file",
]  # fmt: skip
