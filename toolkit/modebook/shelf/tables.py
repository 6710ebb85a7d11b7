"""The one reader of tables: CSV, XLSX and ODS, titles found by what the caller knows."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from pathlib import Path

from modebook.shelf.errors import ShelfError, reason_of
from modebook.shelf.headers import SEARCHED_ROWS, Header, find_header, repeats_header
from modebook.shelf.reading import read_bytes
from modebook.shelf.table import MOST_BYTES, Kind, Row, Table, fold_title

ENDINGS = (".csv", ".tsv", ".txt", ".xlsx", ".xlsm", ".ods")
"""File endings that people give tables. What a file is, its first bytes tell."""

_OLD_OFFICE = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"


def read_table(
    path: Path | str, known: Collection[str], *, sheet: str | None = None, least: int = 2, such_as: str = ""
) -> Table:
    """The table in a file: the rows below the row, or two rows, with the most `known` titles.

    known: titles as fold_title gives them. sheet: the name of the sheet; by default the first visible one
    with such titles (a note names others that have them too). least: how many known titles make a row of
    titles. such_as: titles to name where none are found. Rows that repeat the titles are left out; blank
    rows stay. Raises ShelfError where the file cannot be read, is larger than the limits of table.py, or
    has no such row.
    """
    try:
        size = Path(path).stat().st_size
    except OSError as error:
        raise ShelfError(path, reason_of(error), remedy="name a file that can be read") from error
    if size > MOST_BYTES:
        raise ShelfError(
            path,
            f"is {size / 1e6:.0f} MB, and {MOST_BYTES / 1e6:.0f} MB is the most that is read",
            remedy="keep only the table",
        )
    content = read_bytes(path, MOST_BYTES)
    return table_from_bytes(content, str(path), known, sheet=sheet, least=least, such_as=such_as)


def table_from_bytes(
    content: bytes,
    path: str,
    known: Collection[str],
    *,
    sheet: str | None = None,
    least: int = 2,
    such_as: str = "",
) -> Table:
    """As read_table, for bytes already at hand; `path` names them in errors."""
    if not content.strip():
        raise ShelfError(path, "the file is empty", remedy="give a table with a row of titles")
    if content.startswith(_OLD_OFFICE):
        raise ShelfError(
            path,
            "is locked with a password, or of the old XLS kind",
            remedy="save it as XLSX, ODS or CSV, unlocked",
        )
    if content.startswith(b"PK\x03\x04"):
        return _from_sheets(content, path, known, sheet, least, such_as)
    if content.startswith(b"%PDF"):
        raise ShelfError(path, "is a PDF", remedy="give a CSV, XLSX or ODS file")
    if sheet is not None:
        raise ShelfError(path, f"is no workbook, so it has no sheet {sheet!r}", remedy="leave the sheet out")
    return _from_csv(content, path, known, least, such_as)


def _from_csv(content: bytes, path: str, known: Collection[str], least: int, such_as: str) -> Table:
    from modebook.shelf.delimited import decoded, read_lines, sniffed

    text, encoding, notes = decoded(content, path)
    delimiter = sniffed(text, known, least, path)
    lines = read_lines(text, delimiter, path)
    cells = [row for _, row in lines]
    header = find_header(cells, known, least)
    if header is None:
        raise _no_titles(path, cells, such_as)
    rows = _rows(header, [number for number, _ in lines], cells, None)
    return Table(path, None, header.titles, rows, lines[header.index][0], delimiter, encoding, tuple(notes))


def _from_sheets(
    content: bytes, path: str, known: Collection[str], sheet: str | None, least: int, such_as: str
) -> Table:
    from modebook.shelf.sheets import read_sheets

    sheets = read_sheets(content, path)
    if sheet is not None:
        chosen = [one for one in sheets if one.name == sheet]
        if not chosen:
            names = ", ".join(repr(one.name) for one in sheets)
            raise ShelfError(path, f"has no visible sheet {sheet!r}", remedy=f"it has {names}")
        sheets = chosen
    fitting = [(one, header) for one in sheets if (header := find_header(one.cells, known, least))]
    if not fitting:
        raise _no_titles(path, next((one.cells for one in sheets if one.cells), []), such_as)
    first, header = fitting[0]
    notes = []
    if len(fitting) > 1:
        others = ", ".join(repr(one.name) for one, _ in fitting[1:])
        notes.append(f"read the sheet {first.name!r}; {others} would fit too")
    numbers = list(range(1, len(first.cells) + 1))
    rows = _rows(header, numbers, first.cells, first.kinds)
    return Table(path, first.name, header.titles, rows, numbers[header.index], notes=tuple(notes))


def _rows(
    header: Header,
    numbers: Sequence[int],
    cells: Sequence[Sequence[str]],
    kinds: Sequence[Sequence[Kind]] | None,
) -> tuple[Row, ...]:
    width = len(header.titles)
    folded = [fold_title(title) for title in header.titles]
    pad = ("",) * width
    found: list[Row] = []
    for index in range(header.index + header.height, len(cells)):
        told = tuple(cell.strip() for cell in cells[index])
        told = told[:width] if len(told) >= width else told + pad[len(told) :]
        if repeats_header(told, folded):
            continue
        found.append(Row(numbers[index], told, tuple(kinds[index][:width]) if kinds else ()))
    return tuple(found)


def _no_titles(path: str, rows: Sequence[Sequence[str]], such_as: str) -> ShelfError:
    shown = next((row for row in rows[:SEARCHED_ROWS] if sum(map(bool, row)) > 1), None) or next(
        iter(rows), []
    )
    names = ", ".join(repr(cell.strip()) for cell in list(shown)[:12] if cell.strip())
    return ShelfError(
        path,
        f"no row of titles was found; its first row says {names or 'nothing'}",
        remedy=f"put a title over each column, such as {such_as}"
        if such_as
        else "put a title over each column",
    )
