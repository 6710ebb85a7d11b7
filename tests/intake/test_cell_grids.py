"""Small grids of slots, a row a cell, become rows of the chart; other grids of numbers stay as they are."""

from __future__ import annotations

import pytest

from intake.drafted import drafted, slots
from modebook.intake.cell_grids import from_cell_grid
from modebook.intake.grid import grid_of


def rows(table: list[list[str]]) -> list[tuple[str, ...]] | None:
    made = from_cell_grid(grid_of(table))
    return None if made is None else [tuple(cell.flat for cell in row) for row in made.rows[1:]]


def test_a_row_a_cell_is_a_row_a_slot():
    """Two cells of three colors are six slots, each called by its color and its cell."""
    found = rows([["Cell", "Red", "Green", "Blue"], ["1", "3", "4", "5"], ["2", "6", "7", "8"]])
    assert found == [
        *[("3", "Red 1"), ("4", "Green 1"), ("5", "Blue 1")],
        *[("6", "Red 2"), ("7", "Green 2"), ("8", "Blue 2")],
    ]


def test_slots_that_run_down_the_columns_come_in_their_order():
    found = rows([["Pixel", "Red", "Green"], ["1", "1", "3"], ["2", "2", "4"]])
    assert found == [("1", "Red 1"), ("2", "Red 2"), ("3", "Green 1"), ("4", "Green 2")]


@pytest.mark.parametrize(
    "table",
    [
        [["Unit", "Red", "Green"], ["1", "3", "4"], ["2", "5", "6"]],
        [["Cell", "Red", "Green"], ["1", "3", "4"], ["3", "5", "6"]],
        [["Cell", "Red", "Green"], ["1", "3", "4"], ["2", "5", "7"]],
        [["Cell", "Red", "Green"], ["1", "3", "4"], ["2", "4", "5"]],
        [["Cell", "Lux", "Meters"], ["1", "3", "4"], ["2", "5", "6"]],
        [["Cell", "Red", "Green"], ["1", "3", ""], ["2", "5", "6"]],
    ],
)
def test_other_grids_stay(table):
    """No cells, a cell left out, a gap, a slot twice, titles that name no parameter, a blank."""
    assert rows(table) is None


def test_the_grid_goes_on_with_the_chart_above():
    """The cells' slots belong to the mode whose first rows stand in a table of the usual kind."""
    text = (
        "8 channel mode\n"
        "Ch   Function   Value    Effect\n"
        "1    Dimmer     0-255    0-100%\n"
        "2    Shutter    0-9      Closed\n"
        "                10-255   Open\n"
        "\n"
        "Cells\n"
        "Cell   Red   Green   Blue\n"
        "1      3     4       5\n"
        "2      6     7       8\n"
    )
    (mode,) = drafted(text).modes
    assert mode.footprint == 8
    assert slots(mode)[:2] == [("dimmer", [1]), ("shutter", [2])]
