"""What follows a chart in a manual is no part of it: other tables, numbered headings, words of a new page."""

from __future__ import annotations

import pytest

from intake.drafted import drafted, slots
from modebook.intake.closing import is_other, is_section, page_tail
from modebook.intake.draft import draft_bytes
from modebook.intake.grid import Line, grid_of

ROWS = ["1 Dimmer 0-255", "2 Red 0-255", "3 Green 0-255", "4 Blue 0-255", "5 Strobe 0-255", "6 Zoom 0-255"]


@pytest.mark.parametrize(
    ("titles", "other"),
    [(["Message", "Meaning"], True), (["Channel", "Function"], False), (["Oslo", "Meaning"], False)],
)
def test_titles_of_other_tables(titles, other):
    """Messages are no chart; a title that nobody knows says nothing."""
    assert is_other(grid_of([titles, ["1", "2"]])) is other


@pytest.mark.parametrize(
    ("text", "section"),
    [
        ("6. Technical data", True),
        ("7. Technical data", False),
        ("5. Focus", False),
        ("6 Technical data", False),
        ("6. Data 2", False),
    ],
)
def test_a_numbered_heading_below_six_slots(text, section):
    """Number 6 was a slot already; 7 would be the next one; a parameter's name is a row's."""
    assert is_section(text, [Line(row) for row in ROWS]) is section


def test_a_section_below_pasted_rows_is_no_slot():
    """The chapter after the chart does not stand on slot 6 a second time."""
    document = drafted("\n".join(["Mode 1", *ROWS, "6. Technical data", "Weight four kilograms"]))
    (mode,) = document.modes
    assert [taken for _, taken in slots(mode)] == [[1], [2], [3], [4], [5], [6]]
    assert not document.doubts


@pytest.mark.parametrize(
    ("lines", "tail"),
    [
        (["0-9 Off", "10-255 On", "Messages"], 1),
        (["0-9 Off", "10-255 On, send for", "three seconds"], 0),
        (["0-9 Off", "10-255 On,", "Wait"], 0),
        (["0-9 Off", "10-255 On", "7 Zoom"], 0),
    ],
)
def test_words_atop_a_new_page(lines, tail):
    """A heading begins anew; the rest of a sentence, and a row, do not."""
    assert page_tail([Line(text) for text in lines], 2) == tail


def test_without_a_page_turned_nothing_is_cut():
    assert page_tail([Line("Messages")], 0) == 0


BLOCKS = "3. DMX table\n\nChannel 1 - Dimmer\n0-255: 0-100%\nChannel 2 - Red\n0-255: 0-100%\n"
MORE = "Channel 3 - Strobe\n0-9: off\n10-255: slow to fast\nChannel 4 - Blue\n0-255: 0-100%\n\n"


def test_the_section_behind_the_one_of_the_chart_ends_it():
    """The chart stands in section 3: section 4 has its number and a slot's, and is the manual's."""
    document = drafted(BLOCKS + MORE + "4. Cleaning\nUse a soft cloth.")
    assert [used for _, used in slots(document.modes[0])] == [[1], [2], [3], [4]]
    assert document.doubts == []


def test_a_numbered_line_that_may_be_the_next_slot_is_kept():
    """Nothing was on slot 3 yet, so `3. Cleaning` may be of it: it is not dropped without a word."""
    document = drafted("2. DMX table\n\n1. Dimmer 0-255\n2. Red 0-255\n3. Cleaning\n0-255 Slow to fast\n")
    assert [3] in [used for _, used in slots(document.modes[0])]


def test_a_heading_of_a_page_below_a_full_slot_ends_it():
    """What a page calls a heading is no word of the last slot; above a slot's values it ends nothing."""
    page = (
        "<html><body><h2>DMX</h2><h3>Channel 1: Dimmer</h3><p>0-255 dark to full</p>"
        "<h3>Channel 2: Strobe</h3><h4>Values</h4><p>0-9 off</p><p>10-255 slow to fast</p>"
        "<h3>Accessories</h3><p>Bag, clamp</p></body></html>"
    )
    document = draft_bytes(page.encode(), name="chart.html").document
    assert slots(document.modes[0]) == [("dimmer", [1]), ("strobe", [2])]
    assert [r.meaning for r in document.modes[0].parameters[1].ranges] == ["off", "slow to fast"]
    assert not document.doubts


def _between(above: str, below: str) -> str:
    rows = "".join(
        f"<tr><td>{slot}</td><td>{name}</td><td>0-255</td><td>0-100 %</td></tr>"
        for slot, name in enumerate(("Dimmer", "Red", "Green", "Blue", "White", "Amber"), 1)
    )
    head = "<tr><th>Slot</th><th>Function</th><th>Value</th><th>Effect</th></tr>"
    return f"<html><body><p>{above}</p><table>{head}{rows}</table><p>{below}</p></body></html>"


def test_numbered_headings_without_a_point_end_a_table_as_well():
    """Chapter 6 is above the table, so `7 Transport` is the next one; after 3 it could be a row."""
    told = draft_bytes(_between("6 Control by a desk", "7 Transport").encode(), name="a.html").document
    assert told.doubts == []
    untold = draft_bytes(_between("3 Control by a desk", "7 Transport").encode(), name="a.html").document
    assert [d.why for d in untold.doubts] == ["this text inside the chart was not understood"]
