"""XLSX and ODS: values with their kind and row; what would fill the memory is refused unread."""

from __future__ import annotations

import datetime
import io
import warnings
import zipfile
from contextlib import suppress

import openpyxl
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from modebook.shelf.errors import ShelfError
from modebook.shelf.tables import table_from_bytes

KNOWN = frozenset({"unit", "fixture", "mode", "universe", "address", "position"})


def xlsx(rows, change=None, name="Patch") -> bytes:
    book = openpyxl.Workbook()
    sheet = book.active
    sheet.title = name
    for row in rows:
        sheet.append(row)
    if change is not None:
        change(book, sheet)
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


ODS = """<?xml version="1.0" encoding="UTF-8"?>
<office:document-content xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0"
 xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0"
 xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0" office:version="1.3">
<office:body><office:spreadsheet>{}</office:spreadsheet></office:body></office:document-content>"""


def ods(*tables: str, content: str | None = None) -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("mimetype", "application/vnd.oasis.opendocument.spreadsheet", zipfile.ZIP_STORED)
        archive.writestr(
            "META-INF/manifest.xml",
            '<manifest:manifest xmlns:manifest="urn:oasis:names:tc:opendocument:xmlns:manifest:1.0"/>',
        )
        archive.writestr("content.xml", content or ODS.format("".join(tables)))
    return out.getvalue()


def ods_table(rows, name="Patch") -> str:
    return f'<table:table table:name="{name}">{"".join(rows)}</table:table>'


def ods_row(*cells: str, more: str = "") -> str:
    return f"<table:table-row{more}>{''.join(cells)}</table:table-row>"


def ods_text(text: str, more: str = "") -> str:
    return f'<table:table-cell office:value-type="string"{more}><text:p>{text}</text:p></table:table-cell>'


def ods_number(value: float) -> str:
    return f'<table:table-cell office:value-type="float" office:value="{value}"/>'


def read(content: bytes, **more):
    return table_from_bytes(content, "patch.xlsx", KNOWN, **more)


@settings(deadline=None, max_examples=30)
@given(
    st.lists(
        st.tuples(
            st.integers(0, 10**9) | st.text("abc12/. é", min_size=1, max_size=6).map(lambda t: f"x{t}x"),
            st.floats(-1e6, 1e6).map(lambda v: round(v, 3)),
        ),
        min_size=1,
        max_size=6,
    )
)
def test_what_another_library_wrote_is_read_back(rows):
    """Texts as typed, whole numbers without decimals, other numbers as Python writes them."""
    table = read(xlsx([["Unit", "Address"], *rows]))
    for (first, second), row in zip(rows, table.rows, strict=True):
        assert row.cells[0] == str(first)
        assert row.kind(0) == ("text" if isinstance(first, str) else "number")
        assert float(row.cells[1]) == second
        assert row.kind(1) == "number"


def test_a_row_keeps_its_number_in_the_sheet():
    """Blank rows and a heading above the titles count."""
    table = read(xlsx([["The Hollow Tide"], [], ["Unit", "Fixture"], [], ["1", "Par"]]))
    assert table.sheet == "Patch"
    assert table.title_row == 3
    assert [row.number for row in table.rows if not row.blank] == [5]


def test_a_number_a_date_and_a_truth_are_told_apart_from_text():
    """2.1 typed as a number, 2/10 that became a date, and 2.10 typed as text."""
    when = datetime.date(2026, 10, 2)
    table = read(xlsx([["Unit", "Address"], [1, 2.1], [2, when], [3, "2.10"], [True, None]]))
    assert [(row.cells[1], row.kind(1)) for row in table.rows] == [
        ("2.1", "number"),
        ("2026-10-02", "date"),
        ("2.10", "text"),
        ("", "text"),
    ]
    assert (table.rows[3].cells[0], table.rows[3].kind(0)) == ("TRUE", "truth")


def test_a_cell_merged_over_rows_holds_in_each_of_them():
    """A position written once over three units; a heading merged over columns stays in its first cell."""

    def merge(_book, sheet):
        sheet.merge_cells("B2:B4")
        sheet.merge_cells("A5:B5")

    rows = [["Unit", "Position"], [1, "Truss"], [2, None], [3, None], ["Floor units", None], [4, "Floor"]]
    table = read(xlsx(rows, merge))
    assert [row.cells[1] for row in table.rows] == ["Truss", "Truss", "Truss", "", "Floor"]


def test_titles_merged_over_two_rows_are_found():
    """Unit and Fixture reach over both rows, Universe and Address stand under a group title."""

    def merge(_book, sheet):
        for cells in ("A1:A2", "B1:B2", "C1:D1"):
            sheet.merge_cells(cells)

    table = read(
        xlsx(
            [["Unit", "Fixture", "Where", None], [None, None, "Universe", "Address"], [1, "Par", 2, 101]],
            merge,
        )
    )
    assert table.titles == ("Unit", "Fixture", "Universe", "Address")
    assert [row.cells for row in table.rows] == [("1", "Par", "2", "101")]


def test_hidden_sheets_and_sheets_without_titles_are_passed_over_and_others_are_named():
    """The first visible sheet with titles is read; a note names the next that would fit."""

    def more(book, sheet):
        sheet.sheet_state = "hidden"
        book.create_sheet("Notes").append(["nothing", "here"])
        for name in ("Stage", "Floor"):
            other = book.create_sheet(name)
            other.append(["Unit", "Fixture"])
            other.append([name, "Par"])

    content = xlsx([["Unit", "Fixture"], [0, "Hidden"]], more)
    table = read(content)
    assert table.sheet == "Stage"
    assert table.notes == ("read the sheet 'Stage'; 'Floor' would fit too",)
    assert read(content, sheet="Floor").rows[0].cells == ("Floor", "Par")
    with pytest.raises(ShelfError, match=r"has no visible sheet 'Roof'; it has 'Notes', 'Stage', 'Floor'$"):
        read(content, sheet="Roof")


def test_an_ods_is_read_with_its_kinds_merges_and_repeats():
    """Written by hand from ODF 1.3: repeated rows and cells, a cell over two rows, a date, a number."""
    date = '<table:table-cell office:value-type="date" office:date-value="2026-10-02"/>'
    two = ods_text("Truss", ' table:number-rows-spanned="2" table:number-columns-spanned="1"')
    table = read(
        ods(
            ods_table(
                [
                    ods_row("<table:table-cell/>", more=' table:number-rows-repeated="2"'),
                    ods_row(ods_text("Unit"), ods_text("Address"), ods_text("Position")),
                    ods_row(ods_number(1), ods_number(2.1), two),
                    ods_row(ods_number(2), date, "<table:covered-table-cell/>"),
                    ods_row(
                        '<table:table-cell table:number-columns-repeated="1000"/>',
                        more=' table:number-rows-repeated="1048570"',
                    ),
                ]
            )
        )
    )
    assert table.title_row == 3
    rows = [row for row in table.rows if not row.blank]
    assert [(row.number, row.cells) for row in rows] == [
        (4, ("1", "2.1", "Truss")),
        (5, ("2", "2026-10-02", "Truss")),
    ]
    assert [row.kind(1) for row in rows] == ["number", "date"]


def refused(content: bytes) -> str:
    with pytest.raises(ShelfError) as told:
        read(content)
    assert "\n" not in str(told.value)
    return str(told.value)


def replaced(content: bytes, member: str, data: bytes) -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(content)) as old, zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as new:
        for name in old.namelist():
            new.writestr(name, data if name == member else old.read(name))
    return out.getvalue()


SHEET = "xl/worksheets/sheet1.xml"


def test_a_zip_that_declares_too_much_is_refused_unread():
    """300 MB of zeros in a small file."""
    content = replaced(xlsx([["Unit", "Fixture"]]), SHEET, bytes(300_000_000))
    assert len(content) < 1_000_000
    assert "unpacks to 300 MB" in refused(content)


def test_a_zip_that_lies_about_its_size_is_found_out():
    """The declared size is made small by hand: what unpacks no longer fits its checksum."""
    content = replaced(xlsx([["Unit", "Fixture"]]), SHEET, b" " * 50_000_000)
    size = (50_000_000).to_bytes(4, "little")
    assert content.count(size) == 2
    assert "is damaged" in refused(content.replace(size, (1000).to_bytes(4, "little")))


def test_a_part_beside_the_sheet_that_lies_about_its_size_is_found_out():
    """Nothing of a file is unpacked unmeasured, styles included."""
    content = replaced(xlsx([["Unit", "Fixture"]]), "xl/styles.xml", b" " * 40_000_000)
    size = (40_000_000).to_bytes(4, "little")
    assert content.count(size) == 2
    assert "is damaged" in refused(content.replace(size, (1000).to_bytes(4, "little")))


def test_many_rows_of_many_columns_are_refused():
    """Each is within its limit; together they are 50 million cells."""
    row = ods_row(ods_number(1), '<table:table-cell table:number-columns-repeated="997"/>', ods_number(1))
    rows = [row, ods_row(ods_number(1), more=' table:number-rows-repeated="49999"')]
    assert "a sheet reaches to row 50000, column 999" in refused(ods(ods_table(rows)))


def test_one_cell_far_out_is_refused():
    """A reader makes room for all cells in between: 17 billion."""
    data = (
        b'<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>'
        b'<row r="1"><c r="A1"><v>1</v></c></row><row r="1048576"><c r="XFD1048576"><v>1</v></c></row>'
        b"</sheetData></worksheet>"
    )
    message = refused(replaced(xlsx([["Unit", "Fixture"]]), SHEET, data))
    assert "a sheet reaches to row 1048576, column 16384" in message


def test_an_ods_of_repeated_cells_is_refused():
    """Two tags that stand for a billion cells."""
    row = ods_row(
        ods_text("x", ' table:number-columns-repeated="1000"'), more=' table:number-rows-repeated="1000000"'
    )
    assert "a sheet reaches to row 1000000, column 1000" in refused(ods(ods_table([row])))


def test_one_long_text_in_many_cells_is_refused():
    """A text that is stored once and stands in ten thousand cells: 320 MB."""
    rows = b"".join(b'<row r="%d"><c r="A%d" t="s"><v>0</v></c></row>' % (n, n) for n in range(1, 10_001))
    space = b'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"'
    sheet = b"<worksheet %s><sheetData>%s</sheetData></worksheet>" % (space, rows)
    strings = b"<sst %s><si><t>%s</t></si></sst>" % (space, b"x" * 32_000)
    out = io.BytesIO(replaced(xlsx([["Unit", "Fixture"]]), SHEET, sheet))
    with zipfile.ZipFile(out, "a") as archive, warnings.catch_warnings():
        warnings.simplefilter("ignore")
        archive.writestr("xl/sharedStrings.xml", strings)
    assert "with 10000 cells" in refused(out.getvalue())


def test_entities_are_refused():
    """No sheet has a document type; one that has can unpack to any size."""
    bomb = '<!DOCTYPE a [<!ENTITY b "bbbbbbbb">]>' + ODS.format("&b;").partition("?>")[2]
    assert "declares a document type" in refused(ods(content=bomb))


@pytest.mark.parametrize("cut", [10, 500, 3000])
def test_a_torn_file_is_told(cut):
    """A download that broke off."""
    content = xlsx([["Unit", "Fixture"], *([[1, "Par"]] * 50)])
    assert "patch.xlsx: is damaged: " in refused(content[:cut])


def test_a_zip_that_is_no_sheet_is_told():
    """Any other zip."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as archive:
        archive.writestr("a.txt", "a")
    assert refused(out.getvalue()) == "patch.xlsx: is a zip file, yet no sheet; give a CSV, XLSX or ODS file"


@given(st.integers(0, 4000), st.integers(0, 255))
@settings(deadline=None, max_examples=60)
def test_a_changed_byte_never_raises_anything_else(place, value):
    """Whatever a byte of a workbook is turned into, there is a table or one line."""
    content = bytearray(WORKBOOK)
    content[place % len(content)] = value
    with suppress(ShelfError):
        assert read(bytes(content)).rows is not None


WORKBOOK = xlsx([["Unit", "Fixture"], [1, "Par"], [2, "Par"]])
