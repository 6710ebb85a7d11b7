"""A mode's chart for a page: its slots as bytes with addresses, its ranges with their places on a bar."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from modebook.documents.bits import bits, full_scale
from modebook.documents.fixture import Fixture
from modebook.documents.layout import BlockLayout, all_parameters, blocks
from modebook.documents.modes import Parameter
from modebook.render.chart_rows import ChartLine, chart_lines
from modebook.render.chart_text import CAUTION, source_words
from modebook.words.parameters import PARAMETERS

BAR = 1000
"""How long a bar is in its own units; it is drawn as wide as there is room."""
OPEN_RANGES = 10
"""Ranges of a parameter up to which all of them stand open on the page."""


@dataclass(frozen=True, slots=True)
class SlotByte:
    """One byte of a parameter."""

    slot: int
    """Counted from 1 in its mode or part; in cells, that of the first cell."""
    byte: str
    """`coarse`, `fine`, `finer`, `finest`; empty for an only byte."""
    address: str
    """Where it sits with the start address given; empty without one, and in parts."""
    part: str = ""
    """The part, by its pointer within the mode, that it counts in; empty for the mode's own slots."""


@dataclass(frozen=True, slots=True)
class RangeRow:
    """A stretch of values, and where it lies on its parameter's bar."""

    from_value: int
    to_value: int
    values: str
    words: str
    hazard: str
    parameter: str
    x: float
    width: float


@dataclass(frozen=True, slots=True)
class ChartRow:
    """A row: of kind `parameter`, or `block`, which heads cells or a part."""

    kind: str
    depth: int
    words: str
    pointer: str
    slots: tuple[SlotByte, ...] = ()
    cells: str = ""
    """How the slots go on from cell to cell."""
    parameter: str = ""
    name: str = ""
    label: str = ""
    bits: int = 0
    top: int = 0
    ranges: tuple[RangeRow, ...] = ()
    open: bool = True
    default: str = ""
    """The printed default; empty where none is printed."""
    part: str = ""
    """The pointer, within the mode, of the part that a block heads; empty where it heads cells."""


@dataclass(frozen=True, slots=True)
class ModeChart:
    """A mode's chart."""

    anchor: str
    name: str
    number: int | None
    footprint: int
    given: str
    source: str
    note: str
    rows: tuple[ChartRow, ...]
    caution: str
    continues: bool
    past: str
    """What is wrong with the start address for this mode; empty where nothing is."""
    own_footprint: int
    """Slots behind the mode's own start address: without those of its parts."""


@dataclass(slots=True)
class _Cells:
    """Where a parameter's cells are."""

    first: tuple[int, ...]
    part: str = ""
    count: int = 0
    steps: list[int] = field(default_factory=list)


def mode_chart(fixture: Fixture, index: int, address: int | None = None) -> ModeChart:
    """A mode (by its place in the document, from 0) at a start address, or in slot numbers alone."""
    mode = fixture.modes[index]
    pointer = f"/modes/{index}"
    parameters = {at: parameter for parameter, at in all_parameters(mode, pointer)}
    places: dict[str, _Cells] = {}
    for block in blocks(mode, pointer):
        for placed in block.placed:
            known = places.setdefault(placed.pointer, _Cells(placed.slots, part_of(block, pointer)))
            known.count += 1
            if placed.slots and known.first and known.count == 2:
                known.steps.append(placed.slots[0] - known.first[0])
    lines = chart_lines(fixture, index)
    own = mode.footprint - sum(part.footprint for part in mode.parts)
    return ModeChart(
        anchor=f"mode-{index + 1}",
        name=mode.name,
        number=mode.number,
        footprint=mode.footprint,
        given=mode.given or "",
        source=source_words(fixture, mode.source),
        note=mode.note or "",
        rows=tuple(_rows(lines, parameters, places, address)),
        caution=CAUTION if any(line.hazard for line in lines) else "",
        continues=mode.continues,
        past=_past(address, own, mode.continues),
        own_footprint=own,
    )


def _rows(
    lines: list[ChartLine], parameters: dict[str, Parameter], places: dict[str, _Cells], address: int | None
) -> Iterator[ChartRow]:
    parts = {cells.part for cells in places.values()}
    waiting: ChartLine | None = None
    ranges: list[ChartLine] = []
    for line in [*lines, ChartLine("end", "")]:
        if line.kind == "range":
            ranges.append(line)
            continue
        if waiting is not None:
            parameter = parameters[waiting.pointer]
            yield _row(waiting, ranges, parameter, places.get(waiting.pointer), address)
        waiting, ranges = None, []
        if line.kind == "parameter":
            waiting = line
        elif line.kind == "block":
            part = next((one for one in parts if one and line.pointer.endswith(one)), "")
            yield ChartRow("block", line.depth, line.meaning, line.pointer, part=part)


def _row(
    line: ChartLine, ranges: list[ChartLine], parameter: Parameter, cells: _Cells | None, address: int | None
) -> ChartRow:
    top = full_scale(parameter) if parameter.slots else 0
    part = cells.part if cells is not None else ""
    first = cells.first if cells is not None else tuple(parameter.slots)
    return ChartRow(
        kind="parameter",
        depth=line.depth,
        words=line.meaning,
        pointer=line.pointer,
        slots=tuple(_bytes(first, None if part else address, part)),
        cells=_cells_words(cells),
        parameter=line.parameter,
        name=PARAMETERS[parameter.parameter].name,
        label=line.label,
        bits=bits(parameter),
        top=top,
        ranges=tuple(
            _range(told, entry.from_, entry.to, top)
            for told, entry in zip(ranges, parameter.ranges, strict=True)
        ),
        open=len(ranges) <= OPEN_RANGES,
        default="" if parameter.default is None else str(parameter.default),
    )


def part_of(block: BlockLayout, mode: str = "") -> str:
    """A part's pointer within its mode, whose own pointer is `mode`; empty for the mode's own slots."""
    return "" if block.key is None else block.pointer.removeprefix(mode)


def _bytes(slots: tuple[int, ...], address: int | None, part: str) -> Iterator[SlotByte]:
    names = ("coarse", "fine", "finer", "finest") if len(slots) > 1 else ("",)
    for slot, name in zip(slots, names, strict=False):
        yield SlotByte(slot, name, address_words(address, slot), part)


def address_words(address: int | None, slot: int) -> str:
    """Where a slot of a mode sits with slot 1 at the address: ``112``, or ``next universe, 4``."""
    if address is None:
        return ""
    universes, at = divmod(address + slot - 2, 512)
    return str(at + 1) if not universes else f"next universe, {at + 1}"


def _cells_words(cells: _Cells | None) -> str:
    if cells is None or cells.count < 2 or not cells.steps:
        return ""
    return f"first of {cells.count} cells; the next is {cells.steps[0]} further"


def _range(line: ChartLine, first: int, last: int, top: int) -> RangeRow:
    scale = BAR / (top + 1)
    return RangeRow(
        first,
        last,
        line.values,
        line.meaning,
        line.hazard,
        line.parameter,
        round(first * scale, 2),
        round(max((last - first + 1) * scale, 0.6), 2),
    )


def _past(address: int | None, footprint: int, continues: bool) -> str:
    if address is None or continues or address + footprint - 1 <= 512 or footprint > 512:
        return ""
    return (
        f"From address {address} its {footprint} slots run past 512: it starts at {513 - footprint} at most."
    )
