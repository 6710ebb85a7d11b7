"""One long table with a column for the mode: each mode's rows, over pages as well; other columns are none."""

from __future__ import annotations

import pytest

from modebook.intake.draft import draft_bytes
from modebook.intake.grid import grid_of
from modebook.intake.mode_column import by_mode_column

TITLES = ["Mode", "Channel", "Function", "Value"]


def rows(*modes: tuple[str, int], again: bool = False) -> list[list[str]]:
    """Lines of so many slots for each mode, its name in the first or in all of them."""
    found = []
    for name, count in modes:
        for n in range(count):
            found.append([name if again or n == 0 else "", str(n + 1), f"Red {n + 1}", "0-255"])
    return found


@pytest.mark.parametrize("again", [False, True])
def test_each_mode_has_its_rows(again):
    """Basic with 3 rows, Full with 5; titles stand above both."""
    found = by_mode_column(grid_of([TITLES, *rows(("Basic", 3), ("Full", 5), again=again)]))
    assert [(head.name, len(part.rows)) for head, part in found] == [("Basic", 4), ("Full", 6)]
    assert [cell.text for cell in found[1][1].rows[0]] == TITLES[1:]


def test_a_table_that_goes_on_begins_in_the_midst_of_a_mode():
    """After a page break: two rows without a name, then the next mode."""
    body = [["", "4", "Red", "0-255"], ["", "5", "Green", "0-255"], *rows(("Full", 3))]
    found = by_mode_column(grid_of([TITLES, *body]), known={"Basic"})
    assert [(head and head.name, len(part.rows)) for head, part in found] == [(None, 3), ("Full", 4)]


def test_a_group_changes_where_slots_do_not_begin_again():
    """Movement and color are no modes: slots go on from 2 to 3."""
    body = [
        ["Movement", "1", "Pan", ""],
        ["", "2", "Tilt", ""],
        ["Color", "3", "Red", ""],
        ["", "4", "Blue", ""],
    ]
    assert by_mode_column(grid_of([["Mode", *TITLES[1:]], *body])) == []


def test_names_of_parameters_are_no_modes():
    """A column of names beside slots that begin again, without a title that says mode."""
    body = [["Dimmer", "1", "x", ""], ["Red", "2", "x", ""], ["Dimmer", "1", "x", ""], ["Red", "2", "x", ""]]
    assert by_mode_column(grid_of([["Function", *TITLES[1:]], *body])) == []


def test_the_name_of_a_mode_may_have_a_row_to_itself():
    """Above its slots, in the column of modes; the first one is no second row of titles."""
    text = (
        "Mode;Slot;Name;Value\nSmall (2);;;\n;1;Zoom;0-255\n;2;Iris;0-255\n"
        "Large (3);;;\n;1;Zoom;0-255\n;2;Iris;0-255\n;3;Focus;0-255\n"
    )
    assert [(mode.name, mode.footprint) for mode in draft_bytes(text.encode()).document.modes] == [
        ("Small (2)", 2),
        ("Large (3)", 3),
    ]
