"""Looks into an XLSX or ODS before it is read: a small file may unpack to more than the memory holds.

A sheet reader makes room for every cell between the first and the last one in use, so one cell far out is
enough; and a zip may hold a thousand times its size. Both are measured here, on a stream.
"""

from __future__ import annotations

import io
import re
import zipfile
import zlib
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from xml.parsers import expat

from modebook.shelf.errors import ShelfError
from modebook.shelf.sheet_marks import Marks, xlsx_marks
from modebook.shelf.sheet_xml import CHUNK, Handler, cell_place, parse
from modebook.shelf.table import MOST_CELLS, MOST_COLUMNS, MOST_ROWS

MOST_UNPACKED_BYTES = 200_000_000
MOST_TEXT_BYTES = 256_000_000
"""Text of a sheet's cells: a long text may be stored once and stand in many."""
MOST_MEMBERS = 2_000

_SHEET = re.compile(r"xl/worksheets/[^/]+\.xml", re.IGNORECASE)

Merge = tuple[int, int, int]
"""Column, first row and last row of a cell that spans several rows, all from 0."""


@dataclass
class _Extent:
    """What a stream of cells takes."""

    rows: int = 0
    columns: int = 0
    filled: int = 0
    longest: int = 0
    merges: list[Merge] = field(default_factory=list)
    marks: Marks = field(default_factory=dict)
    name: str = ""


@dataclass(frozen=True, slots=True)
class Looked:
    """What was seen in a sheet file: its kind (`xlsx` or `ods`), the marks of its sheets by their names, and
    for an ODS the merged cells of each sheet."""

    kind: str
    marks: dict[str, Marks]
    merges: list[list[Merge]] = field(default_factory=list)


def check_sheets(content: bytes, path: str) -> Looked:
    """Look into a sheet file.

    ShelfError where it is neither, is damaged, or would take more room than MOST_UNPACKED_BYTES or than the
    table limits.
    """
    with _damage_told(path), zipfile.ZipFile(io.BytesIO(content)) as archive:
        members = archive.infolist()
        declared = sum(member.file_size for member in members)
        if declared > MOST_UNPACKED_BYTES or len(members) > MOST_MEMBERS:
            raise ShelfError(
                path,
                f"unpacks to {declared / 1e6:.0f} MB in {len(members)} parts, "
                f"and {MOST_UNPACKED_BYTES / 1e6:.0f} MB is the most that is read",
                remedy="save the one sheet as CSV",
            )
        if any(member.flag_bits & 1 for member in members):
            raise ShelfError(path, "is locked with a password", remedy="save it without one")
        names = {member.filename for member in members}
        if "xl/workbook.xml" in {name.lower() for name in names}:
            _check_xlsx(archive, path)
            return Looked("xlsx", xlsx_marks(archive, lambda file, name, to: parse(file, name, path, to)))
        if "content.xml" in names:
            sheets = _check_ods(archive, path)
            return Looked("ods", {one.name: one.marks for one in sheets}, [one.merges for one in sheets])
    raise ShelfError(path, "is a zip file, yet no sheet", remedy="give a CSV, XLSX or ODS file")


@contextmanager
def _damage_told(path: str) -> Iterator[None]:
    try:
        yield
    except (zipfile.BadZipFile, zlib.error, expat.ExpatError, EOFError, NotImplementedError) as error:
        raise ShelfError(path, f"is damaged: {error}", remedy="save it again, or as CSV") from error


def _check_xlsx(archive: zipfile.ZipFile, path: str) -> None:
    strings = _Extent()
    for member in archive.infolist():
        name = member.filename
        if name.lower() == "xl/sharedstrings.xml":
            parse(archive, name, path, _SharedStrings(strings))
        elif not _SHEET.fullmatch(name):
            _drain(archive, name)
    for member in archive.infolist():
        if _SHEET.fullmatch(member.filename):
            extent = _Extent(longest=strings.longest)
            parse(archive, member.filename, path, _XlsxCells(extent))
            _refuse_beyond(extent, path)


def _check_ods(archive: zipfile.ZipFile, path: str) -> list[_Extent]:
    sheets: list[_Extent] = []
    for member in archive.infolist():
        if member.filename != "content.xml":
            _drain(archive, member.filename)
    parse(archive, "content.xml", path, _OdsCells(sheets))
    for extent in sheets:
        _refuse_beyond(extent, path)
    return sheets


def _refuse_beyond(extent: _Extent, path: str) -> None:
    if (
        extent.rows > MOST_ROWS
        or extent.columns > MOST_COLUMNS
        or extent.rows * extent.columns > MOST_CELLS
        or extent.filled * extent.longest > MOST_TEXT_BYTES
    ):
        raise ShelfError(
            path,
            f"a sheet reaches to row {extent.rows}, column {extent.columns}, with {extent.filled} cells: "
            f"more than {MOST_ROWS} rows, {MOST_COLUMNS} columns, {MOST_CELLS} cells or "
            f"{MOST_TEXT_BYTES / 1e6:.0f} MB of text",
            remedy="delete what stands far out, or save the table alone as CSV",
        )


class _SharedStrings(Handler):
    def __init__(self, extent: _Extent) -> None:
        self.extent = extent
        self.length = 0

    def start(self, name: str, attributes: dict[str, str]) -> None:
        if name == "si":
            self.length = 0

    def end(self, name: str) -> None:
        if name == "si":
            self.extent.longest = max(self.extent.longest, self.length)

    def text(self, data: str) -> None:
        self.length += len(data)


class _XlsxCells(Handler):
    def __init__(self, extent: _Extent) -> None:
        self.extent = extent
        self.row = 0
        self.column = 0

    def start(self, name: str, attributes: dict[str, str]) -> None:
        if name == "c":
            place = cell_place(attributes.get("r", ""))
            if place:
                self.row, self.column = place[0] + 1, place[1] + 1
            else:
                self.column += 1
            extent = self.extent
            extent.filled += 1
            extent.rows = max(extent.rows, self.row)
            extent.columns = max(extent.columns, self.column)
        elif name == "row":
            told = attributes.get("r", "")
            self.row = int(told) if told.isascii() and told.isdigit() else self.row + 1
            self.column = 0


class _OdsCells(Handler):
    def __init__(self, sheets: list[_Extent]) -> None:
        self.sheets = sheets
        self.row = self.column = self.repeats = self.cell_repeats = self.length = 0
        self.row_used = self.in_cell = self.filled = False

    def start(self, name: str, attributes: dict[str, str]) -> None:
        if name in ("table-cell", "covered-table-cell"):
            self.cell_repeats = _count(attributes.get("number-columns-repeated"))
            spanned = _count(attributes.get("number-rows-spanned"))
            if spanned > 1 and self.sheets:
                self.sheets[-1].merges.append((self.column, self.row, self.row + spanned - 1))
            self.filled = "value-type" in attributes or "formula" in attributes
            told = attributes.get("value-type")
            if self.sheets and told == "percentage" and self.row < MOST_ROWS:
                repeats = min(self.cell_repeats, MOST_COLUMNS)
                self.sheets[-1].marks |= {(self.row, self.column + n): "%" for n in range(repeats)}
            self.in_cell = True
            self.length = len(attributes.get("string-value", ""))
        elif name == "table-row":
            self.repeats = _count(attributes.get("number-rows-repeated"))
            self.column = 0
            self.row_used = False
        elif name == "table":
            self.sheets.append(_Extent(name=attributes.get("name", "")))
            self.row = 0
        elif name == "s" and self.in_cell:
            self.length += _count(attributes.get("c"))

    def end(self, name: str) -> None:
        if not self.sheets:
            return
        extent = self.sheets[-1]
        if name in ("table-cell", "covered-table-cell"):
            self.column += self.cell_repeats
            self.in_cell = False
            if self.filled:
                extent.filled += self.cell_repeats * self.repeats
                extent.longest = max(extent.longest, self.length)
                extent.columns = max(extent.columns, self.column)
                self.row_used = True
        elif name == "table-row":
            self.row += self.repeats
            if self.row_used:
                extent.rows = max(extent.rows, self.row)

    def text(self, data: str) -> None:
        if self.in_cell and data.strip():
            self.filled = True
            self.length += len(data)


def _drain(archive: zipfile.ZipFile, name: str) -> None:
    """Unpack a member and drop it: a size that was declared too small is found out by its checksum."""
    with archive.open(name) as stream:
        while stream.read(CHUNK):
            pass


def _count(told: str | None) -> int:
    """A repeat count; 1 where none is told."""
    return int(told) if told and told.isascii() and told.isdigit() and len(told) < 10 else 1
