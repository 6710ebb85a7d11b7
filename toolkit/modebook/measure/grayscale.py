"""Reads a gray scale that was shot with a camera: code values and the light of each patch."""

from __future__ import annotations

from pathlib import Path

from modebook.measure.errors import MeasureError
from modebook.measure.transfer import fitted
from modebook.shelf.numbers import number
from modebook.shelf.tables import read_table


def read_gray(path: Path) -> tuple[tuple[float, float], ...]:
    """Give pairs of code value and light, each as a share of its greatest; codes above 1 are 8-bit.

    Raises ShelfError for no such table, MeasureError for a scale that cannot be used.
    """
    table = read_table(path, ("code", "light"), such_as="code, light")
    if not {"code", "light"} <= set(table.folded):
        raise MeasureError(path, "has no columns code and light", remedy="give both, a row for each patch")
    code_at, light_at = table.folded.index("code"), table.folded.index("light")
    pairs: list[tuple[float, float]] = []
    for row in table.rows:
        if row.blank:
            continue
        try:
            pairs.append((number(row.cells[code_at]), number(row.cells[light_at])))
        except ValueError as error:
            raise MeasureError(path, str(error), place=f"row {row.number}") from None
    greatest = max((light for _, light in pairs), default=0.0)
    if greatest <= 0:
        raise MeasureError(
            path, "no patch has light", remedy="give the light of each patch, white as 1 or 100"
        )
    scale = 255.0 if max(code for code, _ in pairs) > 1.0 else 1.0
    scaled = tuple((code / scale, light / greatest) for code, light in pairs)
    fitted(scaled, 0.5)
    return scaled
