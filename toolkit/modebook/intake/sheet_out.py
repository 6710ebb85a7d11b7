"""Writes a document as a chart sheet: rows that people can read, type into, and give back to `draft`."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Iterator, Sequence
from typing import TYPE_CHECKING, Any

from modebook.intake.sheet_layout import (
    BLOCKS,
    CELLS_KEYS,
    MORE,
    PARAMETER_KEYS,
    PART_KEYS,
    RANGE_KEYS,
    Json,
    cells_text,
    more_cells,
    written,
)

if TYPE_CHECKING:
    from modebook.documents.fixture import Fixture

Value = str | int | float
Row = list[Value]

_CHILDREN = {"setting": ("choices", "ways"), "wheel": ("positions",)}
_LISTS = ("sources", "settings", "wheels", "emitters", "modes", "doubts", "accepted", "promotions")


def sheet_rows(fixture: Fixture, mode: str | None = None) -> list[Row]:
    """The rows of a document's chart sheet; with `mode`, only the mode of that name (or number) is in it.

    Blocks stand under titles of their own with a blank row between. Raises KeyError for an unknown mode.
    """
    from modebook.shelf.canonical import as_written

    document: Json = as_written(fixture)
    if mode is not None:
        chosen = [one for one in document["modes"] if one["name"] == mode or str(one.get("number")) == mode]
        if not chosen:
            raise KeyError(mode)
        document = {**document, "modes": chosen}
        # Pointers of other modes would point at the wrong one.
        document.pop("doubts", None)
        document.pop("accepted", None)
    return list(_document(document))


def _document(document: Json) -> Iterator[Row]:
    yield _titles("fixture")
    rest = {key: value for key, value in document.items() if key not in _LISTS or not value}
    yield _row("fixture", rest)
    yield from _block("source", document.get("sources") or ())
    yield from _nested("setting", document.get("settings") or (), always=True)
    yield from _nested("wheel", document.get("wheels") or ())
    yield from _block("emitter", document.get("emitters") or ())
    for mode in document.get("modes") or ():
        yield []
        yield _titles("mode")
        yield _row(
            "mode", {k: v for k, v in mode.items() if k not in ("parameters", "cells", "parts") or not v}
        )
        yield _titles("chart")
        yield from _holder(mode, 0)
    yield from _block("doubt", document.get("doubts") or ())
    yield from _block("accepted", document.get("accepted") or ())
    yield from _block("promotion", document.get("promotions") or ())


def _titles(block: str) -> Row:
    return [block, *(column.title for column in BLOCKS[block]), MORE]


def _block(block: str, entries: Iterable[Json]) -> Iterator[Row]:
    for index, entry in enumerate(entries):
        if index == 0:
            yield []
            yield _titles(block)
        yield _row(block, entry)


def _nested(block: str, entries: Sequence[Json], *, always: bool = False) -> Iterator[Row]:
    """Settings with their choices and ways, wheels with their positions: each under its own titles."""
    if not entries and always:
        yield []
        yield _titles(block)
    for entry in entries:
        yield []
        yield _titles(block)
        children = _CHILDREN[block]
        yield _row(block, {key: value for key, value in entry.items() if key not in children or not value})
        for child in children:
            for index, inner in enumerate(entry.get(child) or ()):
                if index == 0:
                    yield _titles(child.removesuffix("s"))
                yield _row(child.removesuffix("s"), inner)


def _row(block: str, entry: Json, *, keys: Sequence[str] | None = None, first: str = "") -> Row:
    made: Row = [first]
    rest = dict(entry)
    for column in BLOCKS[block]:
        value = rest.get(column.key)
        cell = None
        if column.key in rest and (keys is None or column.key in keys):
            cell = written(value, column.form)
        if cell is not None:
            rest.pop(column.key)
        made.append("" if cell is None else cell)
    return [*made, *more_cells(rest)]


def _holder(holder: Json, depth: int) -> Iterator[Row]:
    for parameter in holder.get("parameters") or ():
        yield _row(
            "chart", {k: v for k, v in parameter.items() if k != "ranges" or not v}, keys=PARAMETER_KEYS
        )
        for entry in parameter.get("ranges") or ():
            yield _row("chart", entry, keys=RANGE_KEYS)
    for block in holder.get("cells") or ():
        rest = {
            k: v
            for k, v in block.items()
            if k not in ("count", "first", "stride") and (k not in ("parameters", "cells") or not v)
        }
        row = _row("chart", rest, keys=CELLS_KEYS, first="cells" if depth == 0 else f"cells {depth + 1}")
        row[1] = cells_text(block)
        yield row
        yield from _holder(block, depth + 1)
    for part in holder.get("parts") or ():
        rest = {
            k: v for k, v in part.items() if k != "footprint" and (k not in ("parameters", "cells") or not v)
        }
        row = _row("chart", rest, keys=PART_KEYS, first="part")
        row[1] = f"{part['footprint']} slots"
        yield row
        yield from _holder(part, 0)


EXAMPLE = ("Invented Maker", "Invented 200")
"""Maker and model of the worked example, by which a sheet that was not filled in is known."""


def blank_rows() -> list[Row]:
    """An empty sheet with its titles and one worked example, for people who type from paper."""

    def row(block: str, **cells: Value) -> Row:
        return ["", *(cells.get(column.title.replace(" ", "_"), "") for column in BLOCKS[block])]

    def values(start: int, end: int, meaning: str, **cells: Value) -> Row:
        named: dict[str, Value] = {"from": start, "to": end, "meaning": meaning, **cells}
        return row("chart", **named)

    chart = "chart"
    return [
        _titles("fixture"),
        row("fixture", maker=EXAMPLE[0], model=EXAMPLE[1], category="moving yoke"),
        [],
        _titles("source"),
        row("source", key="guide", title="Invented 200 user guide", revision="C", pages="31-34"),
        [],
        _titles("setting"),
        row("setting", key="smoothing", kind="smoothing", label="Response"),
        _titles("choice"),
        row("choice", key="off", label="Fast"),
        row("choice", key="on", label="Smooth"),
        [],
        _titles("mode"),
        row("mode", name="Basic", number=1, footprint=5, source="guide"),
        _titles(chart),
        row(chart, slots="1, 2", parameter="dimmer", label="Intensity", span="0 to 100 %"),
        row(chart, slots="3", parameter="pan", label="Pan", default=128, span="0 to 540 deg"),
        row(chart, slots="4", parameter="strobe", label="Strobe"),
        values(0, 9, "Open", does="open"),
        values(10, 255, "Slow to fast", span="1 to 25 Hz"),
        row(chart, slots="5", parameter="control", label="Control"),
        values(0, 9, "No function", does="nothing"),
        values(10, 14, "Response: Fast", sets="smoothing: off", hold_s=3, kept="until power off"),
        values(15, 249, "No function", does="nothing"),
        values(250, 255, "Reset", hold_s=5, hazard="reset", needs="dimmer 0-0"),
    ]


def csv_text(rows: Sequence[Sequence[Value]]) -> str:
    """Rows as CSV, all as long as the longest."""
    width = max((len(row) for row in rows), default=0)
    out = io.StringIO(newline="")
    writer = csv.writer(out, lineterminator="\r\n")
    for row in rows:
        writer.writerow([*row, *[""] * (width - len(row))])
    return out.getvalue()


def xlsx_bytes(rows: Sequence[Sequence[Value]], title: str = "Chart") -> bytes:
    """Rows as a workbook of one sheet. Raises MissingExtraError where openpyxl is not installed."""
    from modebook.intake.errors import MissingExtraError

    try:
        from openpyxl import Workbook
        from openpyxl.styles import Font
    except ImportError as error:
        raise MissingExtraError(
            "XLSX", "writing it needs openpyxl", remedy="install modebook[draft], or write CSV"
        ) from error
    book: Any = Workbook()
    sheet = book.active
    sheet.title = title
    bold = Font(bold=True)
    for number, row in enumerate(rows, start=1):
        for column, value in enumerate(row, start=1):
            if value == "":
                continue
            if isinstance(value, float) and float(f"{value:.15g}") != value:
                value = repr(value)  # a sheet's number keeps 15 digits; as text it keeps them all
            cell = sheet.cell(number, column, value)
            if row[0] in BLOCKS:
                cell.font = bold
    for letter, width in zip("ABCDEFGH", (9, 14, 18, 22, 9, 9, 9, 34), strict=True):
        sheet.column_dimensions[letter].width = width
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()
