"""Tells stripes from tables: cells made by filled areas alone, with rows of their table between."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from modebook.intake.grid import Box

Word = dict[str, Any]
Rows = list[list[Box | None]]
_NEAR = 1.5
"""How many heights of a row away the next row of the same table may begin."""


def are_stripes(rows: Rows, box: Box, edges: Iterable[Any], outside: list[Word]) -> bool:
    """Whether a table is but some shaded rows of a larger one.

    Its lines are edges of filled areas alone, and right above or below it stand words in two of its columns.
    box: of the table, in points; edges: of the page; outside: the words that stand in no table.
    """
    if not _only_filled(box, edges):
        return False
    cells = [cell for cell in max(rows, key=len) if cell is not None]
    if len(cells) < 2:
        return False
    height = min(cell[3] - cell[1] for row in rows for cell in row if cell is not None)
    near = [
        word
        for word in outside
        if box[1] - _NEAR * height <= (word["top"] + word["bottom"]) / 2 <= box[3] + _NEAR * height
        and box[0] - 1 <= word["x0"]
        and word["x1"] <= box[2] + 1
    ]
    for side in (True, False):
        mine = [word for word in near if (word["bottom"] <= box[1] + 2) is side]
        starts = [min((w["x0"] for w in mine if c[0] - 1 <= w["x0"] < c[2] - 1), default=None) for c in cells]
        # Text over the table has words everywhere; cells begin where their columns do.
        begun = sum(
            x is not None and x - c[0] < 0.3 * (c[2] - c[0]) for x, c in zip(starts, cells, strict=True)
        )
        over = any(w["x0"] < c[2] - 1 < w["x1"] for w in mine for c in cells[:-1])
        if begun >= 2 and not over:
            return True
    return False


def _only_filled(box: Box, edges: Iterable[Any]) -> bool:
    """Whether all lines within a box are edges of areas that are filled and not drawn around."""
    mine = [
        edge
        for edge in edges
        if edge["x0"] >= box[0] - 2
        and edge["x1"] <= box[2] + 2
        and edge["top"] >= box[1] + 1
        and edge["bottom"] <= box[3] - 1
    ]
    return bool(mine) and all(
        edge.get("object_type") == "rect_edge" and edge.get("fill") and not edge.get("stroke")
        for edge in mine
    )
