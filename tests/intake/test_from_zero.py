"""Charts that count their slots from 0: one more each, and told; other columns from 0 are left alone."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from intake.drafted import drafted, slots, whys
from modebook.intake.from_zero import FROM_ZERO, from_zero
from modebook.intake.grid import grid_of

BODY = """\
{title}\tFunction\tValue\tDescription
0\tDimmer\t0-255\t
1\tRed\t0-255\t
2\tGreen\t0-9\tOff
\t\t10-255\tOn
"""


@pytest.mark.parametrize(("title", "told"), [("Channel", True), ("Slot", True), ("Offset", False)])
def test_slots_from_0_are_one_more(title, told):
    """0, 1, 2 are slots 1, 2, 3; a title that says offset needs no doubt, any other has one for the mode."""
    document = drafted(BODY.format(title=title))
    assert slots(document.modes[0]) == [("dimmer", [1]), ("red", [2]), ("green", [3])]
    assert whys(document, "/modes/0") == ([FROM_ZERO] if told else [])


def test_running_lines_from_0():
    """Below titles with slots first, lines that begin with 0, 1, 2 are slots 1, 2, 3."""
    document = drafted("Channel Function Value\n0 Dimmer 0-255\n1 Red 0-255\n2 Green 0-255\n3 Blue 0-255\n")
    assert [one for _, one in slots(document.modes[0])] == [[1], [2], [3], [4]]
    assert FROM_ZERO in [doubt.why for doubt in document.doubts]


@pytest.mark.parametrize("title", ["DMX", "Value", "DMX value"])
def test_values_from_0_are_no_slots(title):
    """0-9, 10-19, 20-255 under a title that may mean slots or values are values."""
    rows = [["Channel", "Function", title], ["1", "Shutter", "0-9"], ["", "", "10-19"], ["", "", "20-255"]]
    grid, told = from_zero(grid_of(rows))
    assert not told
    assert [[cell.text for cell in row] for row in grid.rows] == rows


@given(st.integers(1, 30), st.integers(3, 40))
def test_slots_from_1_or_later_stay(first, count):
    """A column that begins at 1 or later is as it was."""
    rows = [["Channel", "Function"], *[[str(first + n), "Dimmer"] for n in range(count)]]
    grid, told = from_zero(grid_of(rows))
    assert not told
    assert [row[0].text for row in grid.rows] == [row[0] for row in rows]
