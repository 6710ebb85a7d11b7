"""The one error of measuring: a clip or trace that holds no answer, told in one line."""

from __future__ import annotations

from modebook.shelf.errors import FileError


class MeasureError(FileError):
    """A clip or trace that cannot be measured: which file, where, what is wrong, what would be right."""


class MissingPartError(MeasureError):
    """A reader whose package is not installed; says which extra brings it."""
