"""Ties what is in a document to the row of the source that it came from."""

from __future__ import annotations

from dataclasses import dataclass

from modebook.intake.grid import Place


@dataclass(frozen=True, slots=True)
class Reading:
    """One row of the source and the JSON pointer of what it became."""

    pointer: str
    place: Place
    printed: str
