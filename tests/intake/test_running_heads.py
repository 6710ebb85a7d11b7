"""Heads, feet and page numbers are taken off pages; rows of charts at a page's edge stay."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

from modebook.intake.readers.running_heads import without_running_heads


def line(text: str, top: float) -> list[dict[str, Any]]:
    words = []
    left = 50.0
    for word in text.split():
        words.append({"text": word, "x0": left, "x1": left + 6 * len(word), "top": top, "bottom": top + 10})
        left += 6 * len(word) + 4
    return words


def read(*pages: list[tuple[str, float]]) -> list[str]:
    """What is left of each page."""
    made = [
        (
            SimpleNamespace(height=800, width=600, page_number=n),
            [w for text, top in page for w in line(text, top)],
        )
        for n, page in enumerate(pages, start=7)
    ]
    return [" ".join(word["text"] for word in words) for _, words in without_running_heads(made)]


def test_a_foot_with_another_number_on_each_page_goes():
    """Its number never runs on behind the last range."""
    pages = [
        [(f"{n} Strobe 0-255", 300), (f"User guide revision C {page}", 770)] for n, page in ((1, 7), (2, 8))
    ]
    assert read(*pages) == ["1 Strobe 0-255", "2 Strobe 0-255"]


def test_a_page_number_alone_goes_from_a_single_page():
    assert read([("1 Strobe 0-255", 300), ("- 34 -", 770)]) == ["1 Strobe 0-255"]


def test_a_foot_that_ends_in_the_word_for_a_page_goes_whatever_its_number():
    """Pages that were taken out of a manual keep its numbers."""
    assert read([("1 Strobe 0-255", 300), ("Kestrel 4 user guide Page 112", 770)]) == ["1 Strobe 0-255"]
    assert read([("1 Strobe 0-255", 300), ("12 Zoom 0-255", 770)]) == ["1 Strobe 0-255 12 Zoom 0-255"]


def test_a_modes_title_and_a_tables_titles_stay_on_every_page():
    """They repeat at the same height, and are the chart."""
    top = [("Mode 2 Extended", 40), ("Channel Function Value", 60)]
    assert read([*top, ("1 Red", 300)], [*top, ("9 Zoom", 300)]) == [
        "Mode 2 Extended Channel Function Value 1 Red",
        "Mode 2 Extended Channel Function Value 9 Zoom",
    ]


def test_the_last_row_of_a_table_is_no_foot():
    """A row with other words than its neighbor page's stays, however low it stands."""
    assert read([("1 Red", 300), ("12 Zoom 0-255", 770)], [("13 Iris", 300), ("24 Frost 0-255", 770)]) == [
        "1 Red 12 Zoom 0-255",
        "13 Iris 24 Frost 0-255",
    ]
