"""Pages of a manual bound into one document: which, how they link, what they wear."""

from underhoist.bound.choice import Choice, chosen
from underhoist.bound.groups import Group, grouped
from underhoist.bound.source import Source, source
from underhoist.bound.within import Binder, name_of

__all__ = ["Binder", "Choice", "Group", "Source", "chosen", "grouped", "name_of", "source"]
