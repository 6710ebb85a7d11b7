"""Which units of a patch take the same slots: slot by slot, over all universes."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from modebook.rig.reading import PatchedRow

MOST_OTHERS = 8
"""Other units that are named for one unit: past that, one slip has hit a whole universe."""


@dataclass(frozen=True, slots=True)
class Meeting:
    """Two rows that take slots in common; `later` stands further down the file."""

    later: PatchedRow
    other: PatchedRow
    first: int
    """The absolute address of the first slot that both take."""
    last: int
    twins: bool
    """Whether they are the same fixture in the same mode at the same address."""


def meetings(rows: Iterable[PatchedRow]) -> Iterator[Meeting]:
    """Every row with the earlier rows that it meets, at most MOST_OTHERS for one row, in the file's order."""
    takers: dict[int, list[PatchedRow]] = {}
    for row in rows:
        if not row.first:
            continue
        others: dict[int, PatchedRow] = {}
        for at in range(row.first, row.last + 1):
            here = takers.get(at)
            if here is None:
                takers[at] = [row]
                continue
            for other in here:
                others[id(other)] = other
            if len(here) < MOST_OTHERS:
                here.append(row)
        for other in sorted(others.values(), key=lambda one: one.unit.row)[:MOST_OTHERS]:
            yield Meeting(
                row, other, max(row.first, other.first), min(row.last, other.last), are_twins(row, other)
            )


def are_twins(row: PatchedRow, other: PatchedRow) -> bool:
    """Whether two rows listen to the same slots in the same way."""
    return (
        row.first == other.first
        and row.identity == other.identity
        and row.modes == other.modes
        and row.part == other.part
    )
