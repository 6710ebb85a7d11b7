"""Charts that count their slots from 0: a column 0, 1, 2 is read as slots 1, 2, 3, and the mode says so."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace

from modebook.intake.chart_rows import read_slot_cell
from modebook.intake.folding import fold
from modebook.intake.grid import Cell, Grid, Line
from modebook.intake.titles import title_roles
from modebook.intake.values import read_values

_NUMBERS = re.compile(r"(?:[+#]\s*)?\d{1,3}(?:\s*[-–+/&,]\s*\d{1,3})*")
_OFFSETS = frozenset({"offset", "relative", "relative slot", "relative channel", "rel", "versatz"})
"""Titles that say themselves that the first slot is 0."""
FROM_ZERO = "the slots are printed from 0 on: each is taken as one more"
LEAST = 3  # rows from which a column of numbers counts


def from_zero(grid: Grid) -> tuple[Grid, str]:
    """The grid with its slots counted from 1, and what is doubtful about that; as it is, where they are."""
    columns = [c for c in range(grid.width) if _counts_from_zero(grid, c)]
    if not columns:
        return grid, ""
    rows = [
        [
            replace(cell, text=_raised(cell.text)) if cell.column in columns and _is_number(cell) else cell
            for cell in cells
        ]
        for cells in grid.rows
    ]
    titles = {fold(_title(grid, c)) for c in columns}
    told = "" if titles <= _OFFSETS else FROM_ZERO
    return Grid(rows, grid.place, grid.ruled), told


def _is_number(cell: Cell) -> bool:
    return _NUMBERS.fullmatch(cell.flat) is not None


def _raised(text: str) -> str:
    return re.sub(r"\d+", lambda number: str(int(number[0]) + 1), text.replace("+", " ").strip(" #"))


def _title(grid: Grid, column: int) -> str:
    """The nearest text above the first number of a column."""
    found = ""
    for row in grid.rows:
        if column < len(row) and row[column].flat:
            if _is_number(row[column]):
                return found
            found = row[column].flat
    return found


def _counts_from_zero(grid: Grid, column: int) -> bool:
    """Whether a column that stands for slots goes 0, 1, 2 and on; it may begin anew at 0."""
    roles = title_roles(_title(grid, column))
    if roles[:1] not in (("slot",), ("coarse",)) and not (not roles and column == 0 and _has_ranges(grid)):
        return False
    last: int | None = None
    rows = zeros = 0
    for row in grid.rows:
        cell = row[column] if column < len(row) else None
        if cell is None or not cell.flat:
            continue
        if not _is_number(cell):
            if last is not None and read_slot_cell(cell.flat).kind == "text" and not _says_title(grid, cell):
                return False
            continue
        numbers = [int(number) for number in re.findall(r"\d+", cell.flat)]
        if numbers[-1] - numbers[0] > 3 or (len(numbers) > 1 and "value" in roles):
            return False  # a stretch of values
        if last is None and numbers[0] != 0:
            return False
        # As many rows may say one slot as it has ranges.
        if last is not None and numbers[0] not in (last, last + 1, 0):
            return False
        zeros += numbers[0] == 0 and last != 0
        rows += numbers[0] != last
        last = numbers[-1]
    return rows >= LEAST and rows > 2 * zeros


def _says_title(grid: Grid, cell: Cell) -> bool:
    """Whether a cell says the column's title again, as tables over pages do."""
    return fold(cell.flat) == fold(_title(grid, cell.column)) or bool(title_roles(cell.flat))


def _has_ranges(grid: Grid) -> bool:
    """Whether some column beside the first prints ranges of values."""
    for column in range(1, grid.width):
        cells = [row[column].flat for row in grid.rows if column < len(row) and row[column].flat]
        ranges = sum(any(not value.single for value in read_values(cell)) for cell in cells)
        if cells and ranges > 0.4 * len(cells):
            return True
    return False


_LEAD = re.compile(r"(\d{1,3})(?=\s+[^\W\d])")


def lines_from_zero(lines: list[Line], titled: Callable[[str], list[str] | None]) -> tuple[list[Line], bool]:
    """Running lines with their slots counted from 1, and whether they were counted from 0.

    titled: the roles that a line of column titles gives. Only below such a line, slots first, does 0 begin a
    chart: elsewhere `0 Off` is a value.
    """
    titles = (titled(" ".join(line.text.split())) for line in lines)
    start = next((n for n, roles in enumerate(titles) if roles and roles[0] == "slot"), None)
    if start is None:
        return lines, False
    numbers = [(n, int(m[1])) for n, line in enumerate(lines) if n > start and (m := _LEAD.match(line.text))]
    counted = 0
    places: list[int] = []
    for n, number in numbers:
        if number == counted:
            places.append(n)
            counted += 1
    if counted < LEAST or places[0] != start + 1 or len(places) < 0.6 * len(numbers):
        return lines, False
    made = list(lines)
    for n in places:
        made[n] = replace(lines[n], text=_LEAD.sub(lambda m: str(int(m[1]) + 1), lines[n].text, count=1))
    return made, True
