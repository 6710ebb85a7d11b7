"""Reads CSV: finds out encoding and delimiter, keeps each row's line in the file."""

from __future__ import annotations

import csv
import io
from collections.abc import Collection, Iterator
from contextlib import suppress
from itertools import islice

from modebook.shelf.errors import ShelfError
from modebook.shelf.headers import SEARCHED_ROWS, find_header
from modebook.shelf.table import MOST_CELLS, MOST_COLUMNS, MOST_ROWS

DELIMITERS = (",", ";", "\t")
NAMES = {",": "comma", ";": "semicolon", "\t": "tab"}

LONGEST_CELL = 131_072
"""Characters of one cell, beyond which a quote mark was forgotten."""
Lines = list[tuple[int, list[str]]]
"""Rows with the line at which each begins."""


def decoded(content: bytes, path: str) -> tuple[str, str, list[str]]:
    """The text of a file, its encoding, and notes for the person.

    A byte order mark decides; else UTF-8 if it is that; else Windows-1252, with a note. ShelfError for
    bytes that are none of these.
    """
    for mark, encoding in ((b"\xef\xbb\xbf", "utf-8-sig"), (b"\xff\xfe", "utf-16"), (b"\xfe\xff", "utf-16")):
        if content.startswith(mark):
            try:
                text = content.decode(encoding)
            except UnicodeDecodeError as error:
                raise ShelfError(
                    path,
                    f"its first bytes promise {encoding.removesuffix('-sig').upper()}, "
                    f"and byte {error.start} is not",
                    remedy="save it again as CSV in UTF-8",
                ) from error
            return _without_nul(text, path), encoding, []
    try:
        return _without_nul(content.decode("utf-8"), path), "utf-8", []
    except UnicodeDecodeError as not_utf8:
        line = content.count(b"\n", 0, not_utf8.start) + 1
        try:
            text = content.decode("cp1252")
        except UnicodeDecodeError as error:
            raise ShelfError(
                path,
                "is neither UTF-8 nor Windows-1252 text",
                place=f"line {line}",
                remedy="save it again as CSV in UTF-8",
            ) from error
        note = f"line {line} is not UTF-8, so it was read as Windows-1252: check its accented letters"
        return _without_nul(text, path), "cp1252", [note]


def _without_nul(text: str, path: str) -> str:
    if "\0" in text:
        raise ShelfError(
            path, "holds null bytes, so it is not plain text", remedy="save it as CSV in UTF-8, or as XLSX"
        )
    return text


def sniffed(text: str, known: Collection[str], least: int, path: str) -> str:
    """The delimiter with which the most known titles stand side by side; of equals, the one that parts most.

    Counting characters would fall for commas inside quotes and for decimal commas.
    """
    best: tuple[int, int, str] | None = None
    for delimiter in DELIMITERS:
        rows: list[list[str]] = []
        # A fault further down is told when the file is read; here the rows before it decide.
        with suppress(ShelfError):
            rows.extend(row for _, row in islice(_parsed(text, delimiter, path), SEARCHED_ROWS + 1))
        header = find_header(rows, known, least)
        widest = max((len(row) for row in rows), default=0)
        score = (header.score if header else 0, widest)
        if best is None or score > best[:2]:
            best = (*score, delimiter)
    return best[2] if best else ","


def read_lines(text: str, delimiter: str, path: str) -> Lines:
    """All rows with the line of the file at which each begins, from 1. ShelfError for what CSV cannot be."""
    found: Lines = []
    cells = 0
    for start, row in _parsed(text, delimiter, path):
        cells += len(row)
        if len(found) >= MOST_ROWS or len(row) > MOST_COLUMNS or cells > MOST_CELLS:
            raise ShelfError(
                path,
                f"more than {MOST_ROWS} rows, {MOST_COLUMNS} columns or {MOST_CELLS} cells",
                place=f"line {start}",
                remedy="keep only the table",
            )
        found.append((start, row))
    return found


def _parsed(text: str, delimiter: str, path: str) -> Iterator[tuple[int, list[str]]]:
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True)
    start = 1
    while True:
        try:
            row = next(reader)
        except StopIteration:
            return
        except csv.Error as error:
            why = str(error)
            if "unexpected end" in why:
                problem, remedy = "a quoted cell begins here and never ends", "close it with a quote mark"
            elif "field limit" in why or "field larger" in why:
                raise _too_long(path, start) from error
            else:
                problem = "a quote mark inside a quoted cell stands alone"
                remedy = "double it, or take the quote marks off"
            raise ShelfError(path, problem, place=f"line {start}", remedy=remedy) from error
        # The library's own limit holds for the whole process, where others may have set it otherwise.
        if any(len(cell) > LONGEST_CELL for cell in row):
            raise _too_long(path, start)
        yield start, row
        start = reader.line_num + 1


def _too_long(path: str, start: int) -> ShelfError:
    return ShelfError(
        path,
        f"a cell of more than {LONGEST_CELL} characters",
        place=f"line {start}",
        remedy="look for a quote mark too many",
    )
