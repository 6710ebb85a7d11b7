"""Reads XLSX and ODS: values only, typed, each row with its number in the sheet."""

from __future__ import annotations

import datetime
import io
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from modebook.shelf.errors import ShelfError
from modebook.shelf.sheet_bounds import Merge, check_sheets
from modebook.shelf.sheet_marks import Marks
from modebook.shelf.table import Kind


@dataclass(frozen=True, slots=True)
class SheetCells:
    """One visible sheet: text and kind of every cell, from row 1 and column A on."""

    name: str
    cells: list[list[str]]
    kinds: list[list[Kind]]


def read_sheets(content: bytes, path: str) -> list[SheetCells]:
    """All visible sheets of a workbook, in its order. ShelfError where it is damaged, locked or too large.

    A cell merged over several rows holds its value in each of them, since that is what the sheet shows;
    one merged over columns keeps it in the first.
    """
    looked = check_sheets(content, path)
    import python_calamine

    try:
        with python_calamine.CalamineWorkbook.from_filelike(io.BytesIO(content)) as book:
            found: list[SheetCells] = []
            for index, about in enumerate(book.sheets_metadata):
                if about.typ != python_calamine.SheetTypeEnum.WorkSheet:
                    continue
                if about.visible != python_calamine.SheetVisibleEnum.Visible:
                    continue
                sheet = book.get_sheet_by_index(index)
                rows = sheet.to_python(skip_empty_area=False)
                merges = looked.merges[index] if index < len(looked.merges) else []
                if looked.kind == "xlsx":
                    merges = [(left, top, down) for (top, left), (down, _) in sheet.merged_cell_ranges or []]
                _show(rows, looked.marks.get(about.name, {}))
                _fill_down(rows, merges)
                found.append(_cells(about.name, rows))
            return found
    except python_calamine.PasswordError as error:
        raise ShelfError(path, "is locked with a password", remedy="save it without one") from error
    except (python_calamine.CalamineError, OSError, ValueError) as error:
        raise ShelfError(
            path, f"cannot be read as a sheet: {error}", remedy="save it again, or as CSV"
        ) from error


def _show(rows: list[list[Any]], marks: Marks) -> None:
    """Write what the sheet shows where that is not the value: 0.5 as 50%, an error, a formula alone."""
    for (row, column), mark in marks.items():
        if row >= len(rows) or column >= len(rows[row]):
            continue
        value = rows[row][column]
        if mark != "%":
            rows[row][column] = mark
        elif isinstance(value, int | float) and not isinstance(value, bool):
            rows[row][column] = f"{round(100.0 * value, 9):g}%"


def _fill_down(rows: list[list[Any]], merges: Sequence[Merge]) -> None:
    for column, first, last in merges:
        if first >= len(rows) or column >= len(rows[first]):
            continue
        value = rows[first][column]
        for row in rows[first + 1 : last + 1]:
            if column < len(row) and row[column] in ("", None):
                row[column] = value


def _cells(name: str, rows: Sequence[Sequence[Any]]) -> SheetCells:
    texts: list[list[str]] = []
    kinds: list[list[Kind]] = []
    for row in rows:
        told = [_cell(value) for value in row]
        texts.append([text for text, _ in told])
        kinds.append([kind for _, kind in told])
    return SheetCells(name, texts, kinds)


def _cell(value: Any) -> tuple[str, Kind]:
    if isinstance(value, str):
        return value.strip(), "text"
    if value is None:
        return "", "text"
    if isinstance(value, bool):
        return ("TRUE" if value else "FALSE"), "truth"
    if isinstance(value, int | float):
        if isinstance(value, float) and value.is_integer() and abs(value) < 1e15:
            value = int(value)
        return str(value), "number"
    if isinstance(value, datetime.datetime) and value.time() == datetime.time():
        value = value.date()
    return (value.isoformat() if hasattr(value, "isoformat") else str(value)), "date"
