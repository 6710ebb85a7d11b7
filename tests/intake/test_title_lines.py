"""Column titles in one running line: their roles, and the modes that stand before them."""

from __future__ import annotations

import pytest

from intake.drafted import drafted, slots
from modebook.intake.grid import Line
from modebook.intake.title_lines import mode_title, modes_in_titles, named_columns, title_line

ROWS = ["1 1 Dimmer 0-255", "- 2 Dimmer fine 0-255", "2 3 Red 0-255", "3 4 Strobe 0-9 Off", "10-255 On"]


def lines(*texts: str) -> list[Line]:
    return [Line(text) for text in texts]


def test_a_line_of_titles_gives_their_roles():
    assert title_line("Channel Function Value Description") == ["slot", "function", "value", "meaning"]
    assert title_line("The fixture has a DMX channel for the dimmer") is None


def test_footprints_title_columns_of_slots():
    assert modes_in_titles("4CH 6CH Function Value") == ["4CH", "6CH"]
    assert modes_in_titles("Channel Function Value") == []


def test_names_before_titles_are_modes_where_the_rows_bear_them_out():
    """Each row begins with a slot or a dash for either mode."""
    found = named_columns(lines("Basic Extended Function Value Description", *ROWS))
    assert found is not None
    assert (found.line, found.modes) == (0, ["Basic", "Extended"])
    document = drafted("\n".join(["Basic Extended Function Value Description", *ROWS]))
    assert [(mode.name, slots(mode)) for mode in document.modes] == [
        ("Basic", [("dimmer", [1]), ("red", [2]), ("strobe", [3])]),
        ("Extended", [("dimmer", [1, 2]), ("red", [3]), ("strobe", [4])]),
    ]
    assert document.doubts == []


@pytest.mark.parametrize(
    "texts",
    [
        ["Light output Function Value", "1 Dimmer 0-255", "2 Red 0-255", "3 Green 0-255"],
        ["Basic Extended Function Value", "1 Dimmer 0-255", "2 2 Red 0-255", "3 Green 0-255"],
        ["Basic Basic Function Value", *ROWS],
    ],
)
def test_rows_of_one_column_bear_no_modes_out(texts):
    """Words before the titles that the rows do not follow, or that say one thing twice, name no modes."""
    assert named_columns(lines(*texts)) is None


def test_a_modes_title_may_be_made_of_words_that_title_columns():
    """A footprint and nothing for values: `Effect mode` is a mode, and `Effect mode value` are titles."""
    head = mode_title("Effect mode (4 channels)")
    assert head is not None
    assert (head.name, head.footprint) == ("Effect", 4)
    assert mode_title("Mode Channel Function Value") is None
