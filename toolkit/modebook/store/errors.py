"""The errors of the store: a database that cannot be written, opened or asked, told in one line."""

from __future__ import annotations

from modebook.shelf.errors import ShelfError


class StoreError(ShelfError):
    """Something about a database file: which file, what is wrong, what would be right."""


class SearchError(ValueError):
    """A search that cannot be understood: a word that is not in the vocabulary, a number out of bounds."""
