"""Titles of a sheet that stand once above several blocks of rows, which blank rows set apart."""

from __future__ import annotations

from dataclasses import dataclass

from modebook.intake.chart_rows import read_slot_cell
from modebook.intake.grid import Cell, Grid
from modebook.intake.headers import find_header
from modebook.intake.titles import title_roles


@dataclass(frozen=True, slots=True)
class Titles:
    """The row or rows of titles of a block, and which columns of the sheet they stand in."""

    rows: list[list[Cell]]
    columns: list[int]
    slots: tuple[int, ...]
    """Which of the columns are titled as slots'."""

    def cover(self, rows: list[list[Cell]]) -> bool:
        """Whether rows go on under these titles: they have none of their own, the first begins a slot, and
        in the columns of slots stands nothing else.
        """
        if not rows or find_header(Grid(rows, rows[0][0].place)) is not None:
            return False
        kinds = [[read_slot_cell(row[c].flat).kind for c in self.slots if row[c].flat] for row in rows]
        # Names and values stand beside a slot; a list of spare parts has numbers and little else.
        told = sum(bool(cell.flat) for cell in rows[0])
        counts = all(kind in ("slots", "absent") for row in kinds for kind in row)
        return counts and "slots" in kinds[0] and told >= 3


def titles_of(grid: Grid, columns: list[int]) -> Titles | None:
    """The titles of a grid if they announce slots; columns: where in its sheet its own columns stand."""
    header = find_header(grid)
    if header is None:
        return None
    rows = grid.rows[header[0] : header[0] + header[1]]
    slots = tuple(
        c
        for c in range(grid.width)
        if any(title_roles(row[c].flat)[:1] in (("slot",), ("coarse",)) for row in rows if c < len(row))
    )
    return Titles(rows, columns, slots) if slots else None
