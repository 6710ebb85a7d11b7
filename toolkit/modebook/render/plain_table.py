"""A table of plain words that fits: laid out here, since loading a library for it takes longer."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal, NamedTuple

Justify = Literal["left", "right"]


class Rows(NamedTuple):
    """A table before it is laid out: titles with their sides, and cells as text."""

    columns: Sequence[tuple[str, Justify]]
    rows: Sequence[Sequence[str]]


def plain_table(made: Rows, width: int) -> str | None:
    """Titles, one rule, rows, two spaces between columns; no white space at the ends of lines.

    None where it takes more: cells that are not plain ASCII in one line, rows of other lengths, or more than
    `width` columns of a terminal.
    """
    lines = [[title for title, _ in made.columns], *(list(row) for row in made.rows)]
    if any(len(line) != len(made.columns) for line in lines) or not made.columns:
        return None
    if not all(
        cell.isascii() and cell.isprintable() and cell == cell.strip() for row in lines for cell in row
    ):
        return None
    widths = [max(map(len, column)) for column in zip(*lines, strict=True)]
    full = sum(widths) + 2 * (len(widths) - 1)
    # Columns of nothing, and a table as wide as its place, are left to the library.
    if not all(widths) or full >= width:
        return None
    right = [side == "right" for _, side in made.columns]
    told = [
        "  ".join(
            cell.rjust(wide) if at_right else cell.ljust(wide)
            for cell, wide, at_right in zip(line, widths, right, strict=True)
        ).rstrip()
        for line in lines
    ]
    return "\n".join([told[0], "─" * full, *told[1:]]) + "\n"
