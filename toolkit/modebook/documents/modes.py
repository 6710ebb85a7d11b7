"""What a mode's slots do: parameters, spans, ranges, conditions, cells and parts."""

from __future__ import annotations

from typing import Annotated, Any, Self

from pydantic import Field, GetPydanticSchema, model_validator
from pydantic_core import CoreSchema, core_schema

from modebook.documents.base import (
    TOLD_APART,
    Key,
    ParameterWord,
    Part,
    SlotNumber,
    Text,
    UnitWord,
    Value,
    each_once,
)
from modebook.words.ranges import Does, Hazard, Kept

MOST_SLOTS = 65_536
"""More slots than any mode has; it keeps a slip of the pen from filling the memory."""


class Span(Part):
    """Physical ends of a parameter or a range; `from` may exceed `to` (inverted)."""

    from_: Annotated[float, Field(alias="from")]
    """What the lowest value means, in the unit."""
    to: float
    """What the highest value means, in the unit."""
    unit: UnitWord
    """The physical unit; CIE x and y have unit 1."""
    raw: bool = False
    """True: the number sent is the unit itself (3200 sent means 3200 K), not a share of the byte range."""
    given: Text | None = None
    """A menu state that this span depends on (540 or 630 degrees)."""
    source: Key | None = None
    """The key of the source that says so."""

    @property
    def width(self) -> float:
        """The distance between its ends, in its unit; never negative."""
        return abs(self.to - self.from_)


def _one_or_several(_source: Any, handler: Any) -> CoreSchema:
    """A span, or a list of spans: told apart by looking at the bracket, so that errors stay readable."""
    one = handler.generate_schema(Span)
    several = core_schema.list_schema(one, min_length=2)
    return core_schema.nullable_schema(
        core_schema.tagged_union_schema(
            {"several": several, "one": one},
            discriminator=lambda v: "several" if isinstance(v, list) else "one",
        )
    )


Spans = Annotated[Span | list[Span] | None, GetPydanticSchema(_one_or_several)]
"""One span, or several that a menu state chooses between, each with its `given`."""


def spans_of(span: Span | list[Span] | None) -> tuple[Span, ...]:
    """All spans that may hold, as a tuple: none, one, or one for each menu state."""
    if span is None:
        return ()
    return (span,) if isinstance(span, Span) else tuple(span)


class ValueRange(Part):
    """Values from one to another, both included, in the full resolution of the parameter they belong to."""

    from_: Annotated[Value, Field(alias="from")]
    """The first value, included."""
    to: Value
    """The last value, included."""

    @model_validator(mode="after")
    def _upward(self) -> Self:
        if self.from_ > self.to:
            raise ValueError(f"from {self.from_} is above to {self.to}: the smaller one comes first")
        return self


class Condition(Part):
    """One thing that must be so: another parameter within values, or a setting at a choice."""

    parameter: Key | None = None
    """The key (or word) of a parameter of the same mode."""
    from_: Annotated[Value | None, Field(alias="from")] = None
    """The first value of that parameter, included."""
    to: Value | None = None
    """The last value of that parameter, included."""
    any_of: Annotated[list[ValueRange], Field(min_length=1)] | None = None
    """Several ranges, any of which will do."""
    setting: Key | None = None
    """The key of a setting."""
    choices: Annotated[list[Key], Field(min_length=1)] | None = None
    """The choices of the setting, any of which will do."""
    given: Text | None = None
    """A state that no slot and no recorded setting tells of, in words."""

    @model_validator(mode="after")
    def _one_kind(self) -> Self:
        by_value = self.from_ is not None and self.to is not None
        if (self.from_ is None) != (self.to is None):
            raise ValueError("from and to go together")
        if self.parameter is not None:
            if by_value == (self.any_of is not None) or self.setting is not None or self.choices is not None:
                raise ValueError("a condition on a parameter has from and to, or any_of")
            if by_value and self.from_ > self.to:  # type: ignore[operator]
                raise ValueError(f"from {self.from_} is above to {self.to}: the smaller one comes first")
        elif self.setting is not None:
            if self.choices is None or by_value or self.any_of is not None:
                raise ValueError("a condition on a setting has choices")
        elif self.given is None:
            raise ValueError("a condition names a parameter, a setting, or a state in words (given)")
        elif by_value or self.any_of is not None or self.choices is not None:
            raise ValueError("values need a parameter beside them, choices a setting")
        return self

    @property
    def intervals(self) -> tuple[tuple[int, int], ...]:
        """The value ranges of a condition on a parameter, in its full resolution."""
        if self.any_of is not None:
            return tuple((r.from_, r.to) for r in self.any_of)
        if self.from_ is None or self.to is None:
            return ()
        return ((self.from_, self.to),)


class Range(Part):
    """A stretch of values with one meaning, both ends included, in the parameter's full resolution."""

    from_: Annotated[Value, Field(alias="from")]
    """The first value, included."""
    to: Value
    """The last value, included."""
    meaning: Text
    """What the maker prints for it."""
    parameter: ParameterWord | None = None
    """The parameter that this stretch controls, where it is another one (0-127 dimmer, 128-255 strobe)."""
    key: Key | None = None
    """A name of its own, where others refer to it."""
    does: Does | None = None
    """What it does, in the vocabulary's words."""
    span: Spans = None
    """What its ends mean physically; several spans where a menu state decides."""
    position: Key | None = None
    """The wheel position that it selects: the key of a position of a wheel of this document."""
    sets: dict[Key, Annotated[Key | Span, TOLD_APART]] | None = None
    """The settings that it changes: to a choice, or continuously over a span."""
    hold_s: Annotated[float, Field(ge=0, le=3600)] | None = None
    """How long it must be sent before it acts, in seconds."""
    kept: Kept | None = None
    """How long what it set stays set."""
    needs: list[Condition] | None = None
    """What must be so first."""
    hazard: Hazard | None = None
    """What it can do to people or to the lamp."""
    for_: Annotated[list[Key] | None, Field(alias="for")] = None
    """The parameters that it acts on."""
    snap: bool = False
    """True: a desk must not fade through it."""
    source: Key | None = None
    """The key of the source that says so."""
    note: Text | None = None

    @model_validator(mode="after")
    def _upward(self) -> Self:
        if self.from_ > self.to:
            raise ValueError(f"from {self.from_} is above to {self.to}: the smaller one comes first")
        return self


class Parameter(Part):
    """What one or more slots control."""

    parameter: ParameterWord
    """The word of the vocabulary."""
    label: Text | None = None
    """As printed by the maker."""
    key: Key | None = None
    """A name of its own, where a mode has two of a kind; others refer to it, else to the word."""
    slots: Annotated[list[SlotNumber], Field(max_length=4)]
    """Its bytes, most significant first; they need not be neighbors. Empty: no slot of its own."""
    default: Value | None = None
    """As printed, in full resolution. Absent where the manual does not print it."""
    span: Spans = None
    """What 0 and the highest value mean physically; several spans where a menu state decides."""
    ranges: list[Range] = Field(default_factory=list)
    """Stretches of values with a meaning each."""
    when: list[Condition] | None = None
    """It has this meaning only while every condition holds."""
    for_: Annotated[list[Key] | None, Field(alias="for")] = None
    """For a speed, time or mode slot: the parameters that it acts on."""
    travel: Annotated[float, Field(gt=0, le=3600)] | None = None
    """Seconds over its full span, as printed or measured."""
    snap: bool = False
    """True: a desk must not fade it."""
    coarse_default: Annotated[int, Field(ge=0, le=255)] | None = None
    """A default printed for the coarse byte alone; it leaves the fine byte unknown."""
    source: Key | None = None
    """The key of the source that says so."""
    place: Text | None = None
    """Where in the source it stands: page, table, row."""
    note: Text | None = None

    @model_validator(mode="after")
    def _different_slots(self) -> Self:
        if len(self.slots) > 1 and len(set(self.slots)) != len(self.slots):
            raise ValueError("one slot is listed twice: list each byte once")
        return self

    @property
    def name(self) -> str:
        """What conditions and `for` call it: its key, else its word."""
        return self.key or self.parameter


class Cells(Part):
    """A block of relative slots repeated, counted from 1 within a cell; blocks may interleave and nest."""

    count: Annotated[int, Field(ge=1, le=65_536)]
    """How many cells."""
    first: SlotNumber
    """The slot at which the first cell starts."""
    stride: Annotated[int, Field(ge=0, le=65_536)]
    """The distance from the start of one cell to the start of the next."""
    key: Key | None = None
    """A name of its own, where others refer to it."""
    label: Text | None = None
    parameters: list[Parameter] = Field(default_factory=list)
    """The parameters of one cell; slot 1 is the cell's first."""
    cells: list[Cells] = Field(default_factory=list)
    """Blocks of cells within one cell, such as the pixels of a head."""
    source: Key | None = None
    """The key of the source that says so."""
    note: Text | None = None

    @property
    def bytes_placed(self) -> int:
        """How many bytes the block places, all its cells counted."""
        return self.count * _bytes_placed(self.parameters, self.cells)

    @model_validator(mode="after")
    def _bounded(self) -> Self:
        _bound(self.bytes_placed)
        return self


def _bytes_placed(parameters: list[Parameter], cells: list[Cells]) -> int:
    own = sum(len(parameter.slots) or 1 for parameter in parameters)
    return own + sum(block.bytes_placed for block in cells)


def _bound(placed: int) -> None:
    if placed > MOST_SLOTS:
        raise ValueError(f"the cells come to more than {MOST_SLOTS} slots: look at their counts")


class Block(Part):
    """A part of a mode with a start address of its own; its slots count from 1."""

    key: Key
    """A name of its own, to which a patch refers."""
    label: Text | None = None
    footprint: Annotated[int, Field(ge=1, le=65_536)]
    """How many slots it takes."""
    parameters: list[Parameter] = Field(default_factory=list)
    """Its parameters, in the order of the chart."""
    cells: list[Cells] = Field(default_factory=list)
    """Blocks of repeated cells."""
    note: Text | None = None

    @property
    def bytes_placed(self) -> int:
        """How many bytes the part places, all cells counted."""
        return _bytes_placed(self.parameters, self.cells)


class Mode(Part):
    """One of a fixture's slot layouts; RDM calls it a personality and numbers it."""

    name: Text
    """As printed by the maker."""
    number: Annotated[int, Field(ge=1, le=255)] | None = None
    """The personality number, where known. It may stand twice where a menu state decides (`given`)."""
    footprint: Annotated[int, Field(ge=0, le=65_536)]
    """How many slots it takes, its parts included."""
    source: Key | None = None
    """The source that it was read from."""
    place: Text | None = None
    """Where in the source it stands."""
    given: Text | None = None
    """The menu state that gives the mode this footprint."""
    continues: bool = False
    """True: it runs past 512 slots into the next universe."""
    parameters: list[Parameter] = Field(default_factory=list)
    """Its parameters, in the order of the chart."""
    cells: list[Cells] = Field(default_factory=list)
    """Blocks of repeated cells."""
    parts: list[Block] = Field(default_factory=list)
    """Blocks with start addresses of their own."""
    note: Text | None = None

    @model_validator(mode="after")
    def _in_order(self) -> Self:
        self.in_order()
        return self

    def in_order(self) -> None:
        """Raises ValueError where it has more slots than any mode, or two parts of one key."""
        if self.cells or self.parts:
            own = _bytes_placed(self.parameters, self.cells)
            _bound(own + sum(part.bytes_placed for part in self.parts))
            each_once("parts", (part.key for part in self.parts))
