"""The row of titles: found below other rows, joined where it breaks, parted where it stands twice."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from intake.drafted import drafted
from modebook.intake.grid import grid_of
from modebook.intake.headers import find_header, joined_titles, split_sets

TITLES = ["Channel", "Function", "Value", "Description"]
BODY = [["1", "Dimmer", "0-255", "Closed to open"], ["2", "Red", "0-255", ""], ["3", "Green", "0-255", ""]]


@given(st.permutations(range(4)), st.integers(0, 3))
def test_titles_are_found_in_any_order_below_other_rows(order, above):
    rows = [["Our chart", "", "", ""]] * above + [[row[c] for c in order] for row in [TITLES, *BODY]]
    assert find_header(grid_of(rows)) == (above, 1)


def test_words_unknown_as_titles_head_columns_that_count():
    """A language that the lists do not hold: the columns below say what they are."""
    assert find_header(grid_of([["Kanava", "Toiminto", "Arvo", "Selitys"], *BODY])) == (0, 1)


def test_no_titles_are_found_in_a_table_without():
    assert find_header(grid_of(BODY)) is None


def test_a_title_over_two_rows_is_one():
    """Words cut by a narrow column are whole again; words one above the other stand side by side."""
    rows = [
        ["Basic", "Exten", "Function", "Value"],
        ["mode", "ded", "", ""],
        ["1", "1", "Dimmer", "0-255"],
        ["-", "2", "Red", "0-255"],
        ["2", "3", "Green", "0-255"],
    ]
    found = joined_titles(grid_of(rows)).rows
    assert [cell.flat for cell in found[0]] == ["Basic mode", "Extended", "Function", "Value"]
    assert [cell.flat for cell in found[1]] == ["1", "1", "Dimmer", "0-255"]


def test_titles_printed_twice_are_two_tables():
    grids = split_sets(
        grid_of([["Channel", "Function"] * 2, ["1", "Red", "3", "Blue"], ["2", "Green", "4", "White"]])
    )
    assert [[[cell.text for cell in row] for row in grid.rows] for grid in grids] == [
        [["Channel", "Function"], ["1", "Red"], ["2", "Green"]],
        [["Channel", "Function"], ["3", "Blue"], ["4", "White"]],
    ]


def test_titles_printed_twice_over_two_rows_are_two_tables():
    """What a narrow column breaks stands in a second row, with nothing below the short titles."""
    upper, lower = ["DMX", "Function", "DMX", "Description"] * 2, ["channel", "", "value", ""] * 2
    rows = [
        ["1", "Pan", "0-255", "", "3", "Red", "0-255", ""],
        ["2", "Tilt", "0-255", "", "4", "Blue", "0-255", ""],
    ]
    grids = split_sets(grid_of([upper, lower, *rows]))
    assert [[row[1].text for row in grid.rows[2:]] for grid in grids] == [["Pan", "Tilt"], ["Red", "Blue"]]


def test_modes_may_stand_in_brackets_behind_the_title_of_their_slots():
    """`Slot (Basic)` beside `Slot (Full)`: the brackets name the modes."""
    document = drafted(
        "Slot (Basic)\tSlot (Full)\tFunction\tValue\n"
        "1\t1\tDimmer\t0-255\n-\t2\tDimmer fine\t0-255\n2\t3\tZoom\t0-255\n"
    )
    assert [(mode.name, mode.footprint) for mode in document.modes] == [("Basic", 2), ("Full", 3)]
