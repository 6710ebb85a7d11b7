"""What a cell of a slot column says."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from intake.drafted import drafted, slots
from modebook.intake.chart_rows import read_slot_cell, without_byte

MARKS = ["(MSB)", "(lsb)", "coarse", "[fine]", " (Hi)", "LSB", "(Fein)"]


@given(st.integers(1, 512), st.sampled_from(MARKS))
def test_a_byte_beside_the_number_does_not_hide_it(number, mark):
    assert read_slot_cell(f"{number} {mark}").slots == (number,)
    assert without_byte(f"{number} {mark}") == (str(number), mark.strip(" ()[]"))


@given(st.integers(1, 509), st.integers(1, 3), st.sampled_from(["-", " – ", " to ", "..."]))
def test_first_to_last_is_every_slot_between(first, more, dash):
    assert read_slot_cell(f"{first}{dash}{first + more}").slots == tuple(range(first, first + more + 1))


@pytest.mark.parametrize("text", ["0", "MSB", "1 (strobe)", "3-1", "1 MSB 2", "600-700"])
def test_what_is_no_slot_stays_text(text):
    assert read_slot_cell(text).kind == "text"


@pytest.mark.parametrize("text", ["-", "–", "*", "n/a"])
def test_signs_for_no_slot(text):
    assert read_slot_cell(text).kind == "absent"


def test_bytes_marked_in_the_slot_column_pair_up():
    """`1 (MSB)` and `2 (LSB)` beside one name are one parameter of 16 bits."""
    rows = [
        "1 (MSB)|Pan|0-255",
        "2 (LSB)|Pan|0-255",
        "3 (MSB)|Tilt|0-255",
        "4 (LSB)|Tilt|0-255",
        "5|Red|0-255",
    ]
    document = drafted("\n".join(["Ch|Function|Value", *rows]))
    assert [slots(mode) for mode in document.modes] == [[("pan", [1, 2]), ("tilt", [3, 4]), ("red", [5])]]
    assert document.doubts == []
