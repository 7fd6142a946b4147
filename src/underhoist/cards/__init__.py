"""What a job card takes from the manual: procedures as plain data, and a list to choose from."""

from underhoist.cards.data import Json, data, listed
from underhoist.cards.index import index

__all__ = ["Json", "data", "index", "listed"]
