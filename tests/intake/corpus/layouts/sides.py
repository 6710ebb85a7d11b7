"""Several modes side by side, and the matrix of slots by modes."""

from __future__ import annotations

from dataclasses import replace

from intake.corpus.building import Builder
from intake.corpus.content import M, P
from intake.corpus.grids import C, Grid, Row
from intake.corpus.layouts.rows import RowStyle


def spread(names: list[tuple[str, tuple[str, ...]]], items: list[tuple[P, list[bool | int]]]) -> list[M]:
    """Modes out of one list of parameters; an item says for each mode how many bytes it takes (0: absent)."""
    modes = []
    for index, (title, accepted) in enumerate(names):
        at, params = 1, []
        for p, widths in items:
            width = int(widths[index])
            if width:
                params.append(p.at(*range(at, at + width)))
                at += width
        modes.append(M(title, accepted, at - 1, tuple(params)))
    return modes


def side_rows(modes: list[M], order: list[P]) -> list[tuple[P, int, str, list[int | None]]]:
    """The lines of a side by side chart: parameter, byte, label, and the slot in each mode."""
    found = []
    for p in order:
        for byte in range(1 + len(p.fine)):
            slots: list[int | None] = []
            for mode in modes:
                same = next((q for q in mode.params if q.label == p.label and q.words == p.words), None)
                slots.append(same.slots[byte] if same and byte < len(same.slots) else None)
            found.append((p, byte, p.label if byte == 0 else p.fine[byte - 1], slots))
    return found


def side_grid(
    b: Builder,
    modes: list[M],
    order: list[P],
    style: RowStyle,
    absent: str = "-",
    cols: tuple[str, ...] = ("label", "value", "text"),
    numbers_last: bool = False,
) -> Grid:
    """Slot number columns, one a mode, beside one list of functions."""
    word = b.head("slot")
    titles: Row = [C(mode.title) for mode in modes]
    texts: Row = [C(b.head(col)) for col in cols]
    width = {"label": 36.0, "value": 20.0, "text": 56.0}
    numbers = [14.0 if len(modes) < 5 else 11.0] * len(modes)
    if style.named_row:
        top: Row = [
            C(word, cols=len(modes)),
            *([None] * (len(modes) - 1)),
            *(C(t.text, rows=2) for t in texts if t),
        ]
        head = [top, [*titles, *([None] * len(texts))]]
    elif numbers_last:
        head = [[*texts, *titles]]
    else:
        head = [[*titles, *texts]]
    side = [width[col] for col in cols]
    grid = Grid(head, widths=[*side, *numbers] if numbers_last else [*numbers, *side])
    finetext = b.say("finetext")
    for p, byte, label, slots in side_rows(modes, order):
        entries = [(r.lo, r.hi, r.text) for r in p.ranges] or [(0, 255, p.text)]
        if byte:
            entries = [(0, 255, finetext)]
        for number, (lo, hi, text) in enumerate(entries):
            names = {"label": label, "value": style.values(lo, hi), "text": text}
            left: Row = []
            for slot in slots:
                left.append(_merged(absent if slot is None else str(slot), number, len(entries), style))
            right: Row = []
            for col in cols:
                own = col == "label"
                right.append(_merged(names[col], number, len(entries), style) if own else C(names[col]))
            grid.body.append([*right, *left] if numbers_last else [*left, *right])
    return grid


def _merged(text: str, number: int, count: int, style: RowStyle) -> C | None:
    if not style.merge:
        return C(text if number == 0 else "")
    return C(text, rows=count) if number == 0 else None


def matrix_grid(b: Builder, modes: list[M], absent: str = "-") -> Grid:
    """Slots down, modes across, a parameter's name in each cell."""
    head: Row = [C(b.head("slot")), *(C(mode.title) for mode in modes)]
    grid = Grid([head], widths=[16.0, *([40.0] * len(modes))])
    names: list[dict[int, str]] = []
    for mode in modes:
        own: dict[int, str] = {}
        for p in mode.params:
            for byte, slot in enumerate(p.slots):
                own[slot] = p.label if byte == 0 else p.fine[byte - 1]
        names.append(own)
    for slot in range(1, max(mode.footprint for mode in modes) + 1):
        grid.body.append([C(str(slot)), *(C(own.get(slot, absent)) for own in names)])
    return grid


def bare(p: P) -> P:
    """A parameter of which a matrix prints nothing but the name."""
    return replace(p, text="", spans=(), ranges=())
