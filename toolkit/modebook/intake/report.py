"""What a review of a draft is drawn from: each page's rows that were read, their boxes, what came of them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from modebook.intake.grid import Cell, Grid, Leaf, Line, Place
from modebook.intake.readings import Reading

if TYPE_CHECKING:
    from modebook.intake.draft import Draft

Spot = tuple[int | None, str | None, int | None, int | None]
"""Page, sheet, table and row: what tells two rows of a source apart."""


@dataclass(frozen=True, slots=True)
class ReadRow:
    """A row of the source and what was made of it; a row that gave several things is there for each."""

    pointer: str
    printed: str
    place: Place
    doubts: tuple[int, ...] = ()
    """The doubts about it, by their places in the document's list."""


@dataclass(frozen=True, slots=True)
class Unread:
    """Text that went into no parameter: a heading, prose, another table; or a row that was not understood."""

    text: str
    place: Place
    in_table: bool
    doubts: tuple[int, ...] = ()


@dataclass(slots=True)
class ReadPage:
    """One page, or one sheet, or a whole text."""

    leaf: Leaf
    rows: list[ReadRow] = field(default_factory=list)
    unread: list[Unread] = field(default_factory=list)


def report_pages(draft: Draft) -> list[ReadPage]:
    """Each page with the rows that were read, in the order of the page; open doubts stand at what they are
    about, else at the row of the source that they name.
    """
    open_ = {
        index: doubt.pointer for index, doubt in enumerate(draft.document.doubts) if doubt.settled is None
    }
    pages = {(leaf.number, leaf.sheet): ReadPage(leaf) for leaf in draft.source.leaves}
    used: set[Spot] = set()
    tied: set[int] = set()
    for reading in draft.readings:
        page = pages.get((reading.place.page, reading.place.sheet))
        if page is None:
            continue
        used.add(spot(reading.place))
        page.rows.append(_row(reading, open_))
        tied.update(page.rows[-1].doubts)
    by_place: dict[str, list[int]] = {}
    for index in open_.keys() - tied:
        by_place.setdefault(draft.document.doubts[index].place or "", []).append(index)
    for page in pages.values():
        page.rows.sort(key=lambda row: row.place.box[1] if row.place.box else 0.0)
        page.unread = [one for one in _texts(page.leaf) if spot(one.place) not in used]
        page.unread = [
            Unread(one.text, one.place, one.in_table, tuple(sorted(by_place.get(str(one.place), ()))))
            for one in page.unread
        ]
    return list(pages.values())


def spot(place: Place) -> Spot:
    """What tells a row of the source apart from others."""
    return place.page, place.sheet, place.table, place.row


def row_place(row: Sequence[Cell]) -> Place:
    """Where a row of a grid stands: its lowest cell's place, since a merged one begins further up."""
    return max((cell.place for cell in row), key=lambda place: place.row or 0)


def _texts(leaf: Leaf) -> list[Unread]:
    found: list[Unread] = []
    for item in leaf.items:
        if isinstance(item, Line):
            found.append(Unread(item.text, item.place, False))
        elif isinstance(item, Grid):
            for row in item.rows:
                text = " | ".join(cell.flat for cell in row if cell.flat)
                if text:
                    found.append(Unread(text, row_place(row), True))
    return found


def _row(reading: Reading, open_: dict[int, str]) -> ReadRow:
    mine = tuple(index for index, pointer in open_.items() if _about(pointer, reading.pointer))
    return ReadRow(reading.pointer, reading.printed, reading.place, mine)


def _about(doubt: str, pointer: str) -> bool:
    """Whether a doubt's pointer is that of a row, or of a part of it that has no row of its own."""
    if doubt == pointer:
        return True
    below = doubt.removeprefix(pointer + "/")
    return below != doubt and not below.startswith(("ranges/", "parameters/", "cells/"))
