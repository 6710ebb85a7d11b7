"""Rarer layouts: a band over each slot's values, number and name in one cell, slots across, lists."""

from __future__ import annotations

from intake.corpus.building import Builder
from intake.corpus.content import M, P
from intake.corpus.grids import C, Element, Grid, Heading, Para, Row
from intake.corpus.layouts.rows import RowStyle, lines


def band_grid(b: Builder, params: tuple[P, ...], style: RowStyle) -> Grid:
    """A row over the whole width names the slot; its values follow below."""
    grid = Grid([[C(b.head("value")), C(b.head("text"))]], widths=[34, 110])
    word = b.head("word")
    for line in lines(params, b.say("finetext")):
        grid.body.append([C(f"{word} {line.slot} – {line.label}", cols=2), None])
        grid.body += [[C(style.values(lo, hi)), C(text)] for lo, hi, text in line.entries]
    return grid


def joined_grid(b: Builder, params: tuple[P, ...], style: RowStyle) -> Grid:
    """Slot number and name share a cell: `4 Strobe`."""
    grid = Grid(
        [[C(f"{b.head('slot')} / {b.head('label')}"), C(b.head("value")), C(b.head("text"))]],
        widths=[52, 28, 80],
    )
    for line in lines(params, b.say("finetext")):
        for number, (lo, hi, text) in enumerate(line.entries):
            name = C(f"{line.slot} {line.label}", rows=len(line.entries)) if number == 0 else None
            grid.body.append([name, C(style.values(lo, hi)), C(text)])
    return grid


def stacked_grid(b: Builder, params: tuple[P, ...], style: RowStyle) -> Grid:
    """Both numbers of a 16-bit parameter in one cell, one above the other, one row a parameter or range."""
    cols = ["slot", "label", "value", "text"]
    grid = Grid([[C(b.head(col)) for col in cols]], widths=[20, 46, 34, 64])
    for p in params:
        scale = 256 ** (len(p.slots) - 1)
        entries = [(r.lo * scale, r.hi * scale + scale - 1, r.text) for r in p.ranges] or [(0, p.top, p.text)]
        slots = "\n".join(str(slot) for slot in p.slots)
        for number, (lo, hi, text) in enumerate(entries):
            lead = (
                [C(slots, rows=len(entries)), C(p.label, rows=len(entries))] if number == 0 else [None, None]
            )
            grid.body.append([*lead, C(style.values(lo, hi)), C(text)])
    return grid


def across_grid(b: Builder, modes: list[M], absent: str = "—") -> Grid:
    """Modes down, slots across."""
    most = max(mode.footprint for mode in modes)
    head: Row = [C(b.head("slot")), *(C(str(slot)) for slot in range(1, most + 1))]
    grid = Grid([head], widths=[24.0, *([24.0] * most)])
    for mode in modes:
        own = {
            p.slots[n]: (p.label if n == 0 else p.fine[n - 1])
            for p in mode.params
            for n in range(len(p.slots))
        }
        grid.body.append([C(mode.title), *(C(own.get(slot, absent)) for slot in range(1, most + 1))])
    return grid


def list_elements(b: Builder, params: tuple[P, ...], style: RowStyle) -> list[Element]:
    """A heading a slot, then a line a range with a colon."""
    made: list[Element] = []
    word = b.head("word")
    for line in lines(params):
        made.append(Heading(f"{word} {line.slot} ({line.label})", 3))
        made += [
            Para(f"{style.values(lo, hi)}: {text}" if text else style.values(lo, hi))
            for lo, hi, text in line.entries
        ]
    return made
