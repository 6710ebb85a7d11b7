"""What a cell of a slot column says, and what the other columns of its row say."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from intake.drafted import drafted, named, short, slots
from modebook.intake.chart_rows import read_slot_cell, without_byte
from modebook.intake.draft import draft_bytes

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


def test_a_name_may_be_merged_over_the_values_of_its_heading_row():
    """Slots and a name in a row of their own, whose cell begins in the column of values; a turn has ends."""
    page = """<table><tr><th>Channel</th><th>DMX value</th><th>Function</th></tr>
    <tr><td>1</td><td colspan="2">Pan</td></tr><tr><td></td><td>0-255</td><td>Rotation by 540°</td></tr>
    <tr><td>2</td><td colspan="2">3-facet prism</td></tr><tr><td></td><td>0-127</td><td>Off</td></tr>
    <tr><td></td><td>128-255</td><td>On</td></tr>
    <tr><td>3</td><td colspan="2">Color wheel</td></tr><tr><td></td><td>0-31</td><td>White / open</td></tr>
    <tr><td></td><td>32-255</td><td>Red</td></tr></table>"""
    document = draft_bytes(page.encode(), name="chart.html").document
    (mode,) = document.modes
    assert slots(mode) == [("pan", [1]), ("prism", [2]), ("color-wheel", [3])]
    assert [one.does for one in named(mode, "pan").ranges] == [None]
    assert [one.does for one in named(mode, "color-wheel").ranges] == ["open", None]
    assert [doubt.pointer for doubt in document.doubts] == ["/modes/0/parameters/0/span"]


def test_a_column_of_units_may_hold_words_that_are_none():
    """`Off` in the column of physical values is what the values do; `%` alone says nothing."""
    chart = "Slot,Parameter,Range,Unit range\n1,Dimmer,0-255,%\n2,Smoothing,0-127,Off\n,,128-255,On\n"
    document = draft_bytes(chart.encode(), name="chart.csv").document
    assert short(named(document.modes[0], "smoothing"))[2] == [(0, 127, "Off"), (128, 255, "On")]
    assert not document.doubts


def test_pairs_beside_slots_are_the_slots_of_another_mode():
    """`1-2`, `3-4`, `5` count as slots do; the ranges are printed in a column of their own."""
    chart = (
        "Channel 8 bit,Channel 16 bit,Function,DMX value,Remark\n1,1-2,Pan,0-255,-270° to +270°\n"
        "2,3-4,Dimmer,0-255,0-100%\n3,5,Iris,0-255,0-100%\n4,6,Strobe,0-9,Off\n,,,10-255,1-20 Hz\n"
    )
    document = draft_bytes(chart.encode(), name="chart.csv").document
    assert [mode.name for mode in document.modes] == ["8 bit", "16 bit"]
    assert slots(document.modes[0])[:3] == [("pan", [1]), ("dimmer", [2]), ("iris", [3])]
    assert slots(document.modes[1]) == [
        ("pan", [1, 2]),
        ("dimmer", [3, 4]),
        ("iris", [5]),
        ("strobe", [6]),
    ]
    assert not document.doubts


def test_blank_lines_among_values_say_which_words_stand_beside_none():
    """Values and words in two cells, a line each; a remark between them is told and pairs nothing."""
    words = "Control<br>Reserved<br><i>Hold these for 3 s</i><br>Fan: auto<br>Reset"
    page = f"""<table><tr><th>Channel</th><th>Function</th><th>Range</th></tr>
    <tr><td>1</td><td>Dimmer</td><td>0-255</td></tr>
    <tr><td>2</td><td>{words}</td><td><br>0-9<br><br>10-99<br>100-255</td></tr></table>"""
    document = draft_bytes(page.encode(), name="chart.html").document
    control = named(document.modes[0], "control")
    assert short(control)[2] == [(0, 9, "Reserved"), (10, 99, "Fan: auto"), (100, 255, "Reset")]
    assert [doubt.why for doubt in document.doubts] == [
        "a line without values stands between the others: Hold these for 3 s"
    ]
