"""A small grid of slots, a row a cell and a column a parameter (`Cell | Red | Green`): as rows of a chart."""

from __future__ import annotations

from modebook.intake.chart_rows import read_slot_cell
from modebook.intake.folding import fold
from modebook.intake.grid import Cell, Grid
from modebook.intake.lexicon import phrases
from modebook.intake.names import read_name


def from_cell_grid(grid: Grid) -> Grid | None:
    """The grid with a row for each slot, in their order; None where it is no grid of cells.

    It is one where the first title names cells, those beside it are names of parameters, the cells count on
    from their first, and all numbers beside them are slots without a gap, each there once.
    """
    if len(grid.rows) < 3 or grid.width < 2 or grid.width > 12:
        return None
    titles, body = grid.rows[0], [row for row in grid.rows[1:] if any(cell.flat for cell in row)]
    words = set(fold(titles[0].flat).split())
    if not words or not words <= phrases("marks", "cell") | {"no", "nr"}:
        return None
    if not all(read_name(cell.flat).sure for cell in titles[1:]) or any(len(r) != grid.width for r in body):
        return None
    counted = [row[0].flat for row in body]
    if not all(text.isdigit() for text in counted):
        return None
    cells = [int(text) for text in counted]
    if cells != list(range(cells[0], cells[0] + len(cells))) or cells[0] not in (0, 1):
        return None
    found: list[tuple[int, Cell, str]] = []
    for number, row in zip(cells, body, strict=True):
        for title, cell in zip(titles[1:], row[1:], strict=True):
            said = read_slot_cell(cell.flat)
            if said.kind != "slots" or len(said.slots) != 1:
                return None
            found.append((said.slots[0], cell, f"{title.flat} {number}"))
    found.sort(key=lambda one: one[0])
    slots = [slot for slot, _, _ in found]
    if slots != list(range(slots[0], slots[0] + len(slots))):
        return None
    place = titles[0].place
    rows = [[Cell("Slot", place, 0, 0), Cell("Function", place, 0, 1)]]
    for index, (slot, cell, name) in enumerate(found, start=1):
        rows.append([Cell(str(slot), cell.place, index, 0), Cell(name, cell.place, index, 1)])
    return Grid(rows, grid.place, grid.ruled)
