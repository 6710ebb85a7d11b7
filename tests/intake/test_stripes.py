"""Shaded rows of a table are no table of their own; one whose lines are drawn, or that stands alone, is."""

from __future__ import annotations

from typing import Any

from modebook.intake.readers.stripes import are_stripes

COLUMNS = [(50.0, 100.0), (100.0, 200.0), (200.0, 300.0)]
ROWS: list[list[Any]] = [[(x0, top, x1, top + 15.0) for x0, x1 in COLUMNS] for top in (100.0, 115.0)]
BOX = (50.0, 100.0, 300.0, 130.0)


def edge(x0: float, *, filled: bool) -> dict[str, Any]:
    kind = "rect_edge" if filled else "line"
    return {
        "x0": x0,
        "x1": x0,
        "top": 101.0,
        "bottom": 114.0,
        "object_type": kind,
        "fill": filled,
        "stroke": not filled,
    }


def word(x0: float, x1: float, middle: float) -> dict[str, Any]:
    return {"x0": x0, "x1": x1, "top": middle - 4, "bottom": middle + 4}


SHADED = [edge(100.0, filled=True), edge(200.0, filled=True)]


def test_rows_between_are_of_the_same_table():
    """A row of cells right below, or right above, begins where the columns do."""
    below = [word(52, 60, 138), word(102, 140, 138), word(202, 240, 138)]
    above = [word(52, 60, 92), word(102, 140, 92)]
    assert are_stripes(ROWS, BOX, SHADED, below)
    assert are_stripes(ROWS, BOX, SHADED, above)


def test_drawn_lines_are_a_table():
    drawn = [*SHADED, edge(150.0, filled=False)]
    assert not are_stripes(ROWS, BOX, drawn, [word(52, 60, 138), word(102, 140, 138)])


def test_text_near_a_shaded_table_is_no_row_of_it():
    """Words far below, a caption over the borders of columns, and nothing at all."""
    assert not are_stripes(ROWS, BOX, SHADED, [word(52, 60, 200), word(102, 140, 200)])
    assert not are_stripes(ROWS, BOX, SHADED, [word(52, 96, 92), word(98, 140, 92), word(143, 230, 92)])
    assert not are_stripes(ROWS, BOX, SHADED, [])
