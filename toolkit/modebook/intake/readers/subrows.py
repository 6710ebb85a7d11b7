"""Parts a row whose cells hold several lines into the rows that it stands for, by the height of the lines."""

from __future__ import annotations

from dataclasses import dataclass

from modebook.intake.chart_rows import read_slot_cell
from modebook.intake.values import read_values

_TOLERANCE = 2.6


@dataclass(frozen=True, slots=True)
class TextLine:
    """One line of a cell and the height of its middle."""

    text: str
    y: float


def split_row(cells: list[list[TextLine]]) -> list[list[str]]:
    """Rows of cell texts. A row is parted where one cell has several values, or slots, each on its own line,
    and the lines of the other cells stand at their heights; else its cells keep their lines."""
    whole = [["\n".join(line.text for line in cell) for cell in cells]]
    anchors = _anchors(cells)
    if anchors is None:
        return [[" ".join(line.text for line in cell) for cell in cells]]
    heights = [line.y for line in cells[anchors]]
    first = heights[0]
    rows = [["" for _ in cells] for _ in heights]
    for column, cell in enumerate(cells):
        if not cell:
            continue
        matching = sum(any(abs(line.y - y) <= _TOLERANCE for line in cell) for y in heights)
        if len(cell) == 1 or (column != anchors and matching == 0 and column < anchors):
            # A name or slot number of the whole row, wherever it is centered.
            rows[0][column] = " ".join(line.text for line in cell)
            continue
        if len(cell) > 1 and cell[0].y < first - _TOLERANCE and column != anchors:
            # Words begin above the first value: the cell is centered as a block, and heights prove nothing.
            return whole
        if matching == 0 or (matching < len(heights) and len(cell) >= len(heights) and column > anchors):
            return whole
        for line in cell:
            index = max((i for i, y in enumerate(heights) if y <= line.y + _TOLERANCE), default=0)
            if line.y < first - _TOLERANCE:
                index = 0
            rows[index][column] = f"{rows[index][column]} {line.text}".strip()
    return rows


def _anchors(cells: list[list[TextLine]]) -> int | None:
    """The column whose lines are rows: several values one below the other, else several slot numbers."""
    best: tuple[int, int] | None = None
    for column, cell in enumerate(cells):
        if len(cell) > 1 and all(read_values(line.text) for line in cell):
            ranges = sum(not read_values(line.text)[0].single for line in cell)
            slots = all(read_slot_cell(line.text).kind == "slots" for line in cell)
            score = len(cell) * 2 + (1 if ranges else 0)
            if ranges or slots:
                best = max(best or (0, column), (score, column), key=lambda pair: pair[0])
    return best[1] if best else None
