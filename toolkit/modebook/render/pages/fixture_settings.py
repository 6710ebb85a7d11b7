"""A fixture's settings for a page: choices, ways, what to send for each, how much later a snap is done."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

from modebook.documents.control_values import byte_values, hazards_beside, return_after, value_for
from modebook.documents.fixture import Fixture
from modebook.documents.layout import blocks
from modebook.documents.modes import Mode
from modebook.documents.settings import Choice, Length, Setting, Way
from modebook.documents.ways import SlotWay, is_smoothing, reached_by, slot_ways
from modebook.render.chart_rows import conditions_words, span_words
from modebook.render.chart_text import source_words
from modebook.render.pages.fixture_chart import address_words, part_of

if TYPE_CHECKING:
    from modebook.response.smoothing import Smoothing


@dataclass(frozen=True, slots=True)
class ByteSent:
    """A byte to send for a choice."""

    slot: int
    value: int
    address: str
    part: str
    """The part, by its pointer within the mode, that it counts in; empty for the mode's own slots."""


@dataclass(frozen=True, slots=True)
class Road:
    """One way to a choice, in words and, by slot, in bytes."""

    by: str
    words: str
    bytes: tuple[ByteSent, ...] = ()
    more: tuple[str, ...] = ()
    """How long to hold it, what must be so first, what to send after it, what lies beside it."""
    caution: str = ""


@dataclass(frozen=True, slots=True)
class ChoiceLine:
    """A choice of a setting, and how it is reached in one mode."""

    key: str
    label: str
    factory: bool
    length: str
    method: str
    late: str
    """How much later a snap is done for it; empty where the setting is no smoothing."""
    notes: tuple[str, ...]
    roads: tuple[Road, ...]


@dataclass(frozen=True, slots=True)
class SettingBlock:
    """A setting as one mode reaches it."""

    title: str
    kind: str
    acts_on: str
    none: bool
    smoothing: bool
    source: str
    note: str
    choices: tuple[ChoiceLine, ...]
    continuous: tuple[Road, ...]
    """Ranges that set it to any value within a span."""


def setting_blocks(
    fixture: Fixture, mode: Mode, refresh_hz: float, address: int | None = None
) -> tuple[SettingBlock, ...]:
    """The settings as a mode reaches them, smoothing first; lateness at `refresh_hz` packets a second."""
    by_slot = slot_ways(mode)
    settings = sorted(fixture.settings, key=lambda setting: not is_smoothing(setting))
    return tuple(_block(fixture, mode, setting, by_slot, refresh_hz, address) for setting in settings)


def _block(
    fixture: Fixture,
    mode: Mode,
    setting: Setting,
    by_slot: list[SlotWay],
    refresh_hz: float,
    address: int | None,
) -> SettingBlock:
    mine = [way for way in by_slot if way.setting == setting.key]
    smooths = is_smoothing(setting)
    return SettingBlock(
        title=setting.label or setting.setting.replace("-", " "),
        kind=setting.setting.replace("-", " "),
        acts_on=", ".join(setting.acts_on),
        none=setting.none,
        smoothing=smooths,
        source=source_words(fixture, setting.source),
        note=setting.note or "",
        choices=tuple(
            _choice(setting, choice, mode, mine, refresh_hz if smooths else None, address)
            for choice in setting.choices
        ),
        continuous=tuple(_slot_road(mode, way, address) for way in mine if way.choice is None),
    )


def _choice(
    setting: Setting,
    choice: Choice,
    mode: Mode,
    by_slot: list[SlotWay],
    refresh_hz: float | None,
    address: int | None,
) -> ChoiceLine:
    roads = [_slot_road(mode, way, address) for way in by_slot if way.choice == choice.key]
    roads += [_other_road(way, choice) for way in setting.ways if choice.key in reached_by(way, setting)]
    notes = [f"given {choice.given}"] if choice.given else []
    notes += [f"{choice.frequency_hz:g} Hz"] if choice.frequency_hz else []
    notes += [f"curve: {choice.curve}"] if choice.curve else []
    if choice.measured:
        told = length_words(choice.measured.length)
        notes.append(f"measured: {told}, {choice.measured.date} by {choice.measured.by}")
    notes += [choice.note] if choice.note else []
    smooths = refresh_hz is not None
    return ChoiceLine(
        choice.key,
        choice.label or choice.key,
        choice.factory,
        (length_words(choice.length) or "unknown") if smooths else length_words(choice.length),
        choice.method or "",
        late_words(choice, refresh_hz) if refresh_hz is not None else "",
        tuple(notes),
        tuple(roads),
    )


def length_words(length: Length | None) -> str:
    """``2 packets``, ``0.4 s``, ``2 packets rising, 8 packets falling``; ``off``; empty for none."""
    if length is None:
        return ""
    if length.is_off:
        return "off"
    told = [
        f"{one.packets:g} packet{'s' * (one.packets != 1)}"
        if one.packets is not None
        else f"{one.seconds:g} s"
        for one in length.durations
    ]
    return told[0] if len(told) == 1 else f"{told[0]} rising, {told[1]} falling"


def late_words(choice: Choice, refresh_hz: float) -> str:
    """How much later a snap is done for a choice: ``67 ms``, ``133 ms rising, 67 ms falling``, ``unknown``.

    From 0 to 100 % and back, linear, at the worst moment against the packets; the packets' own wait, which
    every choice has, is not in it.
    """
    from modebook.documents.responding import smoothing_of

    made = smoothing_of(choice)
    if not made.known:
        return "unknown"
    rise, fall = (1000 * _added_s(made.smoothing, refresh_hz, rising) for rising in (True, False))
    if round(rise) == round(fall):
        return f"{rise:.0f} ms"
    return f"{rise:.0f} ms rising, {fall:.0f} ms falling"


@lru_cache(maxsize=4096)
def _added_s(smoothing: Smoothing, refresh_hz: float, rising: bool) -> float:
    from modebook.response.fade import Fade
    from modebook.response.late import lateness
    from modebook.response.link import Link

    ends = (0.0, 100.0) if rising else (100.0, 0.0)
    fade = Fade(*ends, 0.0, Link(refresh_hz, line="network"), smoothing=smoothing)
    return float(lateness(fade.ramp, smoothing.toward(rising), fade.transfer, fade.link, fade.bits).added_s)


def _slot_road(mode: Mode, way: SlotWay, address: int | None) -> Road:
    piece, parameter = way.piece, way.parameter
    value = value_for(piece)
    slots, part, cells = _placed(mode, way)
    sent = tuple(
        ByteSent(slot, byte, address_words(None if part else address, slot), part)
        for slot, byte in zip(slots, byte_values(parameter, value), strict=True)
    )
    more: list[str] = [f"{piece.from_}-{piece.to} {piece.meaning}"]
    if way.span is not None:
        more.append(f"sets {span_words(way.span)}")
    if piece.hold_s is not None:
        more.append(f"hold it for {piece.hold_s:g} s")
    if piece.kept:
        more.append(f"kept {piece.kept}" if piece.kept != "stored" else "stored")
    if way.needs:
        more.append(f"needs {conditions_words(way.needs)}")
    if cells > 1:
        more.append(f"in each of {cells} cells")
    back = return_after(parameter, piece)
    more.append(f"then {back.value}: {back.why}" if back.value is not None else f"then: {back.why}")
    beside = "; ".join(
        f"{one.from_}-{one.to} {one.meaning} ({one.hazard})" for one in hazards_beside(parameter, piece)
    )
    caution = f"beside it lies {beside}" if beside else ""
    if piece.hazard:
        caution = f"{piece.hazard}; {caution}".rstrip("; ")
    words = f"send {value}" if len(sent) < 2 else f"send {value} of {256 ** len(sent) - 1}"
    return Road("slot", words, sent, tuple(more), caution)


def _placed(mode: Mode, way: SlotWay) -> tuple[tuple[int, ...], str, int]:
    """The way's slots, in cells those of the first; the pointer of their part, empty for none; the cells."""
    at = way.pointer.rpartition("/ranges/")[0]
    found = [
        (placed.slots, part_of(block))
        for block in blocks(mode)
        for placed in block.placed
        if placed.pointer == at
    ]
    return (*found[0], len(found)) if found else (tuple(way.parameter.slots), "", 1)


def _other_road(way: Way, choice: Choice) -> Road:
    more = list(_way_notes(way))
    if way.by == "rdm" and way.values is not None:
        value = way.values[choice.key]
        size = way.size or 1
        pid = way.pid or "a PID that is not recorded"
        return Road(
            "rdm",
            f"SET {pid}, data 0x{value:0{2 * size}X} ({value}, {size} byte{'s' * (size != 1)})",
            (),
            tuple(more),
        )
    return Road(way.by, " › ".join(way.path or ()) or "path not recorded", (), tuple(more))


def _way_notes(way: Way) -> Iterator[str]:
    if way.locked:
        yield "a lock must be opened first" if way.locked is True else f"locked: {way.locked}"
    if way.firmware:
        yield f"from firmware {way.firmware}"
    if way.kept:
        yield f"kept {way.kept}" if way.kept != "stored" else "stored"
    if way.note:
        yield way.note
