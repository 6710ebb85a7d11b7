"""Headings over slots that print their number alone (`1. Dimmer`): told from the sections of a manual."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from modebook.intake.grid import Grid, Line, Source
from modebook.intake.headings import SlotHead
from modebook.intake.names import read_name
from modebook.intake.values import read_values

LEAST = 3  # headings in a row
_HEAD = re.compile(r"(?P<a>\d{1,3})(?:\s*[+/&-]\s*(?P<b>\d{1,3}))?\s*(?:[.:)]|\s[-–—])\s+(?P<name>[^\W\d].*)")


def numbered_heads(source: Source) -> dict[str, SlotHead]:
    """The lines `1. Dimmer`, `2. Strobe`, ... of a source that head slots, spaces made single.

    They count from 1 on without a gap, and values stand between nearly each two of them. Sections of a
    manual count as well, and have sentences between them.
    """
    found: dict[str, SlotHead] = {}
    run: dict[str, SlotHead] = {}
    last = valued = 0
    fresh = False
    for leaf in source.leaves:
        for item in leaf.items:
            for text, values in _texts(item):
                head = _head(text)
                if head is None or head.slots[0] not in (1, last + 1):
                    fresh = fresh or values
                    continue
                valued += fresh and bool(run)
                if head.slots[0] == 1:
                    _keep(found, run, valued)
                    run, valued = {}, 0
                run[text], last = head, head.slots[-1]
                fresh = False
    _keep(found, run, valued + fresh)
    return found


def at_numbered_heads(grid: Grid, numbered: Mapping[str, SlotHead]) -> list[Grid | Line]:
    """A table that ran on into such headings, parted at them."""
    found: list[Grid | Line] = [Grid([], grid.place, grid.ruled)]
    for row in grid.rows:
        filled = [cell for cell in row if cell.flat]
        if len(filled) == 1 and filled[0].flat in numbered:
            found += [Line(filled[0].flat, filled[0].place), Grid([], grid.place, grid.ruled)]
        elif isinstance(last := found[-1], Grid):
            last.rows.append(row)
    return [one for one in found if isinstance(one, Line) or one.rows]


def _texts(item: Grid | Line) -> Iterator[tuple[str, bool]]:
    """The lines of an item, and whether values stand in each; a row of one cell is a line."""
    if isinstance(item, Line):
        yield " ".join(item.text.split()), _is_values(item)
        return
    for row in item.rows:
        filled = [cell.flat for cell in row if cell.flat]
        yield filled[0] if len(filled) == 1 else "", _has_values(filled)


def _head(text: str) -> SlotHead | None:
    match = _HEAD.fullmatch(text)
    if not match or len(text) > 60 or text.endswith("."):
        return None
    first, second = int(match["a"]), int(match["b"]) if match["b"] else None
    if not first or (second is not None and second != first + 1):
        return None
    return SlotHead((first,) if second is None else (first, second), match["name"].strip(" :–—-"))


def _keep(found: dict[str, SlotHead], run: dict[str, SlotHead], valued: int) -> None:
    named = sum(read_name(head.name).sure for head in run.values())
    if len(run) >= LEAST and valued >= 0.8 * len(run) and named >= 0.6 * len(run):
        found.update(run)


def _is_values(line: Line) -> bool:
    words = line.text.split()
    return _has_values([words[0] if words else "", line.text, *line.words])


def _has_values(texts: list[str]) -> bool:
    return any(not value.single for text in texts for value in read_values(text))
