"""Short forms of the seventh charts: names above values, cells of many lines, columns copied as text."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from intake.corpus.content import M, P
from intake.corpus.open import fresh_kit as k
from intake.corpus.open.fifth_kit import Rows, Value


def titled(seated: Sequence[P], title: str, *names: str) -> M:
    """A mode by its title and by whatever else a reader may call it."""
    return k.mode(seated, title, *names)


def arrow(lo: int, hi: int) -> str:
    return str(lo) if lo == hi else f"{lo} → {hi}"


def padded(lo: int, hi: int) -> str:
    return f"{lo:03}" if lo == hi else f"{lo:03} - {hi:03}"


def under(params: Iterable[P], value: Value = k.hyphen, fine: str = "") -> Rows:
    """Slot, value, text: a parameter's name has a row of its own above its values."""
    made: Rows = []
    for line in k.lines(params):
        made.append([str(line.slot), "", line.name])
        made += [["", value(lo, hi), text or fine] for lo, hi, text in line.rows if text or fine]
        if not made[-1][1]:
            made[-1][1] = value(*line.rows[0][:2])
    return made


def stacked(params: Iterable[P], value: Value = k.hyphen, fine: str = "") -> Rows:
    """Slot, name, values, texts: a row a slot, its ranges as lines of two cells."""
    return [
        [
            str(line.slot),
            line.name,
            "\n".join(value(lo, hi) for lo, hi, _ in line.rows),
            "\n".join(text or fine for *_, text in line.rows),
        ]
        for line in k.lines(params)
    ]


def across(rows: Rows, *fill: str) -> list[tuple[Any, ...]]:
    """reportlab's marks for rows of one filled cell: they reach over all columns, on their own ground."""
    marks: list[tuple[Any, ...]] = []
    for y, row in enumerate(rows):
        if row[0] and not any(row[1:]):
            marks += [("SPAN", (0, y), (-1, y)), *(("BACKGROUND", (0, y), (-1, y), one) for one in fill)]
    return marks


def above(rows: Rows, gray: str = "#999999", width: float = 0.4, column: int = 0) -> list[tuple[Any, ...]]:
    """A line over each row that begins a parameter, and one under the last."""
    starts = [("LINEABOVE", (0, y), (-1, y), width, gray) for y, row in enumerate(rows) if row[column]]
    return [*starts, ("LINEBELOW", (0, -1), (-1, -1), width, gray)]


def columns(rows: Rows, gap: int = 2) -> list[str]:
    """Lines of columns as wide as their widest cell."""
    widths = [max(len(row[x]) for row in rows) + gap for x in range(len(rows[0]))]
    return ["".join(t.ljust(w) for t, w in zip(row, widths, strict=True)).rstrip() for row in rows]


def blanks(rows: Rows) -> list[str]:
    """Lines of cells with one blank between them; empty cells leave nothing behind."""
    return [" ".join(cell for cell in row if cell) for row in rows]
