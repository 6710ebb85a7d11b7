"""Titles of a sheet printed once count for the blocks below that blank rows set apart."""

from __future__ import annotations

from intake.drafted import slots
from modebook.intake.draft import draft_bytes

TITLES = "Mode;Slot;Name;From;To;Remark\n"
BLANK = ";;;;;\n"


def _read(text: str) -> dict[str, list[tuple[str, list[int]]]]:
    return {mode.name: slots(mode) for mode in draft_bytes(text.encode()).document.modes}


def test_a_blank_row_before_each_mode_leaves_the_mode_column_its_title():
    """Plain with 2 rows and Rich with 3: the second block has no titles of its own."""
    text = (
        TITLES
        + "Plain;1;Dimmer;0;255;closed to open\n;2;Zoom;0;255;narrow to wide\n"
        + BLANK
        + "Rich;1;Dimmer;0;255;closed to open\n;2;Zoom;0;255;narrow to wide\n;3;Focus;0;255;near to far\n"
    )
    plain = [("dimmer", [1]), ("zoom", [2])]
    assert _read(text) == {"Plain": plain, "Rich": [*plain, ("focus", [3])]}


def test_a_blank_row_in_the_midst_of_a_mode_parts_nothing():
    """Blank rows set movement, light and color apart; slots go on from 2 to 3, and from 4 to 5."""
    text = (
        "Slot,Name,Value,Remark\n1,Pan,0-255,left to right\n2,Tilt,0-255,down to up\n,,,\n"
        "3,Dimmer,0-255,closed to open\n4,Zoom,0-255,narrow to wide\n,,,\n5,Red,0-255,dark to full\n"
    )
    (found,) = _read(text).values()
    assert found == [("pan", [1]), ("tilt", [2]), ("dimmer", [3]), ("zoom", [4]), ("red", [5])]


def test_the_name_of_a_mode_between_blocks_keeps_the_titles_above_it():
    """From and to are numbers like any: without their titles, the second block would not tell them."""
    text = (
        "Slot,Name,From,To,Remark\n1,Dimmer,0,255,closed to open\n,,,,\n"
        "Mode 2,,,,\n1,Dimmer,0,255,closed to open\n2,Shutter,0,127,closed\n,,128,255,open\n"
    )
    assert list(_read(text).values()) == [[("dimmer", [1])], [("dimmer", [1]), ("shutter", [2])]]


def test_a_list_of_parts_below_a_chart_goes_on_with_nothing():
    text = (
        "Slot,Name,Value,Remark\n1,Dimmer,0-255,closed to open\n2,Zoom,0-255,narrow to wide\n,,,\n"
        "3,Screw,,\n4,Knob,,\n"
    )
    (found,) = _read(text).values()
    assert found == [("dimmer", [1]), ("zoom", [2])]
