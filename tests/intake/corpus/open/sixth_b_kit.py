"""Short forms of the sixth charts by second hands: rows by columns, single figures, workbooks with dates."""

from __future__ import annotations

import datetime
import io
from collections.abc import Callable, Iterable, Sequence
from typing import Any

from intake.corpus.content import M, P, R, span
from intake.corpus.grids import C
from intake.corpus.open import fresh_kit as k

Item = str | int | float | datetime.date | C | None
"""A cell of a workbook; a None is covered by one that reaches over it, a float is a share of full."""


def figure(lo: int, hi: int, text: str, value: float, unit: str) -> R:
    """A step with one figure printed: as a span from that figure to itself it is as right as without one."""
    return R(lo, hi, text, spans_also=(span(value, value, unit),))


def smooth(lo: int, hi: int, text: str, key: str, **more: Any) -> R:
    """A choice of smoothing, which may not be left out."""
    return R(lo, hi, text, sets=("smoothing", key, text), **more)


def row_of(params: Iterable[P]) -> tuple[P, ...]:
    """Parameters one slot after the other; those with a fine name take two."""
    made, at = [], 1
    for p in params:
        made.append(p.at(*range(at, at + 1 + len(p.fine))))
        at += 1 + len(p.fine)
    return tuple(made)


def counted(params: Sequence[P], name: str, word: str, form: str = "{} ({} {})") -> M:
    """A mode whose title has its footprint; `word` is what the maker calls slots."""
    m = k.mode(params, name)
    title = form.format(name, m.footprint, word)
    size = f"{m.footprint} {word}"
    return k.mode(params, title, name, size, f"{name} {size}", f"{name} mode", f"Mode {name}")


def dots(lo: int, hi: int) -> str:
    return f"{lo}..{hi}"


def spaced(lo: int, hi: int) -> str:
    return str(lo) if lo == hi else f"{lo} - {hi}"


def body(
    params: Iterable[P],
    cols: str,
    value: Callable[[int, int], str] = k.hyphen,
    fine: str = "",
    every: bool = False,
    reach: bool = False,
) -> list[list[Any]]:
    """A row a range: columns out of slot, name, default, value, from, to, text, hex, low and high (shares).

    Slot, name and default stand in a parameter's first row; with `every` in each, with `reach` merged.
    """
    made: list[list[Any]] = []
    for line in k.lines(params):
        default = line.p.fine_default if line.byte else line.p.default
        sides = {"slot": line.slot, "name": line.name, "default": "" if default is None else default}
        for n, (lo, hi, text) in enumerate(line.rows):
            own: dict[str, Any] = {"value": value(lo, hi), "from": lo, "to": hi, "low": lo / 255}
            own |= {
                "high": hi / 255,
                "hex": f"{lo:02X}-{hi:02X}",
                "text": text or (fine if line.byte else ""),
            }
            row: list[Any] = []
            for col in cols.split():
                if col not in sides:
                    row.append(own[col])
                elif every or (n == 0 and not (reach and len(line.rows) > 1)):
                    row.append(sides[col])
                elif reach:
                    row.append(None if n else C(str(sides[col]), rows=len(line.rows)))
                else:
                    row.append("")
            made.append(row)
    return made


def book(sheets: Sequence[tuple[str, Sequence[Sequence[Item]]]], date: str = "yyyy-mm-dd") -> bytes:
    """A workbook with numbers as numbers, shares as percents, and dates as dates."""
    from openpyxl import Workbook
    from openpyxl.styles import Alignment, Font

    made = Workbook()
    made.remove(made.worksheets[0])
    made.properties.created = made.properties.modified = datetime.datetime(2026, 1, 2)
    for title, rows in sheets:
        sheet = made.create_sheet(title)
        sheet.column_dimensions["A"].width = 16
        for y, row in enumerate(rows, 1):
            for x, item in enumerate(row, 1):
                if item is None or item == "":
                    continue
                value: Any = item.text if isinstance(item, C) else item
                if isinstance(value, str) and value.isdecimal():
                    value = int(value)
                cell = sheet.cell(y, x, value)
                if isinstance(value, float):
                    cell.number_format = "0%"
                elif isinstance(value, datetime.date):
                    cell.number_format = date
                if y == 1:
                    cell.font = Font(bold=True)
                if isinstance(item, C) and (item.rows > 1 or item.cols > 1):
                    cell.alignment = Alignment(vertical="center", wrap_text=True)
                    ends = {"end_row": y + item.rows - 1, "end_column": x + item.cols - 1}
                    sheet.merge_cells(start_row=y, start_column=x, **ends)
    kept = io.BytesIO()
    made.save(kept)
    return k.steady(kept.getvalue())
