"""How rules write numbers, slots, modes and likely names in their sentences."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from difflib import get_close_matches

from modebook.checks.rules._values import merged, told
from modebook.documents.modes import Mode


def number(value: float) -> str:
    """A number with three significant digits, without exponent or idle zeros: 2.12, 0.00824, 14.9, 540."""
    if value == 0:
        return "0"
    if abs(value) >= 100:
        return f"{value:.0f}"
    text = f"{value:.3g}"
    if "e" in text:
        text = f"{float(text):.12f}".rstrip("0")
    return text


def plural(count: int, one: str, several: str | None = None) -> str:
    """A count with its noun: 1 slot, 2 slots."""
    return f"{count} {one if count == 1 else several or one + 's'}"


def wanted(value: float, unit: str) -> str:
    """What a limit asks for, as a sentence ends with it: ``0.1 degrees are wanted``."""
    return f"1 {unit} is wanted" if value == 1 else f"{number(value)} {unit}s are wanted"


def slots_told(slots: Iterable[int]) -> str:
    """Slots for people: `slot 4`, `slots 4, 7-9`."""
    intervals = merged((slot, slot) for slot in slots)
    noun = "slot" if len(intervals) == 1 and intervals[0][0] == intervals[0][1] else "slots"
    return f"{noun} {told(intervals)}"


def mode_told(mode: Mode) -> str:
    """A mode for people, with its number where it has one: ``Extended (3)``."""
    return mode.name if mode.number is None else f"{mode.name} ({mode.number})"


def together(words: Sequence[str]) -> str:
    """Words in a row: ``a``, ``a and b``, ``a, b and c``."""
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} and {words[-1]}"


def perhaps(wanted: str, known: Iterable[str]) -> str:
    """The words that help with a name that is not known: the nearest ones, else all, else that none are."""
    names = sorted(set(known))
    if not names:
        return "there is none to name"
    near = get_close_matches(wanted, names, n=3)
    if near:
        return f"did you mean {' or '.join(near)}?"
    more = f" and {len(names) - 12} more" if len(names) > 12 else ""
    return f"known are {', '.join(names[:12])}{more}"
