"""Columns of slots titled by bare numbers under one title (`Channel in mode` over 6, 9 and 12)."""

from __future__ import annotations

from modebook.intake.chart_rows import read_slot_cell
from modebook.intake.grid import Cell, Grid
from modebook.intake.headings import read_mode_head
from modebook.intake.titles import title_roles

_SEARCHED = 6
_USUAL = "ch"


def with_footprints_told(grid: Grid) -> Grid:
    """Give a grid with such numbers as titles that say what they count (`6 Channel`); itself where not.

    The numbers are footprints of modes. Only where a row of two or more stands, rising, under a title
    that reaches over those columns and speaks of slots or modes, and where slot 1 comes first below each.
    """
    for index in range(min(_SEARCHED, len(grid.rows) - 2)):
        upper, lower = grid.rows[index], grid.rows[index + 1]
        word = _slot_word(upper)
        filled = [cell for cell in lower if cell.flat]
        called = _counted_modes(upper, filled)
        if called and _begins(grid.rows[index + 2 :], filled[0].column):
            rows = list(grid.rows)
            rows[index + 1] = [
                Cell(f"{called} {c.flat}" if c.flat else "", c.place, c.row, c.column, c.span, c.wraps)
                for c in lower
            ]
            return Grid(rows, grid.place, grid.ruled)
        if word is None or len(filled) < 2 or not all(cell.flat.isdigit() for cell in filled):
            continue
        numbers = [int(cell.flat) for cell in filled]
        under = all(_covered(upper, cell.column) for cell in filled)
        if not under or numbers != sorted(set(numbers)) or numbers[0] < 2:
            continue
        body = grid.rows[index + 2 :]
        if not all(_begins(body, cell.column) for cell in filled):
            continue
        rows = list(grid.rows)
        rows[index + 1] = [
            Cell(f"{c.flat} {word}" if c.flat else "", c.place, c.row, c.column, c.span, c.wraps)
            for c in lower
        ]
        return Grid(rows, grid.place, grid.ruled)
    return grid


def _counted_modes(upper: list[Cell], numbers: list[Cell]) -> str:
    """The title for modes that stands above a row of nothing but their numbers 1, 2, 3; empty for others."""
    if len(numbers) < 2 or [cell.flat for cell in numbers] != [str(n + 1) for n in range(len(numbers))]:
        return ""
    first, last = numbers[0].column, numbers[-1].column
    over = [cell.flat for cell in upper[first : last + 1] if cell.flat]
    return over[0] if len(over) == 1 and upper[first].flat and "mode" in title_roles(over[0]) else ""


def _slot_word(row: list[Cell]) -> str | None:
    """What a title over several columns calls slots; None where none speaks of slots or modes."""
    for cell in row:
        if cell.span < 2 or not cell.flat:
            continue
        words = [word.strip(".:,") for word in cell.flat.split()]
        found = next((word for word in words if title_roles(word)[:1] == ("slot",) and len(word) > 1), None)
        if found:
            return found
        if read_mode_head(cell.flat) is not None:
            return _USUAL
    return None


def _covered(row: list[Cell], column: int) -> bool:
    return any(cell.span > 1 and cell.column <= column < cell.column + cell.span for cell in row if cell.flat)


def _begins(body: list[list[Cell]], column: int) -> bool:
    """Whether the first slot of a column is 1."""
    for row in body:
        cell = read_slot_cell(row[column].flat) if column < len(row) else None
        if cell is not None and cell.kind == "slots":
            return cell.slots[0] == 1
    return False
