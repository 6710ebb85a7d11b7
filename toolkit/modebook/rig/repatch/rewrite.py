"""Writes the new patch: the person's own file with only the planned cells changed."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Sequence

from modebook.documents.address import Address
from modebook.rig.mode_names import modes_meant
from modebook.rig.patch_reading import patch_from_table
from modebook.rig.reading import PatchedRow, RigReading
from modebook.rig.repatch.errors import RewriteError
from modebook.rig.repatch.plan import Change, Plan
from modebook.rig.repatch.raw_cells import Cell, cells_by_line, unmarked, with_cells
from modebook.rig.repatch.wording import address_as_written, mode_as_written
from modebook.rig.titles import KNOWN, SUCH_AS, Column, columns_of
from modebook.shelf.table import Row, Table
from modebook.shelf.tables import table_from_bytes

_FORMULA = re.compile(r"[=@\t\r]|[+-](?![0-9.,]+$).")
_NUMBER_POINT = re.compile(r"[0-9]+\.[0-9]{3}")


def rewritten(content: bytes, reading: RigReading, plan: Plan, *, sheet: str | None = None) -> bytes:
    """The patch file with the plan's changes, as bytes.

    content: the file as read. A CSV keeps every byte outside the changed cells; a workbook becomes a CSV
    (UTF-8, commas) with its columns. Raises RewriteError where what is written would not be read as planned.
    """
    path = reading.patch.path
    table = table_from_bytes(content, path, KNOWN, sheet=sheet, such_as=SUCH_AS)
    new = _new_cells(table, reading, plan.changes)
    if table.delimiter is None:
        result = _as_csv(table, new)
    else:
        result = _same_csv(content, table, new)
    _refuse_otherwise(result, path, reading, plan.changes)
    return result


def _new_cells(table: Table, reading: RigReading, changes: Sequence[Change]) -> dict[tuple[int, int], str]:
    """What changed cells say, by row of the file and column from 0."""
    at = columns_of(table.titles).at
    rows = {row.number: row for row in table.rows}
    patched = {row.unit.row: row for row in reading.rows}
    new: dict[tuple[int, int], str] = {}

    def said(row: Row, column: Column) -> str:
        return row.cells[at[column]] if column in at else ""

    def say(row: Row, column: Column, words: str) -> None:
        if words != said(row, column):
            new[row.number, at[column]] = words

    for change in changes:
        row, unit = rows[change.row], patched[change.row]
        if change.changes_mode:
            say(row, "mode", _mode(unit, said(row, "mode"), change))
        if change.address_from is not None and change.address_to is not None and change.moves:
            words = address_as_written(
                said(row, "universe"), said(row, "address"), change.address_from, change.address_to
            )
            words = _without_doubt(words, change.address_to)
            if "universe" in at:
                say(row, "universe", words[0])
            say(row, "address", words[1])
    return new


def _mode(unit: PatchedRow, written: str, change: Change) -> str:
    if unit.fixture is None:
        raise RewriteError(f"row {change.row}: the fixture's record is gone; plan again")
    return mode_as_written(written, unit.fixture.fixture.modes, unit.modes[0], change.mode_place)


def _without_doubt(words: tuple[str, str], address: Address) -> tuple[str, str]:
    """A point between universe and address is sure only before three digits."""
    universe, said = words
    if "." in said and not _NUMBER_POINT.fullmatch(said) and said[:1].isdigit():
        said = f"{address.universe}.{address.address:03d}"
    return universe, said


def _same_csv(content: bytes, table: Table, new: dict[tuple[int, int], str]) -> bytes:
    delimiter = table.delimiter or ","
    mark, text, encoding = unmarked(content, table.encoding or "utf-8")
    lines = cells_by_line(text, delimiter)
    changed: dict[Cell, str] = {lines[row][column]: words for (row, column), words in new.items()}
    try:
        return mark + with_cells(text, changed, delimiter).encode(encoding)
    except UnicodeEncodeError as error:
        raise RewriteError(
            f"{table.path}: a mode's name has signs that its encoding, {encoding}, lacks: save it as UTF-8"
        ) from error


def _as_csv(table: Table, new: dict[tuple[int, int], str]) -> bytes:
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow([_harmless(title) for title in table.titles])
    for row in table.rows:
        writer.writerow(
            [_harmless(new.get((row.number, column), cell)) for column, cell in enumerate(row.cells)]
        )
    return out.getvalue().encode()


def _harmless(cell: str) -> str:
    """A cell that no spreadsheet takes for a formula."""
    return f"'{cell}" if _FORMULA.match(cell) else cell


def _refuse_otherwise(result: bytes, path: str, reading: RigReading, changes: Sequence[Change]) -> None:
    """Read the new patch back: every unit must be where the plan has it, in the mode that it has."""
    units = patch_from_table(table_from_bytes(result, path, KNOWN, such_as=SUCH_AS)).units
    by_row = {change.row: change for change in changes}
    if len(units) != len(reading.rows):
        raise RewriteError(f"{path}: the new patch would have other rows; write it by hand")
    for unit, before in zip(units, reading.rows, strict=True):
        change = by_row.get(before.unit.row)
        address = change.address_to if change is not None else before.unit.address
        if unit.address != address:
            raise RewriteError(
                f"{path}, row {before.unit.row}: {address} would be read as {unit.address or 'no address'}; "
                "write the addresses of the patch as universe/address and plan again"
            )
        if change is not None and before.fixture is not None:
            meant = modes_meant(unit.mode, before.fixture.fixture.modes)
            if meant != [change.mode_place]:
                raise RewriteError(
                    f"{path}, row {before.unit.row}: mode {unit.mode!r} would not be read as planned"
                )
