"""Tables that stand inside a cell of an HTML table: their rows and columns become the outer table's own."""

from __future__ import annotations

from copy import deepcopy
from typing import Any

MOST_ROWS = 300


def without_inner(table: Any) -> Any:
    """Give a table in which each cell that held a table of its own is parted into its rows and columns.

    Other cells of such a row reach over all its rows; a column that is parted anywhere is as wide everywhere.
    The table itself is left as it is; it is given back where no cell holds a table, or where cells reach over
    several columns or rows.
    """
    rows = [row for row in table.iter("tr") if _table_of(row) is table]
    parts = [[_inner_rows(cell) for cell in _cells(row)] for row in rows]
    if not any(any(inner) for inner in parts):
        return table
    if any(cell.get("colspan") or cell.get("rowspan") for row in rows for cell in _cells(row)):
        return table
    columns = max(len(inner) for inner in parts)
    widths = [
        max((max((len(r) for r in inner[c]), default=1) for inner in parts if c < len(inner)), default=1)
        for c in range(columns)
    ]
    made = table.makeelement("table", {})
    for row, inner in zip(rows, parts, strict=True):
        high = min(max((len(cells) for cells in inner), default=1) or 1, MOST_ROWS)
        lines = [made.makeelement("tr", {}) for _ in range(high)]
        for c, cell in enumerate(_cells(row)):
            if not inner[c]:
                own = deepcopy(cell)
                own.tail = None
                own.set("rowspan", str(high))
                own.set("colspan", str(widths[c]))
                lines[0].append(own)
                continue
            for n, line in enumerate(lines):
                found = inner[c][n] if n < len(inner[c]) else []
                for k in range(widths[c]):
                    piece = deepcopy(found[k]) if k < len(found) else made.makeelement("td", {})
                    piece.tail = None
                    line.append(piece)
        for line in lines:
            made.append(line)
    return made


def _table_of(element: Any) -> Any:
    parent = element.getparent()
    while parent is not None and parent.tag != "table":
        parent = parent.getparent()
    return parent


def _cells(row: Any) -> list[Any]:
    return [cell for cell in row if cell.tag in ("td", "th")]


def _inner_rows(cell: Any) -> list[list[Any]]:
    """The cells of the one table inside a cell, row by row; empty where there is none, or words beside it."""
    inner = next((child for child in cell.iterdescendants("table")), None)
    if inner is None:
        return []
    rows = [_cells(row) for row in inner.iter("tr") if _table_of(row) is inner]
    return [row for row in rows if row]
