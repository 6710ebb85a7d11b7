"""Slot number and name in one cell (`1 Pan`, `CH2: Tilt`): read as the two columns that they are."""

from __future__ import annotations

import itertools
import re
from dataclasses import replace

from modebook.intake.column_stats import stats_of
from modebook.intake.grid import Cell, Grid
from modebook.intake.names import read_name
from modebook.intake.titles import title_roles

_BOTH = re.compile(
    r"(?P<slot>(?:(?:ch|chan|channel|slot|kanal|canal|canale|voie|k)\.?\s*)?\d{1,3}(?:\s*[-–+/&]\s*\d{1,3})?)"
    r"\s*(?:[.:)=|]|\s[-–—]|\s)\s*(?P<name>[^\W\d].*)",
    re.IGNORECASE | re.DOTALL,
)
LEAST = 3  # cells from which a column counts
GOING_ON = 0.9  # of them: how many go on with the one before


def numbered_names(grid: Grid) -> Grid:
    """The grid with a column of its own for slots that stand in one cell with their names.

    Only where the numbers count as slots do and no other column holds slots.
    """
    found = [c for c in range(grid.width) if _is_numbered(grid, c)]
    if len(found) != 1 or any(_counts(grid, c) for c in range(grid.width)):
        return grid
    column = found[0]
    rows: list[list[Cell]] = []
    for cells in grid.rows:
        made: list[Cell] = []
        for cell in cells:
            if cell.column != column:
                made.append(replace(cell, column=cell.column + (cell.column > column)))
                continue
            both = _BOTH.fullmatch(cell.text.strip())
            slot, name = (both["slot"], both["name"]) if both else ("", cell.text)
            if both is None and title_roles(cell.flat)[:1] == ("slot",):
                slot, name = cell.text, "Name"
            made.append(replace(cell, text=slot, span=1))
            made.append(replace(cell, text=name, column=column + 1))
        rows.append(made)
    return Grid(rows, grid.place, grid.ruled)


def _counts(grid: Grid, column: int) -> bool:
    """Whether a column holds slots; ranges of values (`25 to 33`, `34 to 101`) go on as pairs of slots do."""
    stats = stats_of([row[column] for row in grid.rows if column < len(row)])
    return stats.sequence and stats.ranges <= 0.4 * stats.filled


def _is_numbered(grid: Grid, column: int) -> bool:
    """Whether a column's cells begin with numbers that go on by one (pairs by two), in nearly all of them."""
    cells = [row[column] for row in grid.rows if column < len(row) and row[column].flat]
    if cells and title_roles(cells[0].flat):
        cells = cells[1:]
    matches = [_BOTH.fullmatch(cell.text.strip()) for cell in cells]
    # A merged cell may say one thing in several rows.
    texts = dict.fromkeys(match[0] for match in matches if match)
    numbers = [[int(n) for n in re.findall(r"\d+", _slot_of(text))] for text in texts]
    if sum(match is not None for match in matches) < 0.75 * len(cells):
        return False
    if len(numbers) < LEAST and not _all_known(numbers, [match["name"] for match in matches if match], cells):
        return False
    going = sum(b[0] == a[-1] + 1 or b[0] == 1 for a, b in itertools.pairwise(numbers))
    return going >= GOING_ON * (len(numbers) - 1)


def _all_known(numbers: list[list[int]], names: list[str], cells: list[Cell]) -> bool:
    """Whether few cells are all numbered from 1 on, and name parameters without a doubt: a small mode."""
    return (
        bool(numbers)
        and numbers[0][0] == 1
        and len(names) == len(cells)
        and all(read_name(name).sure for name in names)
    )


def _slot_of(text: str) -> str:
    both = _BOTH.fullmatch(text)
    return both["slot"] if both else ""
