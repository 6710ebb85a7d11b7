"""Headings `1. Dimmer` over values are slots; numbered sections of a manual are none."""

from __future__ import annotations

from intake.drafted import drafted, slots
from modebook.intake.grid import Leaf, Line, Source, grid_of
from modebook.intake.headings import SlotHead
from modebook.intake.numbered_heads import at_numbered_heads, numbered_heads


def source(*items) -> Source:
    return Source("a", "html", [Leaf(None, list(items))])


VALUES = grid_of([["Value", "Effect"], ["0-255", "0-100 %"]])
NAMES = ("Dimmer", "Red", "Green")


def test_headings_with_values_between_are_slots():
    """Three that count from 1 on, a table below each."""
    items = [one for n, name in enumerate(NAMES, 1) for one in (Line(f"{n}. {name}"), VALUES)]
    assert [head.slots for head in numbered_heads(source(*items)).values()] == [(1,), (2,), (3,)]


def test_sections_of_a_manual_are_none():
    """Sentences stand between them."""
    items = [one for n, name in enumerate(NAMES, 1) for one in (Line(f"{n}. {name}"), Line("Mind the heat."))]
    assert numbered_heads(source(*items)) == {}


def test_a_gap_ends_them():
    """1, 2, 4: two are too few."""
    items = [one for n, name in zip((1, 2, 4), NAMES, strict=True) for one in (Line(f"{n}. {name}"), VALUES)]
    assert numbered_heads(source(*items)) == {}


def test_a_table_that_ran_on_is_parted_at_them():
    """A row of nothing but the next heading."""
    grid = grid_of([["0-255", "0-100 %"], ["2. Red", ""], ["0-255", ""]])
    found = at_numbered_heads(grid, {"2. Red": SlotHead((2,), "Red")})
    assert [type(one).__name__ for one in found] == ["Grid", "Line", "Grid"]


def test_a_chart_of_such_blocks():
    """Pasted text: each heading's values are its slot's."""
    document = drafted(
        "1. Dimmer\n0-255  0-100 %\n\n2. Shutter\n0-9  Closed\n10-255  Open\n\n3. Red\n0-255  0-100 %\n"
    )
    assert slots(document.modes[0]) == [("dimmer", [1]), ("shutter", [2]), ("red", [3])]
    assert not document.doubts
