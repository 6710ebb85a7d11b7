"""Slot and name in one cell are parted where the numbers count as slots do, and nowhere else."""

from __future__ import annotations

import pytest

from modebook.intake.grid import grid_of
from modebook.intake.numbered_names import numbered_names


def parted(cells: list[str]) -> list[list[str]]:
    grid = numbered_names(grid_of([["Channel", "Value"], *[[cell, "0-255"] for cell in cells]]))
    return [[cell.text for cell in row] for row in grid.rows]


@pytest.mark.parametrize("form", ["{} {}", "CH{}: {}", "{}. {}", "Kanal {} - {}", "Slot {} = {}"])
def test_numbers_and_names_are_two_columns(form):
    """The title of the cell stays with the slots; the names get one of their own."""
    found = parted([form.format(n + 1, name) for n, name in enumerate(["Pan", "Tilt", "Dimmer", "Red"])])
    assert [row[1] for row in found] == ["Name", "Pan", "Tilt", "Dimmer", "Red"]
    assert [len(row) for row in found] == [3] * 5


def test_pairs_count_on_from_their_second_slot():
    """1-2 Pan, 3-4 Tilt, 5 Dimmer."""
    assert [row[0] for row in parted(["1-2 Pan", "3-4 Tilt", "5 Dimmer"])][1:] == ["1-2", "3-4", "5"]


@pytest.mark.parametrize(
    "cells", [["3 Facet prism", "8 Facet prism", "5 Facet prism"], ["Pan", "Tilt", "Red"]]
)
def test_numbers_that_do_not_count_on_stay_in_their_names(cells):
    """Prisms of 3, 8 and 5 facets are no slots."""
    assert parted(cells) == [["Channel", "Value"], *[[cell, "0-255"] for cell in cells]]


def test_a_table_with_slots_of_its_own_stays():
    """Beside a column of slots, `1 Gobo` is a meaning."""
    rows = [["Channel", "Meaning"], ["1", "1 Gobo"], ["2", "2 Gobos"], ["3", "3 Gobos"]]
    assert [[cell.text for cell in row] for row in numbered_names(grid_of(rows)).rows] == rows


def test_ranges_beside_them_are_no_slots():
    """`25 à 33`, `34 à 101` go on as pairs of slots do, and are values."""
    rows = [["Canal / Paramètre", "Valeurs"], ["1 Pan", "0 à 255"], ["2 Tilt", "0 à 24"]]
    rows += [["", "25 à 33"], ["", "34 à 101"], ["3 Zoom", "0 à 7"], ["", "8 à 90"], ["", "91 à 120"]]
    found = numbered_names(grid_of(rows))
    assert found.width == 3
    assert [row[0].text for row in found.rows[1:4]] == ["1", "2", ""]
