"""What to send for a choice by a slot: a value away from hazards, conditions as values, what comes after."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from modebook.documents.modes import Condition, Parameter, Range, Span
from modebook.documents.settings import Choice
from modebook.words.parameters import PARAMETERS

SECONDS = {"s": 1.0, "ms": 0.001, "min": 60.0}
HERTZ = {"Hz": 1.0, "kHz": 1000.0}
IDLE = ("nothing", "unchanged", "as-menu")
"""What a range does that leaves the settings as they are, the plainest first."""


def top_of(parameter: Parameter) -> int:
    """The greatest value of a parameter in its full resolution."""
    return int(256 ** max(1, len(parameter.slots))) - 1


def safe_value(piece: Range, others: Iterable[Range]) -> int:
    """The middle of a range; where a hazard lies over it or right beside it, the value farthest from hazards.

    `others` are all ranges of the same slots. Of equally far values the one nearest the middle is taken.
    """
    middle = (piece.from_ + piece.to) // 2
    hazards = sorted(
        (other.from_, other.to)
        for other in others
        if other.hazard and other is not piece and (other.from_, other.to) != (piece.from_, piece.to)
    )

    def room(value: int) -> int:
        return min((max(low - value, value - high, 0) for low, high in hazards), default=2)

    if room(middle) >= 2:
        return middle
    candidates = {middle, piece.from_, piece.to}
    edges = [(-1, -1), *hazards, (top := 1 << 32, top)]
    for (_, before), (after, _) in pairwise(edges):
        for value in ((before + after) // 2, before + 1, after - 1):
            if piece.from_ <= value <= piece.to:
                candidates.add(value)
    return max(candidates, key=lambda value: (room(value), -abs(value - middle), -value))


def value_in_span(piece: Range, span: Span, choice: Choice) -> int | None:
    """The value at which a continuous range gives a choice's length or frequency; None where it does not.

    The span is taken as even between its ends, which is what a printed span says.
    """
    wanted = _in_unit(span.unit, choice)
    if wanted is None or span.from_ == span.to:
        return None
    share = (wanted - span.from_) / (span.to - span.from_)
    if not -1e-9 <= share <= 1 + 1e-9:
        return None
    return min(piece.to, max(piece.from_, round(piece.from_ + share * (piece.to - piece.from_))))


def _in_unit(unit: str, choice: Choice) -> float | None:
    length = choice.length
    if unit in HERTZ:
        return None if choice.frequency_hz is None else choice.frequency_hz / HERTZ[unit]
    if length is None:
        return None
    if unit in SECONDS:
        return None if length.seconds is None else length.seconds / SECONDS[unit]
    return length.packets if unit == "packets" else None


@dataclass(frozen=True, slots=True)
class Need:
    """What one parameter must be at before a range acts."""

    name: str
    low: int
    high: int
    """The interval that is taken, in the parameter's full resolution; `low` above `high`: none is left."""


def needs_of(conditions: Sequence[Condition]) -> list[Need]:
    """The conditions on parameters, those on one parameter drawn together, in the order written."""
    allowed: dict[str, list[tuple[int, int]]] = {}
    for condition in conditions:
        if condition.parameter is None:
            continue
        before = allowed.get(condition.parameter)
        mine = list(condition.intervals)
        if before is not None:
            mine = [(max(a, c), min(b, d)) for a, b in before for c, d in mine if max(a, c) <= min(b, d)]
        allowed[condition.parameter] = mine
    return [Need(name, *(found[0] if found else (1, 0))) for name, found in allowed.items()]


def value_for_need(need: Need, parameter: Parameter) -> int:
    """What to send so that a need is met: the printed default if it will do, for a light the least level,
    else the middle, away from hazards."""
    if parameter.default is not None and need.low <= parameter.default <= need.high:
        return parameter.default
    if PARAMETERS[parameter.parameter].family == "intensity" and not parameter.ranges:
        return need.low
    inside = [r for r in parameter.ranges if r.to >= need.low and r.from_ <= need.high and not r.hazard]
    low, high = need.low, need.high
    if inside:
        low, high = max(low, inside[0].from_), min(high, inside[0].to)
    wanted = Range.model_construct(from_=low, to=high, meaning="needed", hazard=None)
    return safe_value(wanted, parameter.ranges)


@dataclass(frozen=True, slots=True)
class Rest:
    """Where a slot goes when it has done its work, or when its choice is no longer wanted."""

    value: int | None
    """None where the record does not tell."""
    why: str


def rest_of(parameter: Parameter, setting: str, others: Sequence[Range]) -> Rest:
    """A value that leaves a setting alone: the printed default, else a range that does nothing.

    `others` are all ranges of the same slots. A default inside a range that sets the same setting, or that
    endangers, is no place to rest. A value that sets nothing at all goes before one that sets something
    else, and the lowest of several is taken, so that all settings of one slot rest at one value.
    """
    bad = [r for r in others if r.hazard or setting in (r.sets or {})]
    setting_others = [r for r in others if r.sets]

    def free(value: int, of: Sequence[Range]) -> bool:
        return not any(r.from_ <= value <= r.to for r in of)

    default = parameter.default
    for of in ([*bad, *setting_others], bad):
        if default is not None and free(default, of):
            return Rest(default, "the printed default")
        for does in IDLE:
            idle = [r for r in parameter.ranges if r.does == does and not r.hazard and not r.sets]
            found = [(value, r) for r in idle if free(value := safe_value(r, others), of)]
            if found:
                value, piece = min(found, key=lambda one: one[0])
                words = "where the menu's choice rules" if does == "as-menu" else "a range that does nothing"
                return Rest(value, f"{words} ({piece.meaning})")
    if default is not None:
        return Rest(None, "its printed default would set something itself: find its rest on the fixture")
    return Rest(None, "no default and no range that does nothing is printed: find its rest on the fixture")


def always_rules(parameter: Parameter, setting: str) -> bool:
    """Whether every value of a slot sets a setting, so that no other way can hold against it."""
    at = 0
    for piece in sorted(parameter.ranges, key=lambda one: one.from_):
        if setting in (piece.sets or {}) and piece.from_ <= at:
            at = max(at, piece.to + 1)
    return at > top_of(parameter)


def between(low: int, high: int, ranges: Iterable[Range]) -> list[Range]:
    """The hazardous ranges that lie wholly between two values: a fade from one to the other meets them."""
    low, high = sorted((low, high))
    return [r for r in ranges if r.hazard and low < r.from_ and r.to < high]
