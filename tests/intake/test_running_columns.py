"""Columns of figures in pasted lines: what their titles name is told apart, and nothing is taken twice."""

from __future__ import annotations

from intake.drafted import drafted, named, short, whys
from modebook.intake.running_columns import Columns, columns_of, in_one_form


def test_from_and_to_are_a_range():
    """Behind slots and name, and on lines that go on with the values."""
    document = drafted(
        "Channel Function From To Description\n1 Dimmer 0 255 0-100 %\n2 Strobe 0 9 Off\n"
        "10 127 1 Hz - 20 Hz\n128 255 Random\n3 Red 0 255\n4 Green 0 255\n"
    )
    assert short(named(document.modes[0], "strobe")) == (
        "strobe",
        [2],
        [(0, 9, "Off"), (10, 127, "1 Hz - 20 Hz"), (128, 255, "Random")],
    )
    assert document.modes[0].footprint == 4
    assert not document.doubts


def test_two_numbers_that_do_not_go_on_are_no_range():
    """`3 4 Reserved` under From and To, behind values that reached the top, are slots."""
    columns = Columns(("slot", "function", "from", "to"), 1)
    assert in_one_form("3 4 Reserved", columns, 255, first=False) == ("3 4 Reserved", "")
    assert in_one_form("10 99 Random", columns, 9, first=False) == ("10-99 Random", "")


def test_percent_and_hex_say_once_more_what_values_say():
    """Only under their titles, and only where they agree."""
    percent, hexes = Columns(("slot", "value", "percent", "function")), Columns(("slot", "value", "hex"))
    assert in_one_form("5 000-009 0-3% No strobe", percent, None, first=False)[0] == "5 000-009 No strobe"
    assert in_one_form("10-255 0A-FF Open", hexes, 9, first=False)[0] == "10-255 Open"
    assert in_one_form("0-127 0-100% Dimmer", percent, None, first=False)[0] == "0-127 0-100% Dimmer"
    assert in_one_form("1 0-255 0-100% Dimmer", Columns(), None, first=False)[0] == "1 0-255 0-100% Dimmer"


def test_a_default_at_the_end_is_one_where_all_rows_have_it():
    """`Gobo 1` ends with a number as well: without a default in the other rows it is a meaning."""
    roles = ("slot", "function", "value", "meaning", "default")
    rows = ["1 Dimmer 0-255 0-100% 0", "2 Gobo wheel 0-9 Open 0", "10-255 Gobo 1", "3 Red 0-255 Level 128"]
    assert columns_of(roles, 1, rows).defaults
    assert not columns_of(roles, 1, ["1 Dimmer 0-255 Level", "2 Gobo wheel 0-255 Gobo 1"]).defaults
    document = drafted("Channel Function Value Description Default\n" + "\n".join(rows) + "\n")
    assert [parameter.default for parameter in document.modes[0].parameters] == [0, 0, 128]
    assert short(named(document.modes[0], "gobo-wheel"))[2] == [(0, 9, "Open"), (10, 255, "Gobo 1")]


def test_titles_over_the_first_mode_are_those_of_all():
    """Modes in a column of their own come out as lines of their own when a table is pasted."""
    rows = "1 000-255 0-100% Red\n2 000-255 0-100% Green\n"
    more = "3 000-009 0-3% No strobe\n010-255 4-100% Strobe slow to fast\n"
    document = drafted(f"Mode Channel DMX value Percent Function\n2CH\n{rows}3CH\n{rows}{more}")
    assert [(mode.name, mode.footprint) for mode in document.modes] == [("2CH", 2), ("3CH", 3)]
    assert [p.parameter for p in document.modes[1].parameters] == ["red", "green", "strobe"]
    assert not whys(document)


def test_a_row_that_names_a_mode_of_the_fan_is_no_heading():
    """`150-199 Fan mode silent` goes on with the values above it."""
    document = drafted(
        "CH Function Value Description\n1 Dimmer 0-255\n2 Control 0-149 No function\n"
        "150-199 Fan mode silent\n200-255 Fan mode high\n"
    )
    assert len(document.modes) == 1
    assert [r.to for r in named(document.modes[0], "control").ranges] == [149, 199, 255]


def test_a_word_that_begins_as_a_unit_does_is_none():
    """`111-160 Gradual change` are values; `90-180 Grad` are degrees."""
    document = drafted("CH Function Value Description\n1 Macro 0-110 Jump change\n111-255 Gradual change\n")
    assert [r.meaning for r in document.modes[0].parameters[0].ranges] == ["Jump change", "Gradual change"]
