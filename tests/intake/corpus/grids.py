"""Tables as cells, before any format: what every writer of the corpus prints."""

from __future__ import annotations

from dataclasses import dataclass, field


@dataclass(frozen=True)
class C:
    """A cell; it may reach over several rows and columns."""

    text: str = ""
    rows: int = 1
    cols: int = 1


Row = list["C | None"]
"""A None is covered by a cell that reaches over it."""


@dataclass
class Grid:
    """A table: header rows, body rows, and how wide its columns are."""

    head: list[Row]
    body: list[Row] = field(default_factory=list)
    widths: list[float] = field(default_factory=list)

    @property
    def width(self) -> int:
        return len((self.head or self.body)[0])


@dataclass(frozen=True)
class Look:
    """How a table is drawn: ruled, rows (lines between rows only), bare, or zebra; fonts and sizes."""

    lines: str = "ruled"
    size: float = 9
    center: bool = False


@dataclass(frozen=True)
class Heading:
    text: str
    level: int = 1


@dataclass(frozen=True)
class Para:
    text: str


@dataclass(frozen=True)
class Break:
    """A new page."""


@dataclass(frozen=True)
class Table:
    grid: Grid
    look: Look = Look()


Element = Heading | Para | Break | Table


def cells(*texts: str) -> Row:
    return [C(text) for text in texts]
