"""What the smoothing rules share: settings with their places, and the choices that ways lead to."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from modebook.checks.reading import FixtureReading, ModeReading
from modebook.documents.modes import Span
from modebook.documents.settings import Choice, Length, Setting
from modebook.documents.ways import SlotWay, is_smoothing, reached_by

_SECONDS = {"s": 1.0, "ms": 0.001, "min": 60.0}


def smoothings(reading: FixtureReading) -> Iterator[tuple[Setting, str]]:
    """The settings that decide how much the fixture smooths, with their pointers; not those that say none."""
    if not reading.smoothing:
        return
    for index, setting in enumerate(reading.fixture.settings):
        if not setting.none and is_smoothing(setting):
            yield setting, f"/settings/{index}"


def length_of(choice: Choice) -> tuple[Length | None, bool]:
    """A choice's length, and whether it was measured: a measurement goes before what is printed."""
    if choice.measured is not None:
        return choice.measured.length, True
    return choice.length, False


def slot_ways_to(setting: Setting, modes: Iterable[ModeReading]) -> list[SlotWay]:
    """The ways by slot that these modes have to a setting."""
    return [way for mode in modes for way in mode.slot_ways if way.setting == setting.key]


def reached(setting: Setting, slot_ways: Iterable[SlotWay]) -> set[str]:
    """The choices of a setting that its ways and these slots lead to.

    A slot that sets it over a span of lengths leads to the choices whose length lies within; where that
    cannot be compared, it is taken to.
    """
    found: set[str] = set()
    for way in setting.ways:
        found.update(reached_by(way, setting))
    for slot_way in slot_ways:
        if slot_way.choice is not None:
            found.add(slot_way.choice)
        elif slot_way.span is not None:
            found.update(choice.key for choice in setting.choices if _may_hold(slot_way.span, choice))
    return found


def spans_off(slot_ways: Iterable[SlotWay]) -> bool:
    """Whether one of these slots sets the length continuously down to nothing."""
    return any(
        way.span is not None and min(way.span.from_, way.span.to) <= 0 <= max(way.span.from_, way.span.to)
        for way in slot_ways
    )


def _may_hold(span: Span, choice: Choice) -> bool:
    if choice.length is None:
        return True
    low, high = min(span.from_, span.to), max(span.from_, span.to)
    for duration in choice.length.durations:
        if span.unit == "packets" and duration.packets is not None:
            length = duration.packets
        elif span.unit in _SECONDS and duration.seconds is not None:
            length = duration.seconds / _SECONDS[span.unit]
        else:
            continue
        if not low <= length <= high:
            return False
    return True
