"""Text whose columns do not stand below each other: cells two spaces apart, placed by what they say."""

from __future__ import annotations

from modebook.intake.chart_rows import read_slot_cell
from modebook.intake.grid import Item, Line, grid_of
from modebook.intake.headings import read_mode_head
from modebook.intake.readers.pieces import AlignedLine
from modebook.intake.titles import is_title_row, title_roles
from modebook.intake.values import read_values

_LEAST = 3
"""Rows from which lines count as a table."""


def ragged_items(lines: list[AlignedLine]) -> tuple[list[Item], list[AlignedLine]]:
    """The table under the first line of titles, with the lines above it, and the lines that are left.

    Nothing unless every row has its cells where the titles want them (a row without slot and name begins with
    its values), rows have as many cells as there are titles, and those are no true columns.
    """
    filled = [line for line in lines if line.pieces]
    start = next((n for n, line in enumerate(filled) if is_title_row([p.text for p in line.pieces])), None)
    if start is None:
        return [], lines
    titles = filled[start].pieces
    valued = next((n for n, p in enumerate(titles) if title_roles(p.text)[:1] == ("value",)), None)
    if len(titles) < 3:
        return [], lines
    rows: list[list[str]] = []
    whole: list[AlignedLine] = []
    for line in filled[start + 1 :]:
        placed = _placed([p.text for p in line.pieces], len(titles), valued)
        if placed is None:
            break
        rows.append(placed)
        if len(line.pieces) == len(titles):
            whole.append(line)
    astray = sum(
        abs(piece.x0 - title.x0) > 2
        for line in whole
        for piece, title in zip(line.pieces, titles, strict=True)
    )
    if len(whole) < _LEAST or astray < 0.25 * len(whole) * len(titles):
        return [], lines
    before: list[Item] = [Line(" ".join(p.text for p in line.pieces), line.place) for line in filled[:start]]
    kept = filled[start : start + 1 + len(rows)]
    grid = grid_of([[piece.text for piece in titles], *rows], ruled=False)
    for cells, line in zip(grid.rows, kept, strict=True):
        for cell in cells:
            cell.place = line.place
    return [*before, grid], filled[start + 1 + len(rows) :]


def _placed(texts: list[str], width: int, valued: int | None) -> list[str] | None:
    """The cells of a line, each in its column; None where it is no row, or not known which."""
    if len(texts) > width or (len(texts) == 1 and read_mode_head(texts[0])):
        return None
    if len(texts) == width:
        return texts
    if valued is None:
        return None
    if len(texts) > valued and read_values(texts[valued]) and read_slot_cell(texts[0]).kind == "slots":
        return [*texts, *[""] * (width - len(texts))]
    if valued > 0 and read_values(texts[0]) and not read_values(texts[0])[0].single:
        cells = [*[""] * valued, *texts]
        return [*cells, *[""] * (width - len(cells))] if len(cells) <= width else None
    return None
