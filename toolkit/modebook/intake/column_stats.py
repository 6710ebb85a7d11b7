"""What the cells of one column have in common: which share of them reads as slots, values, hex, percent."""

from __future__ import annotations

import re
from dataclasses import dataclass

from modebook.intake.chart_rows import read_slot_cell
from modebook.intake.grid import Cell
from modebook.intake.lexicon import SURE
from modebook.intake.names import read_name
from modebook.intake.values import ELISIONS, read_values


@dataclass(slots=True)
class Stats:
    """What stands in a column."""

    filled: int = 0
    slots: int = 0
    ranges: int = 0
    values: int = 0
    text: int = 0
    names: int = 0
    percent: int = 0
    hexes: int = 0
    absent: int = 0
    rising: bool = True
    following: int = 0
    """Slot cells that go on where the one before ended."""
    starts: int | None = None
    distinct: int = 0

    def share(self, count: int) -> float:
        """A count as a share of the filled cells."""
        return count / self.filled if self.filled else 0.0


def stats_of(cells: list[Cell]) -> Stats:
    """Count what the cells of one column are."""
    stats = Stats()
    last = 0
    seen: set[str] = set()
    for cell in cells:
        flat = cell.flat
        if not flat or flat in ELISIONS:
            continue
        stats.filled += 1
        seen.add(flat)
        slot = read_slot_cell(flat)
        if slot.kind == "slots":
            stats.slots += 1
            if stats.starts is None:
                stats.starts = min(slot.slots)
            if min(slot.slots) < last and min(slot.slots) != 1:
                stats.rising = False
            stats.following += min(slot.slots) == last + 1
            last = max(slot.slots)
        elif slot.kind == "absent":
            stats.absent += 1
        first = cell.lines[0] if cell.lines else flat
        values = read_values(flat) or read_values(first)
        if values:
            stats.values += 1
            stats.ranges += not values[0].single
            stats.percent += values[0].form == "percent"
            stats.hexes += values[0].form == "hex"
        elif re.search(r"[^\W\d_]{2,}", flat):
            stats.text += 1
            stats.names += read_name(first).score >= SURE
        if re.fullmatch(
            r"(?:0x)?[0-9A-F]{2}(?:\s*\W\s*(?:0x)?[0-9A-F]{2})?", flat, re.IGNORECASE
        ) and re.search(r"[A-F]", flat, re.IGNORECASE):
            stats.hexes += 1
    stats.distinct = len(seen)
    return stats


def texts_of(row: list[Cell]) -> list[str]:
    return [cell.flat for cell in row]
