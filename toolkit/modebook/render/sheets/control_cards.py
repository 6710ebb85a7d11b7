"""A control card per mode in use: one line a range that sets, holds, or endangers, and what follows."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from modebook.documents.control_values import byte_values, hazards_beside, return_after, value_for
from modebook.documents.layout import blocks
from modebook.documents.modes import Parameter, Range
from modebook.render.chart_rows import conditions_words, span_words
from modebook.render.csv_guard import Cell
from modebook.render.sheets import cautions
from modebook.rig.gathered import units_once
from modebook.rig.grouping import unit_ranges
from modebook.rig.reading import PatchedRow, RigReading
from modebook.words.ranges import HAZARDS

FLASHING = frozenset({"strobe", "shutter", "strobe-mode", "strobe-dimmer"})
"""Parameters that can make light flash."""


@dataclass(frozen=True, slots=True)
class CardLine:
    """One range."""

    part: str
    slots: str
    """The slots, counted from 1; of a cell, those of its first cell."""
    parameter: str
    send: str
    """The value of each slot: ``12`` or ``48, 0``."""
    range: str
    """In the parameter's full resolution, as recorded."""
    from_: int
    to: int
    meaning: str
    sets: str
    hold: str
    needs: str
    kept: str
    after: str
    hazard: str


@dataclass(frozen=True, slots=True)
class Card:
    """A mode in use, and what its slots can change."""

    fixture: str
    mode: str
    units: str
    unit_numbers: tuple[str, ...]
    standing: str
    lines: tuple[CardLine, ...]
    cautions: tuple[str, ...]
    """A sentence for each hazard on the card."""


CARD_TITLES = (
    "Fixture",
    "Mode",
    "Units",
    "Part",
    "Slots",
    "Parameter",
    "Send",
    "From",
    "To",
    "Meaning",
    "Sets",
    "Hold",
    "Needs",
    "Kept",
    "Afterward",
    "Caution",
)


def card_cells(card: Card) -> Iterator[tuple[Cell, ...]]:
    """A card's rows below CARD_TITLES; no range or list looks like a date to a spreadsheet."""
    for line in card.lines:
        yield (
            card.fixture,
            card.mode,
            "; ".join(card.unit_numbers),
            line.part,
            line.slots.replace(",", ";"),
            line.parameter,
            line.send.replace(",", ";"),
            line.from_,
            line.to,
            line.meaning,
            line.sets,
            line.hold,
            line.needs,
            line.kept,
            line.after,
            line.hazard,
        )


def control_cards(reading: RigReading) -> list[Card]:
    """The cards of all modes in use that have such a range, by fixture and mode; others have no card."""
    modes: dict[tuple[str, int], list[PatchedRow]] = {}
    for row in units_once(reading):
        if row.mode is not None and row.identity is not None:
            modes.setdefault((row.identity, row.modes[0]), []).append(row)
    cards = [card_of(rows) for _, rows in sorted(modes.items(), key=lambda pair: pair[0])]
    return [card for card in cards if card.lines]


def card_of(rows: list[PatchedRow], wanted: Mapping[str, str] | None = None) -> Card:
    """The card of one mode; `rows` are its units. wanted: only ranges that bring a setting to its choice."""
    first = rows[0]
    assert first.fixture is not None
    assert first.mode is not None
    fixture, mode = first.fixture.fixture, first.mode.mode
    lines = tuple(_lines(first, wanted))
    parameters = [placed.parameter for block in blocks(mode) for placed in block.placed]
    words: dict[str, str] = {
        hazard: HAZARDS[hazard]
        for parameter in parameters
        for piece in parameter.ranges
        if (hazard := piece.hazard)
    }
    if any(
        FLASHING & {parameter.parameter, *(p.parameter for p in parameter.ranges)} for parameter in parameters
    ):
        words["strobe"] = cautions.STROBE
    return Card(
        f"{fixture.maker} {fixture.model}",
        mode.name if mode.number is None else f"{mode.name} ({mode.number})",
        unit_ranges(row.unit.number for row in rows),
        tuple(dict.fromkeys(row.unit.number for row in rows if row.unit.number)),
        fixture.standing,
        lines,
        tuple(words.values()),
    )


def _lines(row: PatchedRow, wanted: Mapping[str, str] | None) -> Iterator[CardLine]:
    assert row.mode is not None
    for block in blocks(row.mode.mode):
        told: set[int] = set()
        for placed in block.placed:
            if id(placed.parameter) in told or not placed.slots:
                continue
            told.add(id(placed.parameter))
            for piece in placed.parameter.ranges:
                if _belongs(piece, wanted):
                    yield _line(placed.parameter, piece, placed.slots, block.key or "", bool(placed.cell))


def _belongs(piece: Range, wanted: Mapping[str, str] | None) -> bool:
    if wanted is not None:
        return any(wanted.get(key) == to for key, to in (piece.sets or {}).items())
    return bool(piece.sets or piece.hazard or piece.hold_s is not None or piece.kept or piece.needs)


def _line(parameter: Parameter, piece: Range, slots: tuple[int, ...], part: str, cell: bool) -> CardLine:
    value = value_for(piece)
    after = return_after(parameter, piece)
    sent = ", ".join(map(str, byte_values(parameter, value)))
    needs = conditions_words([*(parameter.when or ()), *(piece.needs or ())])
    beside = hazards_beside(parameter, piece)
    hazard = str(piece.hazard or "")
    if beside and not hazard:
        hazard = "beside: " + ", ".join(f"{one.hazard} at {one.from_}-{one.to}" for one in beside)
    if after.value is None or after.value == value:
        then = after.why
    else:
        then = f"{', '.join(map(str, byte_values(parameter, after.value)))}: {after.why}"
    return CardLine(
        part,
        ", ".join(map(str, slots)) + (" (each cell)" if cell else ""),
        parameter.label or parameter.name,
        sent,
        f"{piece.from_}-{piece.to}" if piece.from_ != piece.to else str(piece.from_),
        piece.from_,
        piece.to,
        piece.meaning,
        ", ".join(
            f"{key}: {to if isinstance(to, str) else span_words(to)}"
            for key, to in (piece.sets or {}).items()
        ),
        "not printed" if piece.hold_s is None else f"{piece.hold_s:g} s",
        needs,
        piece.kept or ("not printed" if piece.sets else ""),
        then,
        hazard,
    )
