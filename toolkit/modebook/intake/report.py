"""What a review of a draft is drawn from: each page's rows that were read, their boxes, what came of them."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from modebook.intake.grid import Box, Grid, Line
from modebook.intake.readings import Reading

if TYPE_CHECKING:
    from modebook.documents.doubts import Doubt
    from modebook.intake.draft import Draft


@dataclass(frozen=True, slots=True)
class ReadRow:
    """A row of the source and what was made of it."""

    pointer: str
    printed: str
    place: str
    box: Box | None
    doubts: tuple[Doubt, ...] = ()


@dataclass(slots=True)
class ReadPage:
    """One page, or one sheet, or a whole text."""

    number: int | None
    sheet: str | None
    width: float | None
    height: float | None
    rows: list[ReadRow] = field(default_factory=list)
    unread: list[tuple[str, Box | None]] = field(default_factory=list)
    """Text that went into no parameter: headings, prose, other tables."""


def report_pages(draft: Draft) -> list[ReadPage]:
    """Each page with the rows that were read, in the order of the page; doubts stand at what they are
    about.
    """
    by_pointer: dict[str, list[Doubt]] = {}
    for doubt in draft.document.doubts:
        by_pointer.setdefault(doubt.pointer, []).append(doubt)
    pages = {
        (leaf.number, leaf.sheet): ReadPage(leaf.number, leaf.sheet, leaf.width, leaf.height)
        for leaf in draft.source.leaves
    }
    used: set[tuple[int | None, str | None, int | None, int | None]] = set()
    for reading in draft.readings:
        page = pages.get((reading.place.page, reading.place.sheet))
        if page is None:
            continue
        used.add((reading.place.page, reading.place.sheet, reading.place.table, reading.place.row))
        page.rows.append(_row(reading, by_pointer))
    for leaf in draft.source.leaves:
        page = pages[leaf.number, leaf.sheet]
        for item in leaf.items:
            if isinstance(item, Line):
                page.unread.append((item.text, item.place.box))
            elif isinstance(item, Grid):
                for row in item.rows:
                    place = row[0].place
                    text = " | ".join(cell.flat for cell in row if cell.flat)
                    if text and (place.page, place.sheet, place.table, place.row) not in used:
                        page.unread.append((text, place.box))
        page.rows.sort(key=lambda row: row.box[1] if row.box else 0.0)
    return list(pages.values())


def _row(reading: Reading, doubts: dict[str, list[Doubt]]) -> ReadRow:
    mine = [doubt for pointer, some in doubts.items() if _about(pointer, reading.pointer) for doubt in some]
    return ReadRow(reading.pointer, reading.printed, str(reading.place), reading.place.box, tuple(mine))


def _about(doubt: str, pointer: str) -> bool:
    """Whether a doubt's pointer is that of a row, or of a part of it that has no row of its own."""
    if doubt == pointer:
        return True
    below = doubt.removeprefix(pointer + "/")
    return below != doubt and not below.startswith(("ranges/", "parameters/", "cells/"))
