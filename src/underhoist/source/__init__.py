"""From a folder of Markdown to a manual: every value with its place, every fault collected."""

from underhoist.source.load import Loaded, load
from underhoist.source.walk import is_page

__all__ = ["Loaded", "is_page", "load"]
