"""Which byte a slot is may stand in its cell or in a column of its own."""

from __future__ import annotations

import pytest

from intake.drafted import drafted, slots
from modebook.intake.chart_rows import read_slot_cell

TITLES = "Channel\tByte\tFunction\tMin\tMax\n"


@pytest.mark.parametrize(
    "text", ["1 MSB\n2 LSB", "1 (MSB) / 2 (LSB)", "MSB 1 LSB 2", "2 fine, 1 coarse", "LSB: 2 / MSB: 1"]
)
def test_both_bytes_in_a_cell(text):
    """The coarse slot comes first, however they stand."""
    assert read_slot_cell(text).slots == (1, 2)


@pytest.mark.parametrize("text", ["1 MSB 2 MSB", "1 MSB 2 LSB 3", "0 MSB 1 LSB", "pan 1 MSB 2 LSB"])
def test_other_cells_are_no_two_bytes(text):
    assert read_slot_cell(text).slots != (1, 2)


def test_a_column_says_the_byte():
    """Its title may be any; names are the same for both bytes."""
    rows = "1\tMSB\tPan\t0\t255\n2\tLSB\tPan\t0\t255\n3\tMSB\tTilt\t0\t255\n"
    rows += "4\tLSB\tTilt\t0\t255\n5\t\tZoom\t0\t255\n"
    document = drafted(TITLES + rows)
    assert slots(document.modes[0]) == [("pan", [1, 2]), ("tilt", [3, 4]), ("zoom", [5])]
    assert not document.doubts
