"""cells-split: a mode that continues into the next universe parts its cells there."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import lru_cache

from modebook.checks.finding import Fault
from modebook.checks.rule import Example, Rule
from modebook.documents.address import SLOTS_PER_UNIVERSE, Address
from modebook.documents.layout import BlockLayout
from modebook.rig.reading import PatchedRow, RigReading
from modebook.rig.rules._text import about, address_figure

Ends = tuple[tuple[tuple[int, ...], int, int], ...]
"""Cells: their numbers, their first and their last slot."""


def check(reading: RigReading) -> Iterable[Fault]:
    """A fault for each row of which the end of a universe lies within a block of cells."""
    ends: dict[int, Ends] = {}
    for row in reading.rows:
        if row.mode is None or not row.mode.mode.continues or row.block is None or not row.first:
            continue
        if Address.from_absolute(row.first).universe == Address.from_absolute(row.last).universe:
            continue
        if id(row.block) not in ends:
            ends[id(row.block)] = _cells(row.block)
        cells = ends[id(row.block)]
        cut = SLOTS_PER_UNIVERSE - (row.first - 1) % SLOTS_PER_UNIVERSE
        split = _split(cells, cut, row.block.footprint)
        if split or len({_home(row, cell[1]) for cell in cells}) > 1:
            yield _fault(row, cells, cut, split)


def _cells(block: BlockLayout) -> Ends:
    """The innermost cells of a block, in the order of their slots."""
    found: dict[tuple[str, tuple[int, ...]], list[int]] = {}
    for placed in block.placed:
        if placed.cell and placed.slots:
            holder = placed.pointer.rpartition("/parameters/")[0]
            found.setdefault((holder, placed.cell), []).extend(placed.slots)
    cells = [(cell, min(slots), max(slots)) for (_, cell), slots in found.items()]
    return tuple(sorted(cells, key=lambda cell: cell[1:]))


def _home(row: PatchedRow, slot: int) -> int:
    """The universe in which a slot of the row's block lies."""
    return (row.first - 1 + slot - 1) // SLOTS_PER_UNIVERSE + 1


@lru_cache(maxsize=1024)
def _split(cells: Ends, cut: int, footprint: int) -> Ends:
    """The cells that have slots on both sides of the end of a universe; `cut` slots lie in the first one."""
    cuts = range(cut, footprint, SLOTS_PER_UNIVERSE)
    return tuple(cell for cell in cells if any(cell[1] <= at < cell[2] for at in cuts))


def _fault(row: PatchedRow, cells: Ends, cut: int, split: Ends) -> Fault:
    assert row.block is not None  # check looked
    start = Address.from_absolute(row.first)
    figure: dict[str, object] = {
        **about(row),
        "universe": start.universe,
        "slots_before": cut,
        "cells": len(cells),
        "cells_split": [list(cell[0]) for cell in split],
    }
    if not split:
        home = min(_home(row, cell[1]) for cell in cells)
        last = max((cell for cell in cells if _home(row, cell[1]) == home), key=lambda cell: cell[2])
        said = f"its cells lie in several universes: cell {_name(last[0])} is the last in universe {home}"
        help_ = (
            "have both universes sent by one gateway, or in step with each other, where cells run a pattern: "
            "no more slots"
        )
        figure["cost_slots"] = 0
        return Fault("address", said, figure, help_, severity="info", unit=row.unit.number, row=row.unit.row)
    number, first, last_slot = split[0]
    home = _home(row, first)
    come = home * SLOTS_PER_UNIVERSE - (row.first - 1 + first - 1)
    said = (
        f"the end of universe {home} cuts cell {_name(number)}: slots {first} to {last_slot} of the mode, of "
        f"which {come} come in universe {home} and the others in the next"
    )
    if len(split) > 1:
        said += f"; {len(split) - 1} more cells are cut too"
    shift = _shift(cells, row)
    if shift is None:
        help_ = "no start address in this universe keeps its cells whole: choose another mode"
        figure["cost_slots"] = None
    else:
        at = Address.from_absolute(row.first + shift)
        figure |= {"whole_from": address_figure(at.absolute), "cost_slots": 0}
        help_ = f"from {at} on its cells stay whole, if those slots are free: no more slots"
    return Fault("address", said, figure, help_, unit=row.unit.number, row=row.unit.row)


def _name(cell: Sequence[int]) -> str:
    return ".".join(str(number) for number in cell)


def _shift(cells: Ends, row: PatchedRow) -> int | None:
    """How many slots the start must move, within its universe, so that no cell is cut; the fewest."""
    assert row.block is not None
    address = (row.first - 1) % SLOTS_PER_UNIVERSE + 1
    for distance in range(1, SLOTS_PER_UNIVERSE):
        for shift in (distance, -distance):
            if 1 <= address + shift <= SLOTS_PER_UNIVERSE and not _split(
                cells, SLOTS_PER_UNIVERSE - address - shift + 1, row.block.footprint
            ):
                return shift
    return None


_CELL = [
    {"parameter": "red", "slots": [1]},
    {"parameter": "green", "slots": [2]},
    {"parameter": "blue", "slots": [3]},
]
_BAR = {
    "model": "Bar",
    "modes": [
        {
            "name": name,
            "continues": True,
            "parameters": [],
            "cells": [{"count": count, "first": 1, "stride": 3, "parameters": _CELL}],
        }
        for name, count in (("Pixels", 200), ("Pairs", 100))
    ],
}

RULE = Rule(
    name="cells-split",
    severity="warning",
    summary="The end of a universe cuts a cell of a mode that continues in the next.",
    checks=(
        "For modes that continue past slot 512: where the end of the universe lies among the slots of each "
        "innermost cell. A cell that is cut is a warning, with the nearest start address at which none is. "
        "A block of cells of which some lie in one universe and some in the next, each whole, is told for "
        "information. Modes that end at 512 are past-universe-end's."
    ),
    why=(
        "Two universes are two packets. A cell that is cut gets its red now and its blue a packet later, "
        "and a pattern over both halves tears where they meet."
    ),
    bad=Example(
        "Cells of three slots from 1/1 on: the 171st is cut after its second slot.",
        {"fixtures": [_BAR], "patch": "unit,fixture,mode,address\n1,Bar,Pixels,1/1\n"},
    ),
    good=Example(
        "In pairs the cells end at slot 300.",
        {"fixtures": [_BAR], "patch": "unit,fixture,mode,address\n1,Bar,Pairs,1/1\n"},
    ),
    references=("ANSI E1.11: at most 512 data slots in a packet",),
    check=check,
)
