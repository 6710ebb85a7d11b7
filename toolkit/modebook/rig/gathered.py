"""The units of a rig gathered by group and by position: a unit over several rows stands once."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from modebook.rig.reading import PatchedRow, RigReading

By = Literal["group", "position"]


@dataclass(frozen=True, slots=True)
class Gathered:
    """Units that belong together."""

    by: By
    name: str
    """As the first of its rows writes it."""
    rows: tuple[PatchedRow, ...]
    """One row for each unit, in the order of the file."""


def units_once(reading: RigReading) -> Iterator[PatchedRow]:
    """The rows of a rig, those aside that are further parts of a unit that came before."""
    seen: set[tuple[str, int]] = set()
    for row in reading.rows:
        if row.mode is not None and row.unit.number and len(row.mode.blocks) > 1:
            key = (row.unit.number.casefold(), id(row.mode))
            if key in seen:
                continue
            seen.add(key)
        yield row


def gathered(reading: RigReading, by: By) -> list[Gathered]:
    """Groups, or positions, of at least two units, in the order of the file; case does not count."""
    found: dict[str, tuple[str, list[PatchedRow]]] = {}
    for row in units_once(reading):
        name = " ".join((row.unit.group if by == "group" else row.unit.position).split())
        if name:
            found.setdefault(name.casefold(), (name, []))[1].append(row)
    return [Gathered(by, name, tuple(rows)) for name, rows in found.values() if len(rows) > 1]
