"""Turns a matrix whose slots run across, a mode a row, so that slots run down."""

from __future__ import annotations

from modebook.intake.grid import Cell, Grid


def turned_matrix(grid: Grid) -> Grid | None:
    """A matrix printed with the slots across and a mode a row, turned so that slots run down."""
    if len(grid.rows) < 2 or grid.width < 4:
        return None
    head = [cell.flat for cell in grid.rows[0]]
    numbers = [int(text) if text.isdigit() else None for text in head]
    run = [n for n in numbers[1:] if n is not None]
    if (
        numbers[0] is not None
        or len(run) < 3
        or run != list(range(run[0], run[0] + len(run)))
        or run[0] != 1
        or len(run) != len(head) - 1
    ):
        return None
    rows = [
        [
            Cell("Slot", grid.place),
            *(Cell(row[0].flat, row[0].place, 0, i + 1) for i, row in enumerate(grid.rows[1:])),
        ]
    ]
    for column in range(1, grid.width):
        line = [Cell(head[column], grid.rows[0][column].place, column, 0)]
        line.extend(
            Cell(row[column].text, row[column].place, column, i + 1) for i, row in enumerate(grid.rows[1:])
        )
        rows.append(line)
    return Grid(rows, grid.place, grid.ruled)
