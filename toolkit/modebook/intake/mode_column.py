"""One long table with a column that says whose mode each row is: as the tables of the modes that it holds."""

from __future__ import annotations

import itertools
from collections.abc import Collection
from dataclasses import replace

from modebook.intake.chart_rows import read_slot_cell
from modebook.intake.grid import Cell, Grid
from modebook.intake.headers import find_header
from modebook.intake.headings import ModeHead, numbered_mode, read_mode_head
from modebook.intake.names import read_name
from modebook.intake.titles import title_roles


def by_mode_column(grid: Grid, known: Collection[str] = ()) -> list[tuple[ModeHead | None, Grid]]:
    """Each mode's heading and rows, titles repeated; empty where no column tells modes apart.

    A column does where its text changes just where the slots of another column begin again at 1: a group's
    or a parameter's name changes elsewhere as well. known: modes of tables before; a table that goes on over
    a page begins in the midst of one, with its name (heading of the same name) or without (heading None).
    """
    header = find_header(grid)
    if header is None:
        return []
    first = header[0] + header[1]
    titles, rows = grid.rows[:first], grid.rows[first:]
    for column in range(grid.width - 1):
        body = _without_lone(rows, column) if _says_mode(titles, column) else rows
        starts = _starts(body, column)
        says = _says_mode(titles, column)
        goes_on = says and bool(known) and bool(starts)
        if not starts or not (says or _may_name_modes(body, column, starts)):
            continue
        if len(starts) < 2 and not goes_on:
            continue
        if not goes_on and starts[0] != 0:
            continue
        if not any(
            _begins_anew(body, other, starts, goes_on) for other in range(grid.width) if other != column
        ):
            continue
        found: list[tuple[ModeHead | None, Grid]] = []
        edges = sorted({0, *starts, len(body)})
        for start, end in itertools.pairwise(edges):
            text = body[start][column].flat
            head = (read_mode_head(text) or numbered_mode(text)) if text else None
            rows = [_without(row, column) for row in (*titles, *body[start:end])]
            found.append((head, Grid(rows, grid.place, grid.ruled)))
        return found
    return []


def _without_lone(rows: list[list[Cell]], column: int) -> list[list[Cell]]:
    """The rows, a mode's name that has one to itself put into the next: it stands above its slots."""
    found: list[list[Cell]] = []
    waiting: Cell | None = None
    for row in rows:
        filled = [cell for cell in row if cell.flat]
        if len(filled) == 1 and filled[0].column == column:
            waiting = filled[0]
            continue
        if waiting is not None and column < len(row) and not row[column].flat:
            row = [*row[:column], replace(row[column], text=waiting.text), *row[column + 1 :]]
        waiting = None
        found.append(row)
    return found


def _starts(body: list[list[Cell]], column: int) -> list[int]:
    """The rows in which a column says something new."""
    found: list[int] = []
    last = ""
    for index, row in enumerate(body):
        text = row[column].flat if column < len(row) else ""
        if text and text != last:
            found.append(index)
            last = text
    return found


def _says_mode(titles: list[list[Cell]], column: int) -> bool:
    said = [title_roles(row[column].flat) for row in titles if column < len(row) and row[column].flat]
    return any(roles[:1] == ("mode",) for roles in said)


def _may_name_modes(body: list[list[Cell]], column: int, starts: list[int]) -> bool:
    texts = [body[index][column].flat for index in starts]
    if len(set(texts)) < len(texts) or any(read_slot_cell(text).kind == "slots" for text in texts):
        return False
    heads = sum(read_mode_head(text) is not None for text in texts)
    return heads == len(texts) and not any(read_name(text).sure for text in texts)


def _begins_anew(body: list[list[Cell]], column: int, starts: list[int], goes_on: bool) -> bool:
    """Whether a column of slots begins again at 1 in just these rows; a table that goes on may begin in the
    midst of a mode.
    """
    ones: list[int] = []
    before = counted = 0
    for index, row in enumerate(body):
        cell = read_slot_cell(row[column].flat) if column < len(row) else None
        if cell is None or cell.kind != "slots":
            continue
        counted += 1
        # A mode of slot 1 alone goes before one that begins with it.
        if min(cell.slots) == 1 and (before != 1 or index in starts):
            ones.append(index)
        before = min(cell.slots)
    if goes_on:
        return counted > 0 and {n for n in ones if n} == {n for n in starts if n}
    return ones == starts and counted >= 2 * len(starts)


def _without(row: list[Cell], column: int) -> list[Cell]:
    kept = [cell for cell in row if cell.column != column]
    return [
        Cell(cell.text, cell.place, cell.row, index, cell.span, cell.wraps) for index, cell in enumerate(kept)
    ]
