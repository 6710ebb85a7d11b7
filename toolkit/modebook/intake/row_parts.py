"""Parts the rows of one table into modes: at headings inside it, and where slots begin again at 1."""

from __future__ import annotations

from modebook.intake.chart_rows import BLANK, ChartRow, SlotCell
from modebook.intake.headings import ModeHead, read_mode_head, read_slot_head


def by_heads(rows: list[ChartRow]) -> list[tuple[list[ChartRow], ModeHead | None]]:
    """Rows parted where a heading inside the table names another mode; other headings give their group."""
    found: list[tuple[list[ChartRow], ModeHead | None]] = [([], None)]
    for row in rows:
        if not row.whole:
            found[-1][0].append(row)
            continue
        head = read_mode_head(row.whole)
        if head is None and row.heads:
            head = ModeHead(row.whole, row.whole, None, None, True)
        if head is not None and (head.strong or head.footprint):
            found.append(([], head))
            continue
        slot = read_slot_head(row.whole)
        if slot is not None:
            found[-1][0].append(
                ChartRow(row.place, {0: SlotCell("slots", slot.slots)}, name=slot.name, raw=row.raw)
            )
            continue
        found[-1][0].append(row)
    return [(piece, head) for piece, head in found if piece]


def by_restarts(rows: list[ChartRow]) -> list[list[ChartRow]]:
    """Rows parted where the slots begin again at 1: another mode without a heading."""
    found: list[list[ChartRow]] = [[]]
    last = 0
    for index, row in enumerate(rows):
        cell = row.slots.get(0, BLANK)
        if cell.kind == "slots" and min(cell.slots) == 1 and last > 2 and len(row.slots) == 1:
            following = [
                min(r.slots[0].slots) for r in rows[index + 1 :] if r.slots.get(0, BLANK).kind == "slots"
            ]
            if following and following[0] in (1, 2, 3):
                found.append([])
                last = 0
        if cell.kind == "slots":
            last = max(cell.slots)
        found[-1].append(row)
    return [piece for piece in found if piece]
