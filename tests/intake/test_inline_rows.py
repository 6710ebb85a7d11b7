"""Cells that hold several ranges with their words are taken apart, or the row says that they were not."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from intake.drafted import drafted, short
from modebook.intake.chart_rows import ChartRow
from modebook.intake.grid import Place
from modebook.intake.inline_rows import rows_behind, rows_inside

WORDS = ["Off", "Slow", "Fast pulse", "Open", "Gobo shake"]


@given(
    st.lists(st.integers(1, 254), min_size=1, max_size=4, unique=True), st.sampled_from([": ", " = ", " "])
)
def test_ranges_that_go_on_from_0_are_rows(ends, sign):
    """Each range with its words, whatever sign stands between."""
    stops = [*sorted(ends), 255]
    starts = [0, *(stop + 1 for stop in stops[:-1])]
    pairs = [(f"{a}-{b}", word) for a, b, word in zip(starts, stops, WORDS, strict=False)]
    row = ChartRow(Place(), name="Strobe", meaning=", ".join(f"{v}{sign}{w}" for v, w in pairs))
    assert [(one.value, one.meaning) for one in rows_inside(row)[1:]] == pairs


def test_numbers_that_leave_a_gap_are_words():
    """`3 facets, 8 facets` are no values."""
    assert rows_inside(ChartRow(Place(), name="Prism", meaning="0-9: Out, 20-255: In")) == []
    assert rows_inside(ChartRow(Place(), name="Prism", meaning="3 facets, 8 facets")) == []


def test_words_that_go_on_with_ranges_are_those_ranges():
    """A line `0-9 Off 10-255 On` behind its slot."""
    found = rows_behind(ChartRow(Place(), name="Strobe", value="0-9", meaning="Off 10-255 On"))
    assert [(row.name, row.value, row.meaning) for row in found] == [
        ("Strobe", "0-9", "Off"),
        ("", "10-255", "On"),
    ]


def matrix(four: str, six: str) -> str:
    rows = ["Slot | Basic mode | Full mode", "1 | Red | Dimmer", "2 | Green | Red", "3 | Blue | Green"]
    return "\n".join([*rows, f"4 | {four} | {six}"])


def test_ranges_beside_a_name_in_a_matrix_are_its_ranges():
    both = "Strobe (0-10 off, 11-255 slow to fast)"
    document = drafted(matrix("", both))
    assert [(r.from_, r.to, r.meaning) for r in document.modes[1].parameters[3].ranges] == [
        (0, 10, "off"),
        (11, 255, "slow to fast"),
    ]
    assert document.doubts == []


def test_ranges_of_one_of_two_names_in_a_row_are_told():
    """Which of the modes would have them is not for the reader to say: nothing is lost in silence."""
    document = drafted(matrix("Strobe (0-10 off, 11-255 slow to fast)", "Blue"))
    assert any("not read" in doubt.why for doubt in document.doubts)
    assert drafted(matrix("White 0-255", "Blue")).doubts == []


def test_a_line_a_slot_may_hold_its_ranges():
    """A number, a name and ranges in one line are no heading with a condition behind it."""
    mode = drafted(
        "DMX table (5CH mode)\n\n"
        "CH1 Dimmer: 0-255 dark to full\n"
        "CH2 Shutter: 0-15 closed; 16-239 flashes, slow to fast; 240-255 open\n"
        "CH3 Red: 0-255\n"
        "CH4 Green: 0-255\n"
        "CH5 Show: 0-9 no show; 10-89 slow run of colors; 90-169 jump of colors; 170-255 sound control\n"
    )
    assert not mode.doubts
    assert mode.modes[0].name == "5CH"
    assert [short(p)[:2] for p in mode.modes[0].parameters] == [
        ("dimmer", [1]),
        ("shutter", [2]),
        ("red", [3]),
        ("green", [4]),
        ("macro", [5]),
    ]
    assert short(mode.modes[0].parameters[1])[2] == [
        (0, 15, "closed"),
        (16, 239, "flashes, slow to fast"),
        (240, 255, "open"),
    ]


def test_the_signs_of_a_list_are_no_part_of_what_ranges_mean():
    """`- 0-10: off` is the range and its word."""
    document = drafted("Channel 1: Dimmer\nChannel 2: Strobe\n - 0-10: off\n - 11-255: slow to fast\n")
    assert short(document.modes[0].parameters[1])[2] == [(0, 10, "off"), (11, 255, "slow to fast")]


def test_what_points_of_a_slot_do_is_no_condition_on_the_slot():
    """`Tempo: 0 = slow` speaks of the slot's own values."""
    document = drafted(
        "Channel 1: Effect\n0-9 off\n10-255 on\nChannel 2: Effect speed: 0 = slow, 255 = fast\n"
    )
    speed = document.modes[0].parameters[1]
    assert speed.when is None
    assert speed.note == "0 = slow, 255 = fast"
    assert not document.doubts


def test_a_condition_on_a_slot_whose_name_begins_alike_stays():
    """`Effect speed` may need that `Effect` is on."""
    document = drafted(
        "Slot\tFunction\tValue\tMeaning\n1\tDimmer\t0-255\t\n2\tEffect\t0-9\toff\n\t\t10-255\ton\n"
        "3\tEffect speed (only while effect is at 10-255)\t0-255\tslow to fast\n"
    )
    speed = document.modes[0].parameters[2]
    assert [(c.parameter, c.from_, c.to) for c in speed.when or []] == [("effect", 10, 255)]


def test_ranges_in_one_line_may_be_joined_by_words_and_mean_figures():
    """`11 to 255: 1 to 15 Hz` is a range and what it means; `15 Hz` is no range."""
    document = drafted(
        "Channel 1: Dimmer (0 to 255: 0 to 100 %)\nChannel 2: Strobe (0 to 10: off; 11 to 255: 1 to 15 Hz)\n"
        "Channel 3: Fan (0 to 127: auto; 128 to 255: quiet)\n"
    )
    strobe, fan = document.modes[0].parameters[1:]
    assert short(strobe)[2] == [(0, 10, "off"), (11, 255, "1 to 15 Hz")]
    assert short(fan)[2] == [(0, 127, "auto"), (128, 255, "quiet")]
    assert not document.doubts


def test_all_values_of_a_slot_with_what_they_mean_are_one_range_wherever_they_stand():
    """In a column of words as well: the values are no part of what is meant; other single pairs are words."""
    (row,) = rows_inside(ChartRow(Place(), name="Zoom", meaning="0-255: tight to wide"))
    assert (row.name, row.value, row.meaning) == ("Zoom", "0-255", "tight to wide")
    assert rows_inside(ChartRow(Place(), name="Zoom", meaning="10-40: tight to wide")) == []
    assert rows_inside(ChartRow(Place(), name="Zoom", meaning="see 0-255: tight to wide")) == []


def test_the_words_that_all_ranges_of_a_slot_begin_with_are_its_name():
    """Neither range is called otherwise; where nothing is shared, no name is printed."""
    document = drafted(
        "Channel  Value    Function\n1        000-255  Dimmer 0-100 %\n2        000-099  Wobble off\n"
        "         100-255  Wobble slow to fast\n3        000-255  Zoom\n"
    )
    (mode,) = document.modes
    assert mode.parameters[1].label == "Wobble"
    assert [d.why for d in document.doubts] == ["the name is not in the list of synonyms"]


def test_values_before_what_they_mean_in_row_after_row_are_those_of_the_slot():
    """Ranges that leave a gap are not taken apart: they may be something else."""
    chart = "Slot;Name;Details\n1;Zoom;0-255: tight to wide\n2;Shutter;000-099: closed\n;;100-255: open\n"
    (mode,) = drafted(chart).modes
    assert short(mode.parameters[1]) == ("shutter", [2], [(0, 99, "closed"), (100, 255, "open")])
    (mode,) = drafted(chart.replace("100-255", "120-255")).modes
    assert mode.parameters[1].ranges == []


@pytest.mark.parametrize("text", ["green to magenta", "Grün – Magenta"])
def test_a_text_that_says_which_end_is_which_stays_though_it_names_the_parameter(text: str):
    chart = f"Slot;Name;Value;Details\n1;Zoom;0-255;tight to wide\n2;Tint;0-255;{text}\n"
    (mode,) = drafted(chart).modes
    assert short(mode.parameters[1]) == ("tint", [2], [(0, 255, text)])
