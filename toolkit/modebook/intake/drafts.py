"""What is put together while a chart is read: parameters, modes and doubts before they are documents."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

from modebook.intake.conditions import ReadCondition
from modebook.intake.entries import Entry, Stretch
from modebook.intake.grid import Place
from modebook.intake.names import Name

Json = dict[str, Any]


@dataclass(slots=True)
class Unsure:
    """A doubt on its way into the document: `below` is the pointer below its parameter or mode."""

    why: str
    printed: str = ""
    read: str = ""
    below: str = ""
    place: Place | None = None
    slots: tuple[int, ...] = ()


@dataclass(slots=True)
class DraftParameter:
    """One parameter of one mode."""

    word: str
    slots: list[int]
    entry: Entry
    name: Name
    label: str = ""
    key: str | None = None
    stretches: list[Stretch] = field(default_factory=list)
    ranges: list[Json] = field(default_factory=list)
    span: Json | None = None
    default: int | None = None
    coarse_default: int | None = None
    when: list[ReadCondition] = field(default_factory=list)
    when_json: list[Json] = field(default_factory=list)
    needs: dict[int, tuple[ReadCondition, ...]] = field(default_factory=dict)
    """By the index of the range."""
    for_: list[str] = field(default_factory=list)
    note: str | None = None
    unsure: list[Unsure] = field(default_factory=list)
    number: int | None = None
    cell: bool = False
    fines: list[Entry] = field(default_factory=list)
    """The entries of its finer bytes."""
    defaults: list[str] = field(default_factory=list)
    """Printed default of each byte's entry, coarse first."""
    after_gap: bool = False
    """Rows were left out in print before it."""

    @property
    def bytes(self) -> int:
        """How many slots it has."""
        return len(self.slots)

    def doubt(self, why: str, printed: str = "", read: str = "", below: str = "") -> None:
        """Add a doubt."""
        self.unsure.append(Unsure(why, printed or self.entry.printed, read, below, self.entry.place))

    def to_json(self) -> Json:
        """The parameter as the document writes it."""
        made: Json = {"parameter": self.word}
        if self.label:
            made["label"] = self.label
        if self.key:
            made["key"] = self.key
        made["slots"] = self.slots
        if self.default is not None:
            made["default"] = self.default
        if self.span:
            made["span"] = self.span
        if self.ranges:
            made["ranges"] = self.ranges
        if self.when_json:
            made["when"] = self.when_json
        if self.for_:
            made["for"] = self.for_
        if self.coarse_default is not None:
            made["coarse_default"] = self.coarse_default
        place = str(self.entry.place)
        if place:
            made["place"] = place
        if self.note:
            made["note"] = self.note
        return made


@dataclass(slots=True)
class DraftMode:
    """One mode."""

    name: str
    number: int | None
    footprint: int | None
    place: Place
    parameters: list[DraftParameter] = field(default_factory=list)
    cells: list[tuple[Json, list[DraftParameter]]] = field(default_factory=list)
    """Blocks of cells, each with the parameters of its first cell."""
    unsure: list[Unsure] = field(default_factory=list)
    note: str | None = None
    given: str | None = None
    printed_footprint: int | None = None
