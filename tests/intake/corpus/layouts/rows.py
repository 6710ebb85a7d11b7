"""One table a mode: a row for each range, in many orders of columns."""

from __future__ import annotations

from dataclasses import dataclass, field

from intake.corpus.building import Builder
from intake.corpus.content import P
from intake.corpus.grids import C, Grid, Row
from intake.corpus.values import Values, hexed, percent

WIDTHS = {
    "slot": 14,
    "label": 34,
    "value": 22,
    "text": 62,
    "default": 16,
    "from": 14,
    "to": 14,
    "pct": 20,
    "hex": 22,
    "msb": 13,
    "lsb": 13,
    "both": 80,
}


@dataclass
class Line:
    """One slot of a chart: which parameter's byte it is, its label, and its ranges as printed."""

    p: P
    byte: int
    slot: int
    label: str
    entries: list[tuple[int, int, str]]
    default: int | None = None
    grid: dict[str, str] = field(default_factory=dict)


def lines(params: tuple[P, ...], finetext: str = "", sort: bool = True) -> list[Line]:
    """The slots of a mode in order, coarse and fine each a line of its own."""
    made = []
    for p in params:
        for byte, slot in enumerate(p.slots):
            if byte == 0:
                entries = [(r.lo, r.hi, r.text) for r in p.ranges] or [(0, 255, p.text)]
                made.append(Line(p, 0, slot, p.label, entries, p.default))
            else:
                made.append(Line(p, byte, slot, p.fine[byte - 1], [(0, 255, finetext)], p.fine_default))
    return sorted(made, key=lambda line: line.slot) if sort else made


@dataclass
class RowStyle:
    """How the rows are set: merged or only named in their first row, names as a row of their own."""

    values: Values
    merge: bool = True
    named_row: bool = False
    hexes: str = "h"
    titles: dict[str, str] = field(default_factory=dict)
    label_first: bool = False


def _cell(col: str, line: Line, entry: tuple[int, int, str], style: RowStyle) -> str:
    lo, hi, text = entry
    match col:
        case "value":
            return style.values(lo, hi)
        case "from":
            return style.values.number(lo)
        case "to":
            return style.values.number(hi)
        case "pct":
            return percent(lo, hi)
        case "hex":
            return hexed(lo, hi, style.hexes)
        case "text":
            return text
        case "both":
            if len(line.entries) > 1 or line.p.ranges:
                return text
            return f"{line.label}, {text}" if text else line.label
    raise ValueError(col)


def rows_grid(b: Builder, params: tuple[P, ...], cols: list[str], style: RowStyle) -> Grid:
    """The table of one mode; `cols` out of slot, label, value, text, both, default, from, to, pct, hex."""
    names = {"both": "label"}
    head: Row = [C(style.titles.get(col) or b.head(names.get(col, col))) for col in cols]
    grid = Grid([head], widths=[WIDTHS[col] for col in cols])
    finetext = b.say("finetext") if "text" in cols else ""
    for line in lines(params, finetext):
        entries: list[tuple[int, int, str] | None] = list(line.entries)
        if "both" in cols and line.p.ranges and line.byte == 0:
            entries.insert(0, None)
        for number, entry in enumerate(entries):
            row: Row = []
            for col in cols:
                if col in ("slot", "label", "default"):
                    row.append(_side(col, line, number, len(entries), style))
                elif entry is None:
                    row.append(C(line.label if col == "both" else ""))
                else:
                    row.append(C(_cell(col, line, entry, style)))
            grid.body.append(row)
    return grid


def _side(col: str, line: Line, number: int, count: int, style: RowStyle) -> C | None:
    default = "" if line.default is None else str(line.default)
    text = {"slot": line.p.printed_slots or str(line.slot), "label": line.label, "default": default}[col]
    if not style.merge:
        return C(text if number == 0 else "")
    return C(text, rows=count) if number == 0 else None


def pair_grid(b: Builder, params: tuple[P, ...], style: RowStyle) -> Grid:
    """`5-6` before one range 0-65535: a row for each parameter and range, ranges in full resolution."""
    cols = ["slot", "label", "value", "text"]
    grid = Grid([[C(b.head(col)) for col in cols]], widths=[18, 36, 30, 60])
    for p in params:
        scale = 256 ** (len(p.slots) - 1)
        entries = [(r.lo * scale, r.hi * scale + scale - 1, r.text) for r in p.ranges] or [(0, p.top, p.text)]
        slots = f"{p.slots[0]}-{p.slots[-1]}" if len(p.slots) > 1 else str(p.slots[0])
        for number, (lo, hi, text) in enumerate(entries):
            first = number == 0
            row: Row = [
                C(slots, rows=len(entries)) if first else None,
                C(p.label, rows=len(entries)) if first else None,
            ]
            grid.body.append([*row, C(style.values(lo, hi)), C(text)])
    return grid


def weight_grid(b: Builder, params: tuple[P, ...], style: RowStyle, lsb_first: bool = False) -> Grid:
    """Separate number columns for the more and the less significant byte."""
    numbers = ["lsb", "msb"] if lsb_first else ["msb", "lsb"]
    cols = [*numbers, "label", "value", "text"]
    grid = Grid([[C(b.head(col)) for col in cols]], widths=[13, 13, 36, 30, 60])
    for p in params:
        scale = 256 ** (len(p.slots) - 1)
        entries = [(r.lo * scale, r.hi * scale + scale - 1, r.text) for r in p.ranges] or [(0, p.top, p.text)]
        fine = str(p.slots[1]) if len(p.slots) > 1 else "-"
        pair = {"msb": str(p.slots[0]), "lsb": fine}
        for number, (lo, hi, text) in enumerate(entries):
            lead: Row = [C(pair[col], rows=len(entries)) if number == 0 else None for col in numbers]
            name = C(p.label, rows=len(entries)) if number == 0 else None
            grid.body.append([*lead, name, C(style.values(lo, hi)), C(text)])
    return grid


def two_column_grid(left: Grid, half: int) -> Grid:
    """One table folded into two column sets across the page; `half` is where the second set begins."""
    gap = [C("")]
    body = []
    first, second = left.body[:half], left.body[half:]
    blank: Row = [C("") for _ in range(left.width)]
    for index in range(max(len(first), len(second))):
        a = first[index] if index < len(first) else blank
        z = second[index] if index < len(second) else blank
        body.append([*a, *gap, *z])
    head: Row = [*left.head[0], *gap, *left.head[0]]
    return Grid([head], body, [*left.widths, 4, *left.widths])


def group_grid(b: Builder, groups: list[tuple[str, list[tuple[int, str]]]], style: RowStyle) -> Grid:
    """A group label merged beside rows: pixel 1 over its red, green and blue."""
    grid = Grid([[C(""), C(b.head("slot")), C(b.head("label")), C(b.head("value"))]], widths=[30, 16, 50, 24])
    for name, rows in groups:
        for number, (slot, label) in enumerate(rows):
            first = C(name, rows=len(rows)) if number == 0 else None
            grid.body.append([first, C(str(slot)), C(label), C(style.values(0, 255))])
    return grid
