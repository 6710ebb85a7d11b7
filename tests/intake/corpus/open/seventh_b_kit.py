"""Short forms of the seventh charts by second hands: printed ranges, and workbooks as people type them."""

from __future__ import annotations

import datetime
import io
from collections.abc import Callable, Sequence

from intake.corpus.content import M, P
from intake.corpus.grids import C
from intake.corpus.open import fresh_kit as k

Item = str | int | float | C | None
"""A cell of a workbook; a None is covered by one that reaches over it. Text stays text."""


def en(lo: int, hi: int) -> str:
    return str(lo) if lo == hi else f"{lo}–{hi}"


def spaced(lo: int, hi: int) -> str:
    return str(lo) if lo == hi else f"{lo} - {hi}"


def zeros_spaced(lo: int, hi: int) -> str:
    return f"{lo:03}" if lo == hi else f"{lo:03} - {hi:03}"


def worded(word: str, zeros: bool = False) -> Callable[[int, int], str]:
    """Ranges with a word between their ends."""

    def printed(lo: int, hi: int) -> str:
        low, high = (f"{lo:03}", f"{hi:03}") if zeros else (str(lo), str(hi))
        return low if lo == hi else f"{low} {word} {high}"

    return printed


def sized(params: Sequence[P], name: str, form: str, *names: str) -> M:
    """A mode whose title tells its footprint: `form` has places for the name and the count."""
    count = max(slot for p in params for slot in p.slots)
    title = form.format(name, count)
    known = [name, *(one.format(name, count) for one in names)]
    return k.mode(params, title, *(one for one in known if one))


def one_a_slot(labels: str, words: dict[str, str], text: str = "") -> tuple[P, ...]:
    """Plain parameters in a row out of labels parted by commas, each with its words; `text` beside each."""
    split = [label.strip() for label in labels.split(",")]
    return tuple(P(tuple(words[label].split()), label, (at,), text=text) for at, label in enumerate(split, 1))


def workbook(sheets: Sequence[tuple[str, Sequence[Sequence[Item]]]], top: int = 1, left: int = 1) -> bytes:
    """A workbook; tables may begin further down or to the right, as where a logo stands in the corner."""
    from openpyxl import Workbook
    from openpyxl.styles import Alignment, Border, Font, Side

    made = Workbook()
    made.remove(made.worksheets[0])
    made.properties.created = made.properties.modified = datetime.datetime(2026, 1, 2)
    thin = Side(style="thin")
    for title, rows in sheets:
        sheet = made.create_sheet(title)
        for y, row in enumerate(rows, top):
            for x, item in enumerate(row, left):
                if item is None or item == "":
                    continue
                value = item.text if isinstance(item, C) else item
                merged = isinstance(item, C) and item.text.isdecimal()
                cell = sheet.cell(y, x, int(str(value)) if merged else value)
                cell.border = Border(left=thin, right=thin, top=thin, bottom=thin)
                cell.font = Font(bold=len(row) == 1)
                if isinstance(item, float):
                    cell.number_format = "0%"
                if isinstance(item, C) and (item.rows > 1 or item.cols > 1):
                    cell.alignment = Alignment(horizontal="center", vertical="center", wrap_text=True)
                    ends = {"end_row": y + item.rows - 1, "end_column": x + item.cols - 1}
                    sheet.merge_cells(start_row=y, start_column=x, **ends)
    kept = io.BytesIO()
    made.save(kept)
    return k.steady(kept.getvalue())
