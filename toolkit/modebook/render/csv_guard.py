"""CSV that a spreadsheet opens as text and numbers, never as a formula, and that still reads back."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Sequence

FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")
"""What makes a spreadsheet take a cell for a formula (OWASP, CSV injection; the wide forms from memory)."""

Cell = str | int | float | bool | None


def guarded(cell: Cell) -> str:
    """A cell's text; one that a spreadsheet would compute gets an apostrophe before it. Numbers stay numbers.

    A text that looks like a signed number (-270) is one and stays too: a spreadsheet computes nothing in it.
    """
    if cell is None:
        return ""
    if isinstance(cell, bool):
        return "yes" if cell else "no"
    if isinstance(cell, int | float):
        return f"{cell:.12g}" if isinstance(cell, float) else str(cell)
    # A leading blank does not help: spreadsheets look past it.
    if cell.lstrip(" \u00a0\ufeff\u200b\u200e\u200f").startswith(FORMULA_STARTS) and not _is_number(cell):
        return "'" + cell
    return cell


def _is_number(text: str) -> bool:
    return bool(text) and text.isascii() and text[1:].replace(".", "", 1).isdigit() and text[0] in "+-"


def csv_text(titles: Sequence[str], rows: Iterable[Sequence[Cell]]) -> str:
    """A whole file: titles, then rows, comma between cells, as RFC 4180 has it."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow([guarded(title) for title in titles])
    for row in rows:
        writer.writerow([guarded(cell) for cell in row])
    return out.getvalue()
