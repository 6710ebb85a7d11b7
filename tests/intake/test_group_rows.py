"""Heads of groups between the rows of a chart say nothing of a slot; a word that goes on with a name does."""

from __future__ import annotations

from intake.drafted import drafted, slots

TITLES = "Function;Value;Meaning;Slot"


def test_groups_are_no_part_of_what_stands_above_them():
    document = drafted(
        "\n".join(
            [
                TITLES,
                "Movement;;;",
                "Pan;0-255;;1",
                "Tilt;0-255;;2",
                "Color;;;",
                "Red;0-255;;3",
                "Blue;0-255;;4",
            ]
        )
    )
    (mode,) = document.modes
    assert slots(mode) == [("pan", [1]), ("tilt", [2]), ("red", [3]), ("blue", [4])]
    assert not document.doubts


def test_a_group_where_values_are_still_to_come_is_not_passed_over():
    """Shutter ends at 9: `Strobe` without values below it may be the rest of it, and that is told."""
    document = drafted("\n".join([TITLES, "Pan;0-255;;1", "Shutter;0-9;Open;2", "Strobe;;;", "Red;0-255;;3"]))
    assert document.doubts
