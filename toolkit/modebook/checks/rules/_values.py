"""Sets of whole numbers as intervals, both ends included: what they share, what they leave out, as text."""

from __future__ import annotations

from collections.abc import Iterable

Intervals = tuple[tuple[int, int], ...]
"""Intervals in order, none touching the next."""


def merged(intervals: Iterable[tuple[int, int]]) -> Intervals:
    """The intervals in order, those that overlap or touch made one."""
    found: list[tuple[int, int]] = []
    for low, high in sorted(intervals):
        if found and low <= found[-1][1] + 1:
            if high > found[-1][1]:
                found[-1] = (found[-1][0], high)
        else:
            found.append((low, high))
    return tuple(found)


def shared(a: Intervals, b: Intervals) -> Intervals:
    """The numbers that lie in both."""
    found: list[tuple[int, int]] = []
    i = j = 0
    while i < len(a) and j < len(b):
        low, high = max(a[i][0], b[j][0]), min(a[i][1], b[j][1])
        if low <= high:
            found.append((low, high))
        if a[i][1] < b[j][1]:
            i += 1
        else:
            j += 1
    return tuple(found)


def without(a: Intervals, b: Intervals) -> Intervals:
    """The numbers of `a` that do not lie in `b`."""
    found: list[tuple[int, int]] = []
    j = 0
    for low, high in a:
        while j < len(b) and b[j][1] < low:
            j += 1
        k = j
        while k < len(b) and b[k][0] <= high:
            if b[k][0] > low:
                found.append((low, b[k][0] - 1))
            low = b[k][1] + 1
            k += 1
        if low <= high:
            found.append((low, high))
    return tuple(found)


def count(intervals: Intervals) -> int:
    """How many numbers they hold."""
    return sum(high - low + 1 for low, high in intervals)


def told(intervals: Intervals, most: int = 8) -> str:
    """The numbers for people: ``0-9, 12, 20-255``; past `most` intervals the rest is counted."""
    texts = [str(low) if low == high else f"{low}-{high}" for low, high in intervals[:most]]
    if len(intervals) > most:
        texts.append(f"and {count(intervals[most:])} more")
    return ", ".join(texts)


def listed(intervals: Intervals) -> list[list[int]]:
    """The intervals as a figure holds them, ready for JSON."""
    return [[low, high] for low, high in intervals]
