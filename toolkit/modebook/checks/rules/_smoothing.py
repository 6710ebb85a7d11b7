"""What the smoothing rules share: settings with their places, and the choices that ways lead to."""

from __future__ import annotations

from collections.abc import Iterable

from modebook.checks.reading import ModeReading
from modebook.documents.modes import Span
from modebook.documents.settings import Choice, Length, Setting
from modebook.documents.ways import SlotWay, reached_by

_SECONDS = {"s": 1.0, "ms": 0.001, "min": 60.0}


def length_of(choice: Choice) -> tuple[Length | None, bool]:
    """A choice's length, and whether it was measured: a measurement goes before what is printed."""
    if choice.measured is not None:
        return choice.measured.length, True
    return choice.length, False


def packets_of(length: Length, refresh_hz: float) -> float:
    """The longer of a length's directions in packets; seconds count as `refresh_hz` packets each."""
    return length.packets if length.packets is not None else length.longest_packets(refresh_hz)


def is_off(choice: Choice) -> bool:
    """Whether a choice is known to smooth nothing."""
    length = length_of(choice)[0]
    if length is None:
        return False
    return length.packets == 0 if length.packets is not None else length.is_off


def slot_ways_to(setting: Setting, modes: Iterable[ModeReading]) -> list[SlotWay]:
    """The ways by slot that these modes have to a setting."""
    return [
        way
        for mode in modes
        if setting.key in mode.survey.sets
        for way in mode.slot_ways
        if way.setting == setting.key
    ]


def reaches_all(setting: Setting) -> bool:
    """Whether a menu, app or page leads to every choice, as those do that name none."""
    return any(way.by != "rdm" and way.choices is None for way in setting.ways)


def reached(setting: Setting, modes: Iterable[ModeReading]) -> set[str]:
    """The choices of a setting that its ways and the slots of these modes lead to.

    A slot that sets it over a span of lengths leads to the choices whose length lies within; where that
    cannot be compared, it is taken to.
    """
    found: set[str] = set()
    for way in setting.ways:
        found.update(reached_by(way, setting))
    for mode in modes:
        for _, _, to in mode.survey.sets.get(setting.key, ()):
            if isinstance(to, str):
                found.add(to)
            else:
                found.update(choice.key for choice in setting.choices if _may_hold(to, choice))
    return found


def set_continuously(setting: Setting, modes: Iterable[ModeReading]) -> list[Span]:
    """The spans of lengths over which slots of these modes set it."""
    return [
        to for mode in modes for _, _, to in mode.survey.sets.get(setting.key, ()) if not isinstance(to, str)
    ]


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
