"""What the search is made from: the finished pages' texts, and the words that people use."""

from underhoist.search.documents import Known, nothing_known, search_files

__all__ = ["Known", "nothing_known", "search_files"]
