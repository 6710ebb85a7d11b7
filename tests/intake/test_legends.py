"""Legends: values that are printed for a name are of the slots so called in each mode, and of no others."""

from __future__ import annotations

import pytest

from intake.drafted import drafted

MATRIX = [
    "Slot;4-slot;6-slot",
    "1;Dimmer;Dimmer",
    "2;Red;Dimmer fine",
    "3;Green;Strobe",
    "4;Blue;Red",
    "5;;Green",
    "6;;Blue",
]
LEGEND = ["Strobe;0-9;Open", ";10-255;Slow to fast"]


@pytest.mark.parametrize(
    "between", [["", "Parameter;Value;Meaning"], ["", "Legend"], ["Parameter;Value;Meaning"], []]
)
def test_a_legend_goes_by_names_and_not_by_rows(between):
    """Strobe stands on slot 3 of the second mode alone; slot 3 of the first is green and has no ranges."""
    document = drafted("\n".join([*MATRIX, *between, *LEGEND]))
    small, large = document.modes
    assert [p.parameter for p in small.parameters] == ["dimmer", "red", "green", "blue"]
    assert not any(p.ranges for p in small.parameters)
    strobe = next(p for p in large.parameters if p.parameter == "strobe")
    assert [(r.from_, r.to, r.meaning) for r in strobe.ranges] == [(0, 9, "Open"), (10, 255, "Slow to fast")]
    assert not any(p.ranges for p in large.parameters if p is not strobe)
    assert not document.doubts


def test_one_row_of_a_legend_may_be_of_several_names():
    document = drafted("\n".join([*MATRIX, "", "Dimmer, Red, Green, Blue;0-255;0-100 %", *LEGEND]))
    for mode in document.modes:
        for p in mode.parameters:
            if p.parameter != "strobe":
                assert (p.span.from_, p.span.to, p.span.unit) == (0, 100, "%")


CHART = """\
Slot\tFunction\tValue\tDescription
1\tDimmer\t0-255\t0 to 100 %
2\tColor wheel\t0-255\tSee the list of colors
3\tFan\t0-255\tSlow to fast

"""


def test_a_list_in_two_halves_is_of_the_slot_that_its_heading_gives():
    """`See the list` is no meaning once the list is read; both halves are one list."""
    halves = "Value\tFilm\tValue\tFilm\n0-63\tOpen\t128-191\tRust\n64-127\tMoss\t192-255\tSand\n"
    document = drafted(f"{CHART}List of colors (slot 2)\n\n{halves}")
    wheel = document.modes[0].parameters[1]
    assert [(r.from_, r.to, r.meaning) for r in wheel.ranges] == [
        (0, 63, "Open"),
        (64, 127, "Moss"),
        (128, 191, "Rust"),
        (192, 255, "Sand"),
    ]
    assert not document.doubts
