"""What a review is drawn from: rows tied to pointers, doubts to rows, boxes and pictures of a PDF."""

from __future__ import annotations

import io
from pathlib import Path

import pytest

from modebook.intake.draft import draft, draft_text
from modebook.intake.page_pictures import LONGEST_PX, page_pictures
from modebook.intake.report import report_pages

CHART = """\
Mode 1: Basic (3 channels)
Slot  Function  Value    Meaning
1     Dimmer    0-255
2     Strobe    0-9      Open
                8-255    Slow to fast
3     Red       0-255
"""
DEMO = Path(__file__).parents[2] / "catalog" / "charts" / "snorrigand-quindle-30.pdf"


def test_rows_are_tied_to_pointers_and_doubts_to_rows() -> None:
    """The row that overlaps the one above carries the doubt; the heading went into no parameter."""
    read = draft_text(CHART)
    (page,) = report_pages(read)
    assert [(row.pointer, str(row.place), len(row.doubts)) for row in page.rows] == [
        ("/modes/0/parameters/0", "row 3", 0),
        ("/modes/0/parameters/1", "row 4", 0),
        ("/modes/0/parameters/1/ranges/1", "row 5", 1),
        ("/modes/0/parameters/2", "row 6", 0),
    ]
    assert "Mode 1: Basic (3 channels)" in [one.text for one in page.unread]


def test_a_settled_doubt_is_not_marked_any_more() -> None:
    """Only what is open asks for a look."""
    from modebook.intake.settling import accepted

    read = draft_text(CHART)
    read.document = accepted(read.document, 0, "A", "2026-05-01")
    (page,) = report_pages(read)
    assert [row.doubts for row in page.rows] == [()] * 4


def test_a_doubt_about_a_row_that_was_left_out_stands_at_that_row() -> None:
    """A row of which nothing was made has no pointer of its own; its place in the source tells it."""
    read = draft_text("Slot  Function  Value\n1     Dimmer    0-255\n2     Strobe    9-0\n")
    (page,) = report_pages(read)
    found = {index for row in page.rows for index in row.doubts}
    found |= {index for one in page.unread for index in one.doubts}
    assert found == set(range(len(read.document.doubts)))
    assert found


def test_boxes_lie_on_their_rows_of_the_demo_chart() -> None:
    """The chart's rows are 17 points high, the first below the titles 79 points from the top (drawn so)."""
    read = draft(DEMO, pages="2")
    (page,) = report_pages(read)
    assert (page.leaf.number, page.leaf.width, page.leaf.height) == (2, 595.0, 842.0)
    boxes = [row.place.box for row in page.rows]
    tops = [box[1] for box in boxes if box is not None]
    assert len(tops) == len(boxes) == 8
    assert tops == pytest.approx([95 + 17 * number for number in range(8)], abs=1)


def test_a_page_has_a_picture_in_its_proportions() -> None:
    """One PNG a page that was asked for, as wide to high as the page is."""
    from PIL import Image

    (picture,) = page_pictures(DEMO, [3])
    assert picture.number == 3
    assert picture.box == (0, 0, 595, 842)
    with Image.open(io.BytesIO(picture.png)) as image:
        assert image.size == (picture.width_px, picture.height_px)
        assert image.width / image.height == pytest.approx(595 / 842, rel=0.01)
        assert len(image.convert("RGB").getcolors(1 << 24) or ()) > 2, "something is drawn on it"


def test_a_page_as_large_as_a_wall_gives_a_picture_of_bounded_size(tmp_path: Path) -> None:
    """A page may say that it is five meters wide; the picture stays within its bound."""
    import fpdf

    document = fpdf.FPDF(unit="pt", format=(14_000, 9_000))
    document.add_page()
    document.set_font("helvetica", size=200)
    document.cell(text="Wide")
    path = tmp_path / "wide.pdf"
    document.output(str(path))
    (picture,) = page_pictures(path, [1])
    assert max(picture.width_px, picture.height_px) <= LONGEST_PX + 1
