"""What every reader yields: lines and grids of cells, each with its place in the source."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

Box = tuple[float, float, float, float]
"""Left, top, right and bottom on a page, in points from its upper left corner."""


@dataclass(frozen=True, slots=True)
class Place:
    """Where in the source something stands."""

    page: int | None = None
    sheet: str | None = None
    table: int | None = None
    row: int | None = None
    box: Box | None = None

    def __str__(self) -> str:
        parts = [
            f"page {self.page}" if self.page is not None else "",
            f"sheet {self.sheet}" if self.sheet else "",
            f"table {self.table}" if self.table is not None else "",
            # Rows of a page are counted within their table; elsewhere they are the lines of the file.
            f"row {self.row}" if self.row is not None else "",
        ]
        return ", ".join(part for part in parts if part)


@dataclass(slots=True)
class Cell:
    """One cell of a grid. Lines of its text are kept; a cell that others are merged into says how many."""

    text: str
    place: Place = Place()
    row: int = 0
    column: int = 0
    span: int = 1
    """Columns that it covers."""
    wraps: bool | None = None
    """Whether the text above in its column was so long that this may be its next line; None: not known."""

    @property
    def flat(self) -> str:
        """The text on one line."""
        return " ".join(self.text.split())

    @property
    def lines(self) -> list[str]:
        """The lines that are not blank."""
        return [line.strip() for line in self.text.split("\n") if line.strip()]


@dataclass(slots=True)
class Line:
    """Text outside of grids."""

    text: str
    place: Place = Place()
    words: tuple[str, ...] = ()
    """The pieces that white space of more than one letter parts, where the reader sees them."""
    heading: bool = False
    """Whether the file itself says that it is a heading."""


@dataclass(slots=True)
class Grid:
    """Rows of cells; every row has the same number of columns. Ruled: lines or markup say where cells end."""

    rows: list[list[Cell]]
    place: Place = Place()
    ruled: bool = True

    @property
    def width(self) -> int:
        """How many columns it has."""
        return max((len(row) for row in self.rows), default=0)


Item = Line | Grid


@dataclass(slots=True)
class Leaf:
    """A page, a sheet or a whole text, its items in the order in which a person reads them."""

    number: int | None
    items: list[Item] = field(default_factory=list)
    width: float | None = None
    height: float | None = None
    sheet: str | None = None
    raw: list[tuple[int, list[str]]] = field(default_factory=list)
    """Of a sheet: every row with its number, as it stands."""


@dataclass(slots=True)
class Source:
    """Everything that was read from one file."""

    name: str
    kind: str
    """pdf, sheet, html or text."""
    leaves: list[Leaf]
    pages: int | None = None
    """How many pages the file has, read or not."""
    notes: list[str] = field(default_factory=list)


def grid_of(
    rows: Sequence[Sequence[str]], place: Place = Place(), first_row: int = 1, *, ruled: bool = True
) -> Grid:
    """A grid of plain texts; rows get numbers from `first_row` on and are made equally long."""
    width = max((len(row) for row in rows), default=0)
    made: list[list[Cell]] = []
    for index, row in enumerate(rows):
        number = first_row + index
        at = Place(place.page, place.sheet, place.table, number, place.box)
        texts = [*row, *[""] * (width - len(row))]
        made.append([Cell(text, at, number, column) for column, text in enumerate(texts)])
    return Grid(made, place, ruled)
