"""The one reader of tables shows each row with its line, whatever delimiter and clutter it comes with."""

from __future__ import annotations

import csv
import io
from contextlib import suppress
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from modebook.shelf.errors import ShelfError
from modebook.shelf.table import MOST_BYTES, fold_title
from modebook.shelf.tables import read_table, table_from_bytes

KNOWN = frozenset({"unit", "fixture", "mode", "universe", "address", "throw m", "dmx universe"})


def table(text: str | bytes):
    content = text.encode() if isinstance(text, str) else text
    return table_from_bytes(content, "patch.csv", KNOWN)


# Text that a title row cannot be mistaken for, with everything that CSV must quote.
CELL = st.text(st.sampled_from("abc 12.,;\t\"'\né€/"), max_size=8).map(str.strip)
ROWS = st.lists(st.lists(CELL, min_size=3, max_size=3), min_size=1, max_size=8)


@settings(deadline=None)
@given(ROWS, st.sampled_from([",", ";", "\t"]), st.sampled_from(["utf-8", "utf-8-sig", "utf-16"]))
def test_what_a_csv_writer_wrote_is_read_cell_by_cell(rows, delimiter, encoding):
    """Any cells, delimiter and encoding: the standard library's writer is the other side."""
    out = io.StringIO(newline="")
    writer = csv.writer(out, delimiter=delimiter, quoting=csv.QUOTE_ALL)
    writer.writerow(["Unit", "Fixture", "Mode"])
    writer.writerows(rows)
    read = table(out.getvalue().encode(encoding))
    assert [list(row.cells) for row in read.rows] == rows
    assert read.delimiter == delimiter


@settings(deadline=None)
@given(ROWS, st.sampled_from([",", ";", "\t"]))
def test_a_row_says_the_line_at_which_it_begins(rows, delimiter):
    """Quoted line breaks count: each row's line is found by counting breaks in what was written before."""
    out = io.StringIO(newline="")
    writer = csv.writer(out, delimiter=delimiter, quoting=csv.QUOTE_ALL, lineterminator="\n")
    writer.writerow(["Unit", "Fixture", "Mode"])
    lines = []
    for row in rows:
        lines.append(out.getvalue().count("\n") + 1)
        writer.writerow(row)
    assert [row.number for row in table(out.getvalue()).rows] == lines


def test_commas_inside_cells_do_not_make_a_semicolon_file_a_comma_file():
    """Decimal commas outnumber the semicolons, and the titles still decide."""
    read = table("Unit;Fixture;Throw (m)\n1;a, b, c, d;1,5\n2;e, f, g;2,5\n")
    assert read.delimiter == ";"
    assert read.rows[1].cells == ("2", "e, f, g", "2,5")


def test_windows_1252_is_read_and_said_so():
    """A file that is not UTF-8 is read as Windows-1252, with a note that names the line."""
    read = table("Unit,Fixture\n1,Scène\n".encode("cp1252"))
    assert read.rows[0].cells == ("1", "Scène")
    assert read.encoding == "cp1252"
    assert "line 2" in read.notes[0]
    assert "Windows-1252" in read.notes[0]


def test_a_utf8_file_needs_no_note():
    """UTF-8 is what is expected."""
    assert table("Unit,Fixture\n1,Scène\n").notes == ()


def test_titles_stand_below_a_heading_and_blank_rows():
    """A show's name and a date above the titles are passed over; rows keep their line."""
    read = table("The Hollow Tide,,\nPatch of Monday,,\n,,\nUnit,Fixture,Mode\n1,Par,Wide\n")
    assert read.titles == ("Unit", "Fixture", "Mode")
    assert read.title_row == 4
    assert [(row.number, row.cells) for row in read.rows] == [(5, ("1", "Par", "Wide"))]


def test_two_rows_of_titles_are_read_as_one():
    """A group title over two columns, and titles that reach over both rows."""
    read = table("Unit,Fixture,DMX,\n,,Universe,Address\n1,Par,2,101\n")
    assert [fold_title(title) for title in read.titles] == ["unit", "fixture", "dmx universe", "address"]
    assert [row.cells for row in read.rows] == [("1", "Par", "2", "101")]


def test_titles_repeated_on_a_new_page_are_no_row():
    """A printed list repeats its titles."""
    read = table("Unit,Fixture\n1,Par\nUNIT,fixture\n2,Par\n")
    assert [row.cells[0] for row in read.rows] == ["1", "2"]


def test_short_and_long_rows_take_the_width_of_the_titles():
    """Missing cells are empty; cells beyond the last title are dropped."""
    read = table("Unit,Fixture,Mode\n1\n2,Par,Wide,extra,extra\n")
    assert [row.cells for row in read.rows] == [("1", "", ""), ("2", "Par", "Wide")]


@pytest.mark.parametrize("ending", ["\n", "\r\n", "\r"])
def test_any_line_ending_counts_as_one_line(ending):
    """Old and new systems end lines differently."""
    read = table(ending.join(["Unit,Fixture", "1,Par", "", "2,Par", ""]))
    assert [row.number for row in read.rows if not row.blank] == [2, 4]


@pytest.mark.parametrize(
    ("title", "folded"),
    [
        ("Throw (m)", "throw m"),
        (" START_ADDRESS ", "start address"),
        ("Unit #", "unit #"),
        ("#", "#"),
        ("Unité", "unite"),
        ("DMX\nAddress", "dmx address"),
    ],
)
def test_a_title_is_folded(title, folded):
    """Case, accents, punctuation and line breaks do not count."""
    assert fold_title(title) == folded


@pytest.mark.parametrize(
    ("content", "message"),
    [
        (b"", "p.csv: the file is empty; give a table with a row of titles"),
        (b"  \n\n", "p.csv: the file is empty; give a table with a row of titles"),
        (b"%PDF-1.7", "p.csv: is a PDF; give a CSV, XLSX or ODS file"),
        (
            b"Unit,Fixture\n1,\x81\n",
            "p.csv, line 2: is neither UTF-8 nor Windows-1252 text; save it again as CSV in UTF-8",
        ),
        (
            b"\xff\xfeU",
            "p.csv: its first bytes promise UTF-16, and byte 2 is not; save it again as CSV in UTF-8",
        ),
        (
            b"Unit,Fixture\n1,\0\n",
            "p.csv: holds null bytes, so it is not plain text; save it as CSV in UTF-8, or as XLSX",
        ),
        (
            b'Unit,Fixture\n1,Par\n2,"Par\n3,Par\n',
            "p.csv, line 3: a quoted cell begins here and never ends; close it with a quote mark",
        ),
        (
            b'Unit,Fixture\n1,"Par" 5\n',
            "p.csv, line 2: a quote mark inside a quoted cell stands alone; "
            "double it, or take the quote marks off",
        ),
        (
            b"Lamp,Number\n1,Par\n",
            "p.csv: no row of titles was found; its first row says 'Lamp', 'Number'; "
            "put a title over each column, such as unit, fixture",
        ),
        (
            b"Unit,Fixture\n1," + b"x" * 140_000 + b"\n",
            "p.csv, line 2: a cell of more than 131072 characters; look for a quote mark too many",
        ),
        (
            b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1 old",
            "p.csv: is locked with a password, or of the old XLS kind; save it as XLSX, ODS or CSV, unlocked",
        ),
    ],
)
def test_a_file_that_cannot_be_read_gets_one_clear_line(content, message):
    """What is wrong, where, and what would be right."""
    with pytest.raises(ShelfError) as told:
        table_from_bytes(content, "p.csv", KNOWN, such_as="unit, fixture")
    assert str(told.value) == message


def test_a_missing_file_and_one_too_large_are_told(tmp_path: Path):
    """Neither is read."""
    with pytest.raises(ShelfError, match=r"no such file or directory; name a file that can be read$"):
        read_table(tmp_path / "none.csv", KNOWN)
    large = tmp_path / "large.csv"
    with large.open("wb") as file:
        file.truncate(MOST_BYTES + 1)
    with pytest.raises(
        ShelfError, match=r"is 32 MB, and 32 MB is the most that is read; keep only the table$"
    ):
        read_table(large, KNOWN)
    with pytest.raises(ShelfError, match=r"is a directory"):
        read_table(tmp_path, KNOWN)


def test_rows_beyond_the_limit_are_refused():
    """A table of more than 100,000 rows is no patch."""
    with pytest.raises(ShelfError, match=r"p.csv, line 100001: more than 100000 rows"):
        table_from_bytes(b"unit,fixture\n" * 100_002, "p.csv", KNOWN)


@settings(deadline=None)
@given(st.binary(max_size=200))
def test_no_bytes_raise_anything_but_a_shelf_error(content):
    """Whatever a file holds, there is a table or one line."""
    with suppress(ShelfError):
        assert table_from_bytes(content, "p.csv", KNOWN).titles


def test_a_row_of_units_below_the_titles_is_no_second_row_of_titles():
    """A fixture called Mode, under a column that has no known title."""
    read = table("Unit,Fixture,Lens\n1,Par,Mode\n2,Par,Wide\n")
    assert [row.number for row in read.rows] == [2, 3]
