"""The largest size of figures known at samples: parabolas exactly, others by a search with a bound.

Samples stand for intervals: [B, 2 Q - 1] values are those at the Q ends of Q - 1 intervals, and behind
them those at the middles. Within an interval a figure is smooth, or has a kink at most.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, fields

import numpy as np

from .signal import Array
from .stepping import most

POINTS = 9  # ends of smaller intervals that a search puts into an interval, each with its middle
ROUNDS = 2
ENOUGH = 1e-3  # of a figure: an interval that could hold no more than that is not searched


@dataclass(frozen=True, slots=True)
class Peaks:
    """The largest sizes among the samples of a figure for B signals, and where larger ones could hide.

    found, found_s: [B], the largest size and its time in s. low_s, high_s: [B, P], from when to when the
    intervals run that could hold most; could: [B, P], how much. rest: [B], how much the others could.
    """

    found: Array
    found_s: Array
    low_s: Array
    high_s: Array
    could: Array
    rest: Array


def with_middles(ends: Array) -> Array:
    """Give values along the last axis with the means of neighbors behind them, [..., Q] to [..., 2 Q - 1]."""
    return np.concatenate([ends, 0.5 * (ends[..., 1:] + ends[..., :-1])], axis=-1)


_GRID = with_middles(np.linspace(0.0, 1.0, POINTS))


def peaks(values: Array, tried_s: Array, places: int) -> Peaks:
    """Give a figure's peaks and `places` intervals to search; tried_s: [2 Q - 1], or as values."""
    rows = np.arange(len(values))
    times_s = np.broadcast_to(tried_s, values.shape)
    rises, falls = values.argmax(axis=1), values.argmin(axis=1)
    at = np.where(values[rows, rises] >= -values[rows, falls], rises, falls)
    could = _could(values)
    intervals = np.empty((len(rows), places), dtype=np.intp)
    heights = np.empty((len(rows), places))
    for place in range(places):
        intervals[:, place] = could.argmax(axis=1)
        heights[:, place] = could[rows, intervals[:, place]]
        could[rows, intervals[:, place]] = 0.0
    found, across = np.abs(values[rows, at]), rows[:, None]
    low_s, high_s = times_s[across, intervals], times_s[across, intervals + 1]
    return Peaks(found, times_s[rows, at], low_s, high_s, heights, could.max(axis=1))


def peaks_of_ratios(ratios: Array, tried_s: Array, places: int) -> Peaks:
    """Give the peaks of the log2 of ratios; places: 1 for the stretch around the largest to search, or 0."""
    rows, ends = np.arange(len(ratios)), (ratios.shape[1] + 1) // 2
    times_s = np.broadcast_to(tried_s, ratios.shape)
    up, down = ratios.argmax(axis=1), ratios.argmin(axis=1)
    at = np.where(ratios[rows, up] * ratios[rows, down] >= 1.0, up, down)
    interval = np.where(at < ends, at, at - ends)
    low_s = times_s[rows, np.maximum(interval - 1, 0)][:, None]
    high_s = times_s[rows, np.minimum(interval + 1, ends - 1)][:, None]
    found = np.abs(np.log2(ratios[rows, at]))
    could = np.full(low_s.shape, np.inf)
    return Peaks(found, times_s[rows, at], low_s[:, :places], high_s[:, :places], could[:, :places], found)


def stacked(parts: Sequence[Peaks]) -> Peaks:
    """Give the peaks of all signals from those of parts of them, in order."""
    return Peaks(*(np.concatenate([getattr(part, each.name) for part in parts]) for each in fields(Peaks)))


def searched(of: Callable[[Array], Array], known: Peaks) -> tuple[Array, Array, Array]:
    """Search the intervals of peaks that could hold more than was found.

    of: the figure at given times, [B, Q] to [B, Q]. Gives, [B] each, the largest size found, its time in
    s, and how much larger it could be where the search did not look closer.
    """
    found, found_s, left = known.found, known.found_s, known.rest
    hopeful = known.could > found[:, None] * (1.0 + ENOUGH)
    places = np.flatnonzero(hopeful.any(axis=0))
    beside = np.flatnonzero(~hopeful.any(axis=0))
    if len(beside):
        left = np.maximum(left, known.could[:, beside].max(axis=1))
    if not len(places):
        return found, found_s, np.maximum(left - found, 0.0)
    # All places of all signals at once: each is one stretch of 2 POINTS - 1 moments.
    low_s, high_s = known.low_s[:, places].ravel(), known.high_s[:, places].ravel()
    stretches = np.arange(len(low_s))
    rows = np.arange(len(found))
    for _ in range(ROUNDS):
        near_s = low_s[:, None] + (high_s - low_s)[:, None] * _GRID
        near = of(near_s.reshape(len(found), -1)).reshape(near_s.shape)
        could = _could(near)
        best = could.argmax(axis=1)
        low_s, high_s = near_s[stretches, best], near_s[stretches, best + 1]
        reached = could[stretches, best]
        could[stretches, best] = 0.0
        left = np.maximum(left, could.reshape(len(found), -1).max(axis=1))
        sizes, at_s = np.abs(near).reshape(len(found), -1), near_s.reshape(len(found), -1)
        top = sizes.argmax(axis=1)
        better = sizes[rows, top] > found
        found = np.where(better, sizes[rows, top], found)
        found_s = np.where(better, at_s[rows, top], found_s)
    left = np.maximum(left, reached.reshape(len(found), -1).max(axis=1))
    return found, found_s, np.maximum(left - found, 0.0)


def most_of_parabolas(values: Array) -> Array:
    """Give the largest size, [B], of parabolas through the start, middle and end of each interval."""
    found = most(values)
    start, middle, end = _thirds(values)
    bend = start + end
    bend -= 2.0 * middle
    # With x from -1 to 1 the parabola is middle + lean x / 2 + bend x**2 / 2, its vertex at -lean / (2 bend),
    # and a vertex between the ends is no further than half the bend from the middle.
    could = np.abs(bend)
    could *= 0.5
    could += np.abs(middle)
    rows, places = np.nonzero(could > found[:, None])
    lean, bend = end[rows, places] - start[rows, places], bend[rows, places]
    within = np.abs(lean) < 2.0 * np.abs(bend)
    rows, lean, bend = rows[within], lean[within], bend[within]
    vertex = np.abs(middle[rows, places[within]] - lean * lean / (8.0 * bend))
    np.maximum.at(found, rows, vertex)
    return found


def _thirds(values: Array) -> tuple[Array, Array, Array]:
    """Give what intervals have at their start, middle and end, [B, I] each."""
    ends = (values.shape[1] + 1) // 2
    return values[:, : ends - 1], values[:, ends:], values[:, 1:ends]


def _could(values: Array) -> Array:
    """Give what the size of a figure could reach in each interval, [B, I].

    A parabola exceeds its samples by an eighth of their second difference at most; a kink by all of it.
    """
    start, middle, end = _thirds(values)
    could = start + end
    could -= 2.0 * middle
    np.abs(could, out=could)
    sizes = np.abs(values)
    at_start, at_middle, at_end = _thirds(sizes)
    highest = np.maximum(at_start, at_end)
    could += np.maximum(highest, at_middle, out=highest)
    return could
