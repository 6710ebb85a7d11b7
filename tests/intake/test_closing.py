"""What follows a chart in a manual is no part of it: other tables, numbered headings, words of a new page."""

from __future__ import annotations

import pytest

from intake.drafted import drafted, slots
from modebook.intake.closing import is_other, is_section, page_tail
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
