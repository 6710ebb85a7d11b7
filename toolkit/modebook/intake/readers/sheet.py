"""Reads XLSX, ODS and CSV through the shelf: values only, nothing is run."""

from __future__ import annotations

from collections.abc import Sequence

from modebook.intake.errors import IntakeError
from modebook.intake.grid import Cell, Grid, Item, Leaf, Line, Place, Source
from modebook.intake.readers.titles_above import Titles, titles_of


def read_sheet(content: bytes, name: str) -> Source:
    """A workbook's visible sheets, or a CSV, as grids with row numbers. Raises IntakeError."""
    from modebook.shelf.errors import ShelfError

    try:
        if content.startswith(b"PK\x03\x04"):
            from modebook.shelf.sheets import read_sheets

            leaves = [
                leaf_of(sheet.name, list(enumerate(sheet.cells, start=1)))
                for sheet in read_sheets(content, name)
            ]
            notes: list[str] = []
        else:
            leaf, notes = _csv(content, name)
            leaves = [leaf]
    except ShelfError as error:
        raise IntakeError(error.file, error.problem, place=error.place, remedy=error.remedy) from error
    if not any(leaf.items for leaf in leaves):
        raise IntakeError(name, "no cell of it is filled", remedy="give a sheet with a chart")
    return Source(name, "sheet", leaves, notes=notes)


def _csv(content: bytes, name: str) -> tuple[Leaf, list[str]]:
    from modebook.intake.titles import title_roles
    from modebook.shelf.delimited import decoded, read_lines
    from modebook.shelf.errors import ShelfError

    text, _, notes = decoded(content, name)
    best: tuple[int, int, list[tuple[int, list[str]]]] | None = None
    first: ShelfError | None = None
    for delimiter in (",", ";", "\t"):
        try:
            rows = read_lines(text, delimiter, name)
        except ShelfError as error:
            first = first or error
            continue
        titles = max((sum(bool(title_roles(cell)) for cell in row) for _, row in rows[:40]), default=0)
        score = (titles, sum(len(row) > 1 for _, row in rows))
        if best is None or score > best[:2]:
            best = (*score, rows)
    if best is None or (first is not None and best[1] == 0):
        raise first or IntakeError(name, "is no CSV", remedy="save it again as CSV in UTF-8")
    return leaf_of(None, best[2]), notes


def leaf_of(sheet: str | None, rows: Sequence[tuple[int, Sequence[str]]]) -> Leaf:
    """Rows as one grid a block: blank rows part tables, a row with one cell between them is a line.

    Titles printed once count for the blocks below that go on under them, though blank rows part these.
    """
    items: list[Item] = []
    block: list[tuple[int, list[str]]] = []
    above: Titles | None = None

    def flush() -> None:
        nonlocal above
        if not block:
            return
        used = _filled(block)
        cells = _cells(sheet, block, above.columns if above and set(used) <= set(above.columns) else used)
        lines: list[Item] = []
        while cells and len(used) > 1 and sum(bool(cell.flat) for cell in cells[0]) == 1:
            only = next(cell for cell in cells[0] if cell.flat)
            lines.append(Line(only.flat, only.place))
            cells.pop(0)
        if above is not None and set(used) <= set(above.columns) and above.cover(cells):
            last = items[-1]
            if not lines and isinstance(last, Grid):
                last.rows.extend(cells)
            else:
                items.extend([*lines, Grid([*above.rows, *cells], cells[0][0].place)])
            block.clear()
            return
        items.extend(lines)
        cells = _cells(sheet, block[len(lines) :], used)
        if len(used) == 1:
            items.extend(Line(row[0].flat, row[0].place) for row in cells)
        elif cells:
            grid = Grid(cells, Place(sheet=sheet, row=block[0][0]))
            items.append(grid)
            above = titles_of(grid, used)
        block.clear()

    for number, row in rows:
        if any(cell.strip() for cell in row):
            block.append((number, list(row)))
        else:
            flush()
    flush()
    return Leaf(None, items, sheet=sheet, raw=[(number, list(row)) for number, row in rows])


def _filled(block: list[tuple[int, list[str]]]) -> list[int]:
    """The columns in which a block has anything."""
    width = max(len(row) for _, row in block)
    return [c for c in range(width) if any(c < len(row) and row[c].strip() for _, row in block)]


def _cells(sheet: str | None, block: list[tuple[int, list[str]]], columns: list[int]) -> list[list[Cell]]:
    return [
        [
            Cell(row[c].strip() if c < len(row) else "", Place(sheet=sheet, row=number), number, i)
            for i, c in enumerate(columns)
        ]
        for number, row in block
    ]
