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
