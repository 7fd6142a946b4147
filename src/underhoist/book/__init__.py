"""A manual, or a part of it, as a book on A4."""

from underhoist.book.make import Book, book

__all__ = ["Book", "book"]
