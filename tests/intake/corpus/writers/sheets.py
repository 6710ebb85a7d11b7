"""Writes charts as spreadsheets: XLSX and ODS with merged cells, CSV with a comma, semicolon or tab."""

from __future__ import annotations

import csv
import datetime
import io
import re
import zipfile

from intake.corpus.grids import Element, Grid, Heading, Para, Table

Sheet = tuple[str, list[Element]]


def _value(text: str) -> str | int:
    return int(text) if text.isascii() and text.isdigit() and (text == "0" or text[0] != "0") else text


def xlsx(sheets: list[Sheet]) -> bytes:
    """A workbook; numbers are numbers, as people type them."""
    from openpyxl import Workbook
    from openpyxl.styles import Font

    book = Workbook()
    book.remove(book.worksheets[0])
    book.properties.created = book.properties.modified = datetime.datetime(2026, 1, 2)
    for title, elements in sheets:
        sheet = book.create_sheet(title)
        at = 1
        for element in elements:
            if isinstance(element, Heading | Para):
                sheet.cell(at, 1, element.text).font = Font(bold=isinstance(element, Heading))
                at += 2
            elif isinstance(element, Table):
                at = _xlsx_table(sheet, element.grid, at) + 1
    out = io.BytesIO()
    book.save(out)
    return _timeless(out.getvalue())


def _timeless(data: bytes) -> bytes:
    """The same archive without the times of its making: the same chart is the same bytes."""
    out = io.BytesIO()
    with (
        zipfile.ZipFile(io.BytesIO(data)) as source,
        zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as target,
    ):
        for name in source.namelist():
            content = source.read(name)
            if name == "docProps/core.xml":
                content = re.sub(rb"(<dcterms:modified[^>]*>)[^<]*", rb"\g<1>2026-01-02T00:00:00Z", content)
            target.writestr(zipfile.ZipInfo(name, (2026, 1, 2, 0, 0, 0)), content)
    return out.getvalue()


def _xlsx_table(sheet: object, grid: Grid, at: int) -> int:
    for line in [*grid.head, *grid.body]:
        for x, cell in enumerate(line, 1):
            if cell is None:
                continue
            if cell.text:
                sheet.cell(at, x, _value(cell.text))  # type: ignore[attr-defined]
            if cell.rows > 1 or cell.cols > 1:
                sheet.merge_cells(  # type: ignore[attr-defined]
                    start_row=at, start_column=x, end_row=at + cell.rows - 1, end_column=x + cell.cols - 1
                )
        at += 1
    return at


def ods(sheets: list[Sheet]) -> bytes:
    """An OpenDocument spreadsheet."""
    from odf.opendocument import OpenDocumentSpreadsheet
    from odf.table import CoveredTableCell, TableCell, TableRow
    from odf.table import Table as OdfTable
    from odf.text import P as OdfText

    def written(text: str, **reach: int) -> object:
        value = _value(text)
        kind = (
            {"valuetype": "float", "value": str(value)} if isinstance(value, int) else {"valuetype": "string"}
        )
        cell = TableCell(**(kind if text else {}), **{key: str(n) for key, n in reach.items() if n > 1})
        if text:
            cell.addElement(OdfText(text=text))
        return cell

    doc = OpenDocumentSpreadsheet()
    for title, elements in sheets:
        table = OdfTable(name=title)
        for element in elements:
            if isinstance(element, Heading | Para):
                row = TableRow()
                row.addElement(written(element.text))
                table.addElement(row)
            elif isinstance(element, Table):
                for line in [*element.grid.head, *element.grid.body]:
                    row = TableRow()
                    for c in line:
                        if c is None:
                            row.addElement(CoveredTableCell())
                        else:
                            row.addElement(
                                written(c.text, numberrowsspanned=c.rows, numbercolumnsspanned=c.cols)
                            )
                    table.addElement(row)
            table.addElement(TableRow())
        doc.spreadsheet.addElement(table)
    out = io.BytesIO()
    doc.write(out)
    return out.getvalue()


def csv_file(
    elements: list[Element], delimiter: str = ",", encoding: str = "utf-8", newline: str = "\r\n"
) -> bytes:
    """One sheet as text; merged cells leave blanks."""
    out = io.StringIO()
    writer = csv.writer(out, delimiter=delimiter, lineterminator=newline)
    for element in elements:
        if isinstance(element, Heading | Para):
            writer.writerow([element.text])
        elif isinstance(element, Table):
            for line in [*element.grid.head, *element.grid.body]:
                writer.writerow(["" if cell is None else cell.text for cell in line])
        writer.writerow([])
    return out.getvalue().encode(encoding)
