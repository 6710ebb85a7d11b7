"""A table as a person wrote it: titles, rows with their place in the file, cells as text with their kind."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass, field
from typing import Literal

Kind = Literal["text", "number", "date", "truth"]
"""What a cell was in the file. A CSV knows text only; a sheet tells numbers, dates and truth apart."""

MOST_BYTES = 32_000_000
"""The largest file that is read; a patch of ten thousand units takes about a megabyte."""
MOST_ROWS = 100_000
MOST_COLUMNS = 1_000
MOST_CELLS = 2_000_000

_NOT_IN_TITLES = re.compile(r"[^\w#]+|_+")


@dataclass(frozen=True, slots=True)
class Row:
    """One row below the titles."""

    number: int
    """The line of the file at which it begins (CSV), or the row of the sheet; both count from 1."""
    cells: tuple[str, ...]
    """As typed, without white space around; as many as the table has titles. A sheet's whole number is
    written without decimals, a date as ISO 8601 writes it."""
    kinds: tuple[Kind, ...] = ()
    """What each cell was; empty where all are text."""

    def kind(self, column: int) -> Kind:
        """What the cell in a column (from 0) was in the file."""
        return self.kinds[column] if column < len(self.kinds) else "text"

    @property
    def blank(self) -> bool:
        """Whether nothing is written in it."""
        return not any(self.cells)


@dataclass(frozen=True, slots=True)
class Table:
    """A table found in a file."""

    path: str
    sheet: str | None
    """The name of the sheet; None for a CSV."""
    titles: tuple[str, ...]
    """The column titles as written; two rows of titles are joined by a space."""
    rows: tuple[Row, ...]
    """All rows below the titles, blank ones too."""
    title_row: int = 1
    """The row at which the titles begin."""
    delimiter: str | None = None
    """What parts the cells of a CSV; None for a sheet."""
    encoding: str | None = None
    """How a CSV's bytes were read; None for a sheet."""
    notes: tuple[str, ...] = field(default=())
    """What a person should know about how the file was read."""

    @property
    def folded(self) -> tuple[str, ...]:
        """The titles as fold_title gives them."""
        return tuple(fold_title(title) for title in self.titles)


def fold_title(title: str) -> str:
    """A column title without case, accents and punctuation: ``Throw (m)`` becomes ``throw m``; # stays."""
    flat = unicodedata.normalize("NFKD", title.casefold())
    plain = "".join(letter for letter in flat if not unicodedata.combining(letter))
    return _NOT_IN_TITLES.sub(" ", plain).strip()
