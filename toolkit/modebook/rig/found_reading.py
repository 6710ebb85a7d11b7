"""A list read off the fixtures, row by row: who each says it is, and what it is set to."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from pathlib import Path

from modebook.documents.address import LAST_UNIVERSE, SLOTS_PER_UNIVERSE, Address
from modebook.documents.patch import RowFault
from modebook.rig.found_titles import FOUND_KNOWN, FOUND_SUCH_AS, FoundColumn, found_columns
from modebook.rig.notation import Misread, Written, read_addresses
from modebook.shelf.errors import ShelfError
from modebook.shelf.numbers import whole_number
from modebook.shelf.table import Kind, Row, Table
from modebook.shelf.tables import read_table, table_from_bytes

_UID = re.compile(r"([0-9A-Fa-f]{4})[:.\-\s]?([0-9A-Fa-f]{8})")
_ID = re.compile(r"(?:0x)?([0-9A-Fa-f]{1,4})h?", re.IGNORECASE)
_NUMBER = re.compile(r"([0-9]{1,3})(?:\s*(?:of|/)\s*[0-9]{1,3})?")
_NUMBER_AND_NAME = re.compile(r"([0-9]{1,3})\s*[:.)\-\u2013]\s*(\S.*)")
_NAME_AND_NUMBER = re.compile(r"(.*\S)\s*\(\s*#?([0-9]{1,3})\s*\)")
_NONE = frozenset({"", "-", "\u2013", "\u2014", "n/a", "none"})
_NO_ADDRESS = frozenset({*(_NONE - {""}), "65535", "0xffff", "not patched", "unpatched"})

SETTINGS: tuple[FoundColumn, ...] = ("response", "curve", "modulation")
"""The columns that tell what a setting is at."""


@dataclass(slots=True)
class FoundRow:
    """What one row says of one fixture; empty or None where it does not."""

    row: int
    unit: str = ""
    uid: str = ""
    """As E1.20 prints it: 7FF1:00000A01."""
    manufacturer: int | None = None
    model_id: int | None = None
    fixture: str = ""
    """Maker and model, as far as they are written."""
    mode: str = ""
    personality: int | None = None
    footprint: int | None = None
    universe: int | None = None
    address: int | None = None
    tells_address: bool = False
    """Whether the row says where the fixture listens, be it nowhere."""
    settings: dict[FoundColumn, str] = field(default_factory=dict)
    firmware: str = ""
    firmware_is_number: bool = False
    """Whether a sheet may have shortened it (3.10 to 3.1)."""
    position: str = ""
    part: str = ""
    serial: str = ""

    def place_json(self) -> dict[str, int | None]:
        """Where it listens, for JSON; the universe is None where the list does not tell it."""
        return {"universe": self.universe, "address": self.address}

    @property
    def place(self) -> str:
        """Where it listens, for people."""
        if self.address is None:
            return "no address"
        return str(self.address) if self.universe is None else f"{self.universe}/{self.address}"


@dataclass(frozen=True, slots=True)
class AsFound:
    """All rows of a list, and what could not be read."""

    path: str
    rows: tuple[FoundRow, ...]
    faults: tuple[RowFault, ...]
    notes: tuple[str, ...]


def read_as_found(path: Path | str, *, sheet: str | None = None) -> AsFound:
    """The list in a CSV, XLSX or ODS file.

    Raises ShelfError where it cannot be read, or has no column by which a unit could be known.
    """
    return found_from_table(read_table(path, FOUND_KNOWN, sheet=sheet, such_as=FOUND_SUCH_AS))


def found_from_text(text: str, path: str = "as-found.csv") -> AsFound:
    """The list in the text of a CSV."""
    return found_from_table(table_from_bytes(text.encode(), path, FOUND_KNOWN, such_as=FOUND_SUCH_AS))


def found_from_table(table: Table) -> AsFound:
    """The list in a table; as read_as_found."""
    at = found_columns(table.titles)
    if not {"unit", "uid"} & at.keys() and not {"address", "position"} & at.keys():
        titles = ", ".join(repr(title) for title in table.titles if title)
        raise ShelfError(
            table.path,
            f"the columns are {titles}: none tells which unit a row is about",
            place=f"row {table.title_row}",
            remedy="add one for the unit or its UID, or the start address and the model",
        )
    reader = _Reader(table, at)
    rows = [row for row in table.rows if not row.blank]
    found = [reader.row(row) for row in rows]
    reader.addresses(rows, found)
    return AsFound(table.path, tuple(found), tuple(reader.faults), table.notes)


class _Reader:
    """Reads row after row of one table, and keeps what it could not read."""

    def __init__(self, table: Table, at: dict[FoundColumn, int]) -> None:
        self.table = table
        self.at = at
        self.faults: list[RowFault] = []

    def text(self, row: Row, column: FoundColumn) -> str:
        place = self.at.get(column)
        text = row.cells[place] if place is not None else ""
        return "" if text.casefold() in _NONE else text

    def kind(self, row: Row, column: FoundColumn) -> Kind:
        place = self.at.get(column)
        return row.kind(place) if place is not None else "text"

    def fault(self, row: Row, column: FoundColumn, found: str, why: str) -> None:
        place = self.at.get(column)
        title = self.table.titles[place] if place is not None else column
        self.faults.append(RowFault(row.number, self.text(row, "unit"), title, found, why))

    def row(self, row: Row) -> FoundRow:
        """All that a row says but its address, which depends on the other rows."""
        found = FoundRow(row.number, unit=self.text(row, "unit"), position=self.text(row, "position"))
        found.part, found.serial = self.text(row, "part"), self.text(row, "serial")
        self._identity(row, found)
        self._mode(row, found)
        found.footprint = self._whole(row, "footprint")
        for column in SETTINGS:
            text = self.text(row, column)
            if text and self._no_date(row, column, text):
                found.settings[column] = text
        firmware = self.text(row, "firmware")
        if firmware and self._no_date(row, "firmware", firmware):
            found.firmware = firmware
            found.firmware_is_number = self.kind(row, "firmware") == "number"
        return found

    def _identity(self, row: Row, found: FoundRow) -> None:
        uid = self.text(row, "uid")
        match = _UID.fullmatch(uid)
        if match:
            found.uid = f"{match[1]}:{match[2]}".upper()
            found.manufacturer = int(match[1], 16)
        elif uid:
            self.fault(row, "uid", uid, "no UID of E1.20: it has four and eight hex digits, 7FF1:00000A01")
        found.model_id = self._hex(row, "model id")
        maker_id = self._hex(row, "manufacturer id")
        found.manufacturer = maker_id if maker_id is not None else found.manufacturer
        maker, fixture = self.text(row, "maker"), self.text(row, "fixture")
        if maker and fixture and not fixture.casefold().startswith(maker.casefold()):
            fixture = f"{maker} {fixture}"
        found.fixture = fixture

    def _hex(self, row: Row, column: FoundColumn) -> int | None:
        """An RDM id, which E1.20 writes in hex; a sheet may have made 0401 the number 401 all the same."""
        text = self.text(row, column)
        if not text:
            return None
        match = _ID.fullmatch(text)
        if match is None:
            self.fault(row, column, text, "no RDM id: four hex digits such as 0x0401")
            return None
        return int(match[1], 16)

    def _mode(self, row: Row, found: FoundRow) -> None:
        found.mode = self.text(row, "mode")
        told = self.text(row, "personality")
        if not told:
            return
        if not self._no_date(row, "personality", told):
            return
        if number := _NUMBER.fullmatch(told):
            found.personality = int(number[1])
        elif both := _NUMBER_AND_NAME.fullmatch(told):
            found.personality, found.mode = int(both[1]), found.mode or both[2]
        elif both := _NAME_AND_NUMBER.fullmatch(told):
            found.personality, found.mode = int(both[2]), found.mode or both[1]
        else:
            found.mode = found.mode or told

    def _whole(self, row: Row, column: FoundColumn) -> int | None:
        text = self.text(row, column)
        if not text:
            return None
        try:
            return whole_number(text)
        except ValueError as error:
            self.fault(row, column, text, str(error))
            return None

    def _no_date(self, row: Row, column: FoundColumn, text: str) -> bool:
        if self.kind(row, column) != "date":
            return True
        why = f"a date, {text}: a spreadsheet made it one; format the column as text and write it again"
        self.fault(row, column, text, why)
        return False

    def addresses(self, rows: list[Row], found: list[FoundRow]) -> None:
        """Where each listens. A list without universes tells addresses from 1 to 512 alone, as RDM does."""
        place = self.at.get("address")
        if place is None:
            return
        written = [
            Written(
                self.text(row, "universe"),
                "" if row.cells[place].casefold() in _NO_ADDRESS else row.cells[place],
                self.kind(row, "universe"),
                self.kind(row, "address"),
            )
            for row in rows
        ]
        names_universe = any(one.universe for one in written) or any(
            not one.address.isascii() or not one.address.isdigit() for one in written if one.address
        )
        if not names_universe:
            self._alone(rows, found, written)
            return
        # A unit that listens nowhere may still be on a line: its universe is then no half of an address.
        for one, row, read in zip(
            found, rows, read_addresses([w if w.address else Written("", "") for w in written]), strict=True
        ):
            cell = row.cells[place]
            one.tells_address = bool(cell) and not isinstance(read, Misread)
            bare = int(cell) if cell.isascii() and cell.isdigit() and len(cell) < 4 else 0
            if 1 <= bare <= SLOTS_PER_UNIVERSE and not self.text(row, "universe"):
                # What a fixture tells of itself: its universe nobody but the plan knows.
                one.tells_address, one.address = True, bare
            elif isinstance(read, Address):
                one.universe, one.address = read.universe, read.address
            elif isinstance(read, Misread):
                column: FoundColumn = "universe" if read.column == "universe" else "address"
                self.fault(row, column, read.found, read.why)
            else:
                one.universe = self._universe(row)

    def _universe(self, row: Row) -> int | None:
        text = self.text(row, "universe")
        return int(text) if text.isdigit() and 1 <= int(text) <= LAST_UNIVERSE else None

    def _alone(self, rows: list[Row], found: list[FoundRow], written: list[Written]) -> None:
        for one, row, told in zip(found, rows, written, strict=True):
            if not told.address:
                one.tells_address = bool(row.cells[self.at["address"]])
            elif 1 <= int(told.address[:6]) <= SLOTS_PER_UNIVERSE:
                one.tells_address, one.address = True, int(told.address)
            else:
                why = (
                    f"address {told.address} is not within 1 to {SLOTS_PER_UNIVERSE}, and no universe is told"
                )
                self.fault(row, "address", told.address, why)
