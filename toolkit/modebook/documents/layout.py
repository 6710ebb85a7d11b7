"""Where every byte of a mode sits: parameters placed slot by slot, cells repeated, parts apart."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from modebook.documents.modes import Block, Cells, Mode, Parameter

Holder = Mode | Block | Cells
"""What holds parameters and cells."""


@dataclass(slots=True)
class Placed:
    """One parameter at its slots; a parameter of a cell block is placed once for each cell."""

    parameter: Parameter
    pointer: str
    """JSON pointer of the parameter in its document."""
    slots: tuple[int, ...]
    """Its bytes, most significant first, counted from 1 in its block; empty without a slot of its own."""
    cell: tuple[int, ...] = ()
    """The number of the cell (from 1), outermost block first; empty outside cells."""


@dataclass(slots=True)
class BlockLayout:
    """The slots behind one start address."""

    key: str | None
    """The part's key; None for the mode's own slots."""
    pointer: str
    footprint: int
    placed: list[Placed]


def blocks(mode: Mode, pointer: str = "") -> list[BlockLayout]:
    """The layout of a mode, one block for each start address, its own slots first.

    A mode that has parts and no slots of its own yields the parts only. `pointer` is the mode's own
    JSON pointer. The sizes are bounded by the documents' models (65,536 slots a mode).
    """
    own = mode.footprint - sum(part.footprint for part in mode.parts)
    found: list[BlockLayout] = []
    if own > 0 or mode.parameters or mode.cells or not mode.parts:
        found.append(BlockLayout(None, pointer, own, list(_placed(mode, pointer))))
    for index, part in enumerate(mode.parts):
        at = f"{pointer}/parts/{index}"
        found.append(BlockLayout(part.key, at, part.footprint, list(_placed(part, at))))
    return found


def all_parameters(mode: Mode, pointer: str = "") -> Iterator[tuple[Parameter, str]]:
    """Every parameter of a mode as written, once each, with its JSON pointer: cells are not repeated."""
    yield from _written(mode, pointer)
    for index, part in enumerate(mode.parts):
        yield from _written(part, f"{pointer}/parts/{index}")


def _written(holder: Holder, pointer: str) -> Iterator[tuple[Parameter, str]]:
    for index, parameter in enumerate(holder.parameters):
        yield parameter, f"{pointer}/parameters/{index}"
    for index, block in enumerate(holder.cells):
        yield from _written(block, f"{pointer}/cells/{index}")


def _placed(holder: Holder, pointer: str) -> Iterator[Placed]:
    for index, parameter in enumerate(holder.parameters):
        yield Placed(parameter, f"{pointer}/parameters/{index}", tuple(parameter.slots))
    for index, block in enumerate(holder.cells):
        yield from _repeated(block, f"{pointer}/cells/{index}")


def _repeated(block: Cells, pointer: str) -> Iterator[Placed]:
    inner = list(_placed(block, pointer))
    for number in range(block.count):
        offset = block.first - 1 + number * block.stride
        for placed in inner:
            yield Placed(
                placed.parameter,
                placed.pointer,
                tuple(slot + offset for slot in placed.slots),
                (number + 1, *placed.cell),
            )
