"""What the search is made from: the finished pages' texts, and the words that people use."""

from underhoist.search.documents import Before, search_files

__all__ = ["Before", "search_files"]
