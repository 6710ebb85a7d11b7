"""A matrix with its slots across is turned; a table that only begins with numbers is not."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from modebook.intake.grid import grid_of
from modebook.intake.turned import turned_matrix


@given(st.integers(3, 12), st.integers(1, 4))
def test_slots_across_run_down_when_turned(width, modes):
    """Every cell stands at its slot and its mode again."""
    names = [[f"name {mode} {slot}" for slot in range(width)] for mode in range(modes)]
    rows = [["Mode", *map(str, range(1, width + 1))], *([f"M{n}", *row] for n, row in enumerate(names))]
    turned = turned_matrix(grid_of(rows))
    assert turned is not None
    assert [cell.text for cell in turned.rows[0]] == ["Slot", *(f"M{n}" for n in range(modes))]
    for slot, row in enumerate(turned.rows[1:]):
        assert [cell.text for cell in row] == [str(slot + 1), *(names[mode][slot] for mode in range(modes))]


def test_other_tables_stay_as_they_are():
    """Numbers that do not count from 1, or that fill the first column too, are no slots across."""
    assert turned_matrix(grid_of([["Mode", "2", "3", "4"], ["A", "Red", "Green", "Blue"]])) is None
    assert turned_matrix(grid_of([["1", "2", "3", "4"], ["A", "Red", "Green", "Blue"]])) is None
    assert turned_matrix(grid_of([["Slot", "Function", "Value", "Text"], ["1", "Red", "0-255", ""]])) is None
