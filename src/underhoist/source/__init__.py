"""From a folder of Markdown to a manual: every value with its place, every fault collected."""

from underhoist.source.load import Loaded, load

__all__ = ["Loaded", "load"]
