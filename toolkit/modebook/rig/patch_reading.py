"""A patch out of a table: rows become units, and what cannot be read is told row by row."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable
from pathlib import Path
from typing import get_args

from modebook.documents.address import Address
from modebook.documents.patch import Patch, RowFault, Unit
from modebook.documents.rig import Reach
from modebook.rig.notation import Misread, Written, read_addresses
from modebook.rig.titles import FEET, KNOWN, SUCH_AS, TITLES, Column, Columns, columns_of
from modebook.shelf.errors import ShelfError
from modebook.shelf.numbers import number
from modebook.shelf.table import Kind, Row, Table, fold_title
from modebook.shelf.tables import read_table, table_from_bytes

NEEDED: tuple[Column, ...] = ("unit", "fixture", "mode", "address")
METERS_PER_FOOT = 0.3048
LONGEST_THROW_M = 10_000.0

_TOTAL = re.compile(r"\b(?:sub)?totals?\b|\bsums?\b|\bcount\b", re.IGNORECASE)
_SEVERAL = re.compile(
    r"(?P<first>[0-9]{1,6})\s*(?:-|\u2013|\u2014|\bto\b|\bthru\b|\bthrough\b)\s*(?P<last>[0-9]{1,6})"
)
_WORDS = re.compile(r"[^\W\d_]{3,}")
_MEASURE = re.compile(r"(?P<figure>.*?)\s*(?P<unit>m|ft|feet|foot|meters?|')?", re.IGNORECASE)
_REACHES: tuple[Reach, ...] = get_args(Reach)


def read_patch(path: Path | str, *, sheet: str | None = None) -> Patch:
    """The patch in a CSV, XLSX or ODS file.

    Raises ShelfError where the file cannot be read at all, or lacks a column that a patch needs. Rows that
    cannot be read, or only in part, are the patch's faults; a unit with such a row is kept without what
    could not be read.
    """
    return patch_from_table(read_table(path, KNOWN, sheet=sheet, such_as=SUCH_AS))


def patch_from_text(text: str, path: str = "patch.csv") -> Patch:
    """The patch in the text of a CSV."""
    return patch_from_table(table_from_bytes(text.encode(), path, KNOWN, such_as=SUCH_AS))


def patch_from_table(table: Table) -> Patch:
    """The patch in a table. Raises ShelfError where it lacks a column that a patch needs."""
    columns = columns_of(table.titles)
    _refuse_missing(table, columns)
    reader = _Reader(table, columns)
    rows = [row for row in table.rows if reader.is_unit(row)]
    reader.several = _several(reader.text(row, "unit") for row in rows)
    written = [
        Written(
            reader.text(row, "universe"),
            reader.text(row, "address"),
            reader.kind(row, "universe"),
            reader.kind(row, "address"),
        )
        for row in rows
    ]
    units = tuple(
        reader.unit(row, address) for row, address in zip(rows, read_addresses(written), strict=True)
    )
    notes = [*table.notes, *reader.notes]
    notes.extend(
        f"the titles {taken!r} and {other!r} both mean the {column}: {taken!r} was read"
        for column, taken, other in columns.doubled
    )
    return Patch(table.path, units, tuple(reader.faults), table.titles, tuple(notes))


def _several(units: Iterable[str]) -> frozenset[str]:
    """The cells that stand for several units each, ``3-5``; none where ``1-1``, ``1-2`` are names."""
    found = {unit: match for unit in units if (match := _SEVERAL.fullmatch(unit))}
    firsts = Counter(int(match["first"]) for match in found.values())
    if any(count > 1 for count in firsts.values()) or any(
        int(match["first"]) >= int(match["last"]) for match in found.values()
    ):
        return frozenset()
    return frozenset(found)


def _refuse_missing(table: Table, columns: Columns) -> None:
    missing = [column for column in NEEDED if column not in columns.at]
    if missing:
        found = ", ".join(repr(title) for title in table.titles if title)
        wanted = " and ".join(f"one for the {column}, such as {_example(column)}" for column in missing)
        raise ShelfError(
            table.path,
            f"the columns are {found}: no {' and no '.join(missing)} among them",
            place=f"row {table.title_row}",
            remedy=f"add {wanted}",
        )


def _example(column: Column) -> str:
    names = [repr(name) for name in TITLES[column][:2]]
    return " or ".join(names)


class _Reader:
    """Reads row after row of one table, and keeps what it could not read."""

    def __init__(self, table: Table, columns: Columns) -> None:
        self.table = table
        self.at = columns.at
        self.other = columns.other
        self.faults: list[RowFault] = []
        self.notes: list[str] = []
        self.several: frozenset[str] = frozenset()
        throw = columns.at.get("throw")
        self.throw_in_feet = throw is not None and fold_title(table.titles[throw]) in FEET

    def text(self, row: Row, column: Column) -> str:
        """A cell as written; empty where the table has no such column."""
        place = self.at.get(column)
        return row.cells[place] if place is not None else ""

    def kind(self, row: Row, column: Column) -> Kind:
        """What the cell was in the file."""
        place = self.at.get(column)
        return row.kind(place) if place is not None else "text"

    def is_unit(self, row: Row) -> bool:
        """Whether a row stands for a unit: not if it is blank, a heading, or a total."""
        if row.blank:
            return False
        if any(self.text(row, column) for column in ("fixture", "mode", "address")):
            names = [self.text(row, "unit"), self.text(row, "fixture"), self.text(row, "mode")]
            return all(names) or not self.is_total(row, [*names, self.text(row, "address")])
        filled = [cell for cell in row.cells if cell]
        if self.is_total(row, filled):
            return False
        if len(filled) == 1 and _WORDS.search(filled[0]):
            self.notes.append(f"row {row.number}, {filled[0]!r}, was taken for a heading")
            return False
        unit = self.text(row, "unit")
        why = "neither fixture, mode nor address: fill them in, or take the row out"
        self.fault(row, "fixture", unit or filled[0], why)
        return False

    def is_total(self, row: Row, cells: list[str]) -> bool:
        """Whether a cell says that the row sums up others; such a row is noted."""
        if not any(_TOTAL.match(cell) for cell in cells):
            return False
        self.notes.append(f"row {row.number} was taken for a total")
        return True

    def fault(self, row: Row, column: Column, found: str, why: str) -> None:
        """Keep a fault; `column` is told by its title."""
        place = self.at.get(column)
        title = self.table.titles[place] if place is not None else column
        self.faults.append(RowFault(row.number, self.text(row, "unit"), title, found, why))

    def unit(self, row: Row, address: Address | Misread | None) -> Unit:
        """The unit of a row, without what could not be read."""
        self.name(row, "unit")
        if self.text(row, "unit") in self.several:
            unit = self.text(row, "unit")
            match = _SEVERAL.fullmatch(unit)
            count = int(match["last"]) - int(match["first"]) + 1 if match else 0
            why = f"{count} units in one row, and it was read as one: give each a row with its start address"
            self.fault(row, "unit", unit, why)
        self.name(row, "fixture")
        self.name(row, "mode")
        if isinstance(address, Misread):
            self.fault(
                row, "universe" if address.column == "universe" else "address", address.found, address.why
            )
            address = None
        maker, fixture = self.text(row, "maker"), self.text(row, "fixture")
        if maker and not fixture.casefold().startswith(maker.casefold()):
            fixture = f"{maker} {fixture}" if fixture else ""
        return Unit(
            number=self.text(row, "unit"),
            row=row.number,
            fixture=fixture,
            mode=self.text(row, "mode"),
            address=address,
            position=self.text(row, "position"),
            purpose=self.text(row, "purpose"),
            group=self.text(row, "group"),
            throw_m=self.throw_m(row),
            part=self.text(row, "part"),
            uid=self.text(row, "uid"),
            serial=self.text(row, "serial"),
            firmware=self.text(row, "firmware"),
            reach=self.reach(row),
            note=self.text(row, "note"),
            extra={self.table.titles[i]: row.cells[i] for i in self.other if row.cells[i]},
        )

    def name(self, row: Row, column: Column) -> None:
        """Complain of a name that is missing, or that a spreadsheet has turned into a date."""
        text = self.text(row, column)
        if not text:
            self.fault(row, column, "", f"no {column}: write it")
        elif self.kind(row, column) == "date":
            why = f"a date, {text}: a spreadsheet made it one; format the column as text and write it again"
            self.fault(row, column, text, why)

    def throw_m(self, row: Row) -> float | None:
        """The throw in meters; None where none is written, or none that can be read."""
        text = self.text(row, "throw")
        if not text or text in ("-", "\u2013"):
            return None
        match = _MEASURE.fullmatch(text)
        unit = (match["unit"] or "").casefold() if match else ""
        try:
            value = number(match["figure"] if match else text)
        except ValueError as error:
            self.fault(row, "throw", text, str(error))
            return None
        if (unit[:1] in ("f", "'") and unit) or (not unit and self.throw_in_feet):
            value *= METERS_PER_FOOT
        if not 0 < value <= LONGEST_THROW_M:
            self.fault(row, "throw", text, f"a throw is above 0 and at most {LONGEST_THROW_M:.0f} m")
            return None
        return value

    def reach(self, row: Row) -> Reach | None:
        """How the unit is reached; None where it is not written."""
        text = self.text(row, "reach")
        folded = " ".join(text.casefold().split())
        for word in _REACHES:
            if folded == word:
                return word
        if text:
            self.fault(row, "reach", text, f"write one of {', '.join(_REACHES)}")
        return None
