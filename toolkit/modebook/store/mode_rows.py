"""From a mode to its rows: parameters, every byte with its E1.20 type and label, ranges, conditions."""

from __future__ import annotations

from modebook.checks.reading import ModeReading
from modebook.documents.modes import Condition, Parameter, Range, Span
from modebook.store.ids import parameter_names, plain_names
from modebook.store.values import Row, Rows, as_json, in_words, more_spans
from modebook.words.e120 import SD_UNDEFINED, ST_PRIMARY, ST_SEC_FINE
from modebook.words.parameters import PARAMETERS

_TYPE_AND_LABEL = {word: (known.slot_type, known.slot_label) for word, known in PARAMETERS.items()}

_MOSTLY = {"from_", "to", "meaning", "does"}
"""What most ranges say, and no more."""
_NOTHING_ELSE = (*(None,) * 11, 0, None, None)
"""The columns after `does` of such a range."""


class ModeRows:
    """The rows of one mode. `names` tells what each of its parameters is called, by JSON pointer."""

    def __init__(self, mode: ModeReading, mode_id: str) -> None:
        self.mode_id = mode_id
        self.mode = mode
        self.plain = not (mode.mode.cells or mode.mode.parts)
        if self.plain:
            called = plain_names(mode.mode.parameters)
            self.names = {pointer: name for (_, pointer), name in zip(mode.parameters, called, strict=True)}
        else:
            self.names = parameter_names(mode.mode, mode.pointer)

    def add_to(self, rows: Rows) -> None:
        """Add the mode's rows to those of its fixture, each table's in the order of its key."""
        slots = self._slots()
        cells: dict[str, int] = {}
        if not self.plain:
            for row in slots:
                if row[5] == 1:
                    name = str(row[3])
                    cells[name] = cells.get(name, 0) + 1
        slots.sort()
        rows.setdefault("slots", []).extend(slots)
        parameters = rows.setdefault("parameters", [])
        ranges = rows.setdefault("ranges", [])
        named = {self.names[pointer]: (parameter, pointer) for parameter, pointer in self.mode.parameters}
        for name, (parameter, pointer) in sorted(named.items(), key=_name):
            parameters.append(self._parameter(parameter, name, pointer, cells.get(name, 1)))
            if parameter.ranges:
                ranges.extend(self._ranges(parameter, name))
            if parameter.when or any(piece.needs for piece in parameter.ranges):
                rows.setdefault("conditions", []).extend(self._conditions(parameter, name, pointer))

    def _slots(self) -> list[Row]:
        mode_id = self.mode_id
        rows: list[Row] = []
        if self.plain:
            first = {p.name: p.slots[0] for p, _ in self.mode.parameters if p.slots}
            for parameter, pointer in self.mode.parameters:
                name = self.names[pointer]
                kind, label = _TYPE_AND_LABEL[parameter.parameter]
                if kind != ST_PRIMARY:
                    label = _offset_of_primary(parameter, first)
                for number, slot in enumerate(parameter.slots, 1):
                    rows.append((mode_id, "", slot, name, "", number, kind, label))
                    if number == 1:
                        kind, label = ST_SEC_FINE, slot - 1
            return rows
        for block in self.mode.blocks:
            first = {}
            for placed in block.placed:
                if placed.slots:
                    first.setdefault(placed.parameter.name, placed.slots[0])
            for placed in block.placed:
                name = self.names[placed.pointer]
                kind, label = _TYPE_AND_LABEL[placed.parameter.parameter]
                if kind != ST_PRIMARY:
                    label = _offset_of_primary(placed.parameter, first)
                cell = ".".join(map(str, placed.cell))
                for number, slot in enumerate(placed.slots, 1):
                    rows.append((mode_id, block.key or "", slot, name, cell, number, kind, label))
                    if number == 1:
                        kind, label = ST_SEC_FINE, slot - 1
        return rows

    def _parameter(self, parameter: Parameter, name: str, pointer: str, cells: int) -> Row:
        span = (
            parameter.span
            if isinstance(parameter.span, Span) or parameter.span is None
            else parameter.span[0]
        )
        return (
            self.mode_id,
            name,
            parameter.parameter,
            parameter.label,
            self._part(pointer),
            " ".join(map(str, parameter.slots)),
            8 * len(parameter.slots),
            cells,
            parameter.default,
            parameter.coarse_default,
            None if span is None else span.from_,
            None if span is None else span.to,
            None if span is None else span.unit,
            None if span is None else int(span.raw),
            None if span is None else span.given,
            more_spans(parameter.span),
            in_words(parameter.when) if parameter.when else None,
            as_json(parameter.for_) if parameter.for_ else None,
            parameter.travel,
            int(parameter.snap),
            parameter.source,
            parameter.place,
            parameter.note,
            pointer,
        )

    def _part(self, pointer: str) -> str:
        if self.plain or not pointer.startswith(f"{self.mode.pointer}/parts/"):
            return ""
        return self.mode.mode.parts[int(pointer.split("/")[4])].key

    def _ranges(self, parameter: Parameter, name: str) -> list[Row]:
        rows: list[Row] = []
        seen: dict[tuple[int, int], int] = {}
        for piece in parameter.ranges:
            ends = (piece.from_, piece.to)
            nth = seen[ends] = seen.get(ends, 0) + 1
            rows.append(self._range(piece, name, nth))
        rows.sort(key=_ends)
        return rows

    def _range(self, piece: Range, name: str, nth: int) -> Row:
        if piece.model_fields_set <= _MOSTLY:
            return (
                self.mode_id,
                name,
                piece.from_,
                piece.to,
                nth,
                piece.meaning,
                None,
                None,
                piece.does,
                *_NOTHING_ELSE,
            )
        span = piece.span if isinstance(piece.span, Span) or piece.span is None else piece.span[0]
        return (
            self.mode_id,
            name,
            piece.from_,
            piece.to,
            nth,
            piece.meaning,
            piece.parameter,
            piece.key,
            piece.does,
            None if span is None else span.from_,
            None if span is None else span.to,
            None if span is None else span.unit,
            more_spans(piece.span),
            piece.position,
            _sets(piece) if piece.sets else None,
            piece.hold_s,
            piece.kept,
            in_words(piece.needs) if piece.needs else None,
            piece.hazard,
            as_json(piece.for_) if piece.for_ else None,
            int(piece.snap),
            piece.source,
            piece.note,
        )

    def _conditions(self, parameter: Parameter, name: str, pointer: str) -> list[Row]:
        rows: list[Row] = []
        for index, condition in enumerate(parameter.when or ()):
            rows.extend(self._condition(condition, name, f"{pointer}/when/{index}"))
        for at, piece in enumerate(parameter.ranges):
            for index, condition in enumerate(piece.needs or ()):
                rows.extend(self._condition(condition, name, f"{pointer}/ranges/{at}/needs/{index}"))
        return rows

    def _condition(self, condition: Condition, name: str, pointer: str) -> list[Row]:
        choices = as_json(condition.choices) if condition.choices else None
        told = (condition.setting, choices, condition.given)
        if not condition.intervals:
            return [(self.mode_id, name, pointer, condition.parameter, None, None, *told)]
        several = len(condition.intervals) > 1
        return [
            (
                self.mode_id,
                name,
                f"{pointer}/any_of/{index}" if several else pointer,
                condition.parameter,
                low,
                high,
                *told,
            )
            for index, (low, high) in enumerate(condition.intervals)
        ]


def _name(pair: tuple[str, object]) -> str:
    return pair[0]


def _ends(row: Row) -> Row:
    return row[2:5]


def _sets(piece: Range) -> str:
    """What a range sets, as JSON: keys, choices and units need no escaping."""
    told = [
        f'"{key}": "{to}"' if isinstance(to, str) else f'"{key}": "{to.from_:g} to {to.to:g} {to.unit}"'
        for key, to in (piece.sets or {}).items()
    ]
    return f"{{{', '.join(told)}}}"


def _offset_of_primary(parameter: Parameter, first: dict[str, int]) -> int:
    """What SLOT_INFO's label field says of a secondary slot: the offset (from 0) of the slot it serves."""
    for name in parameter.for_ or ():
        if name in first:
            return first[name] - 1
    return SD_UNDEFINED
