"""Signals that are exact between breakpoints: constant, straight, bent or decaying pieces, many at once.

A Signal holds B signals (trials of one fade, or the slots of a universe) that share K breakpoints, in
arrays of shape [B, K]. Piece k runs from times_s[k] to times_s[k + 1], the last one without end, and
with dt the time since its start it is

    start + slope * min(dt, ramp_s) + bend * dt**2 + swing * (1 - exp(-dt / decay_s))

so values and integrals come from closed forms, without sampling: the only error is that of floating
point. The first piece is constant and also stands for all time before it.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TypeAlias

import numpy as np
from numpy.typing import ArrayLike, NDArray

from .errors import ResponseError

Array: TypeAlias = NDArray[np.float64]

SAME_TIME_S = 1e-11  # breakpoints closer than this are one: far above rounding, far below any packet


@dataclass(frozen=True, slots=True)
class Pieces:
    """The pieces that hold at some times, each array [Q], [1, Q] or [B, Q]; None where a term is absent."""

    since_s: Array
    start: Array
    slope: Array | None
    ramp_s: Array | None
    bend: Array | None
    swing: Array | None
    decay_s: Array | None

    def map(self, change: Callable[[Array], Array]) -> Pieces:
        """Give the pieces with every term that there is changed."""

        def changed(term: Array | None) -> Array | None:
            return None if term is None else change(term)

        slope, ramp_s, bend = changed(self.slope), changed(self.ramp_s), changed(self.bend)
        swing, decay_s = changed(self.swing), changed(self.decay_s)
        return Pieces(change(self.since_s), change(self.start), slope, ramp_s, bend, swing, decay_s)

    def value(self) -> Array:
        """Give the signal's value."""
        total = self.start
        if self.slope is not None:
            ramped = self.since_s if self.ramp_s is None else np.minimum(self.since_s, self.ramp_s)
            total = total + self.slope * ramped
        if self.bend is not None:
            total = total + self.bend * self.since_s**2
        if self.swing is not None and self.decay_s is not None:
            total = total - self.swing * np.expm1(-np.maximum(self.since_s, 0.0) / self.decay_s)
        return total

    def area(self) -> Array:
        """Give the integral from the start of the piece, in seconds of full."""
        total = self.start * self.since_s
        if self.slope is not None:
            if self.ramp_s is None:
                total += self.slope * (0.5 * self.since_s * self.since_s)
            else:
                ramped = np.minimum(self.since_s, self.ramp_s)
                total += self.slope * ramped * (self.since_s - 0.5 * ramped)
        if self.bend is not None:
            total += self.bend * self.since_s**3 / 3.0
        if self.swing is not None and self.decay_s is not None:
            since = np.maximum(self.since_s, 0.0)
            total += self.swing * (since + self.decay_s * np.expm1(-since / self.decay_s))
        return total


class Signal:
    """B signals on K shared breakpoints; see the module for the pieces.

    times_s: [K], rising, in s. start, slope (1/s), ramp_s (s), bend (1/s2), swing: [B, K]; decay_s (s):
    [B, K] too. Levels and light are 0 to 1 of full, but nothing here depends on it. joined: each piece
    runs straight to the start of the next, and the last is constant; slope is then not given.
    """

    def __init__(
        self,
        times_s: Array,
        start: Array,
        slope: Array | None = None,
        ramp_s: Array | None = None,
        bend: Array | None = None,
        swing: Array | None = None,
        decay_s: Array | None = None,
        *,
        joined: bool = False,
    ) -> None:
        if start.ndim != 2 or times_s.shape != start.shape[1:]:
            raise ResponseError("a signal needs one time and one value for each piece")
        self.times_s, self.start, self.joined = times_s, start, joined
        self.ramp_s, self.bend, self.swing, self.decay_s = ramp_s, bend, swing, decay_s
        self._slope = slope
        self._areas: Array | None = None

    @property
    def slope(self) -> Array | None:
        """The slopes, [B, K] in 1/s; of joined pieces worked out when first asked for."""
        if self._slope is None and self.joined:
            slope = np.zeros_like(self.start)
            np.subtract(self.start[:, 1:], self.start[:, :-1], out=slope[:, :-1])
            slope[:, :-1] /= np.diff(self.times_s)
            self._slope = slope
        return self._slope

    @property
    def count(self) -> int:
        """How many signals there are (B)."""
        return int(self.start.shape[0])

    @property
    def straight(self) -> bool:
        """Whether every piece is constant or straight."""
        return self.bend is None and self.swing is None

    def pieces(self, at_s: ArrayLike) -> Pieces:
        """Give the pieces that hold at at_s, [Q] for all signals alike or [B, Q] for each its own."""
        pieces, _ = self.find(at_s)
        return pieces

    def at(self, at_s: ArrayLike) -> Array:
        """Give the values [B, Q] at times at_s ([Q] or [B, Q], in s); at a jump, the value after it."""
        return self.pieces(at_s).value()

    def before(self, at_s: ArrayLike) -> Array:
        """Give the values [B, Q] just before times at_s; they differ from at() at jumps only."""
        pieces, _ = self.find(at_s, side="left")
        return pieces.value()

    def both(self, at_s: Array) -> tuple[Array, Array]:
        """Give what area() and at() give of the same times, in less time."""
        pieces, index = self.find(at_s)
        return _take(self.areas, index) + pieces.area(), pieces.value()

    def area(self, at_s: ArrayLike) -> Array:
        """Give the integrals [B, Q] from the first breakpoint to at_s ([Q] or [B, Q], in s)."""
        pieces, index = self.find(at_s)
        return _take(self.areas, index) + pieces.area()

    @property
    def areas(self) -> Array:
        """The integrals [B, K] from the first breakpoint to each breakpoint."""
        if self._areas is None:
            areas = np.empty_like(self.start)
            areas[:, 0] = 0.0
            np.cumsum(self.whole().area(), axis=1, out=areas[:, 1:])
            self._areas = areas
        return self._areas

    def ends(self) -> Array:
        """Give the values [B, K - 1] that each piece but the last has reached at its end."""
        return self.whole().value()

    def breaks_s(self) -> Array:
        """Give every time at which a formula changes: [M], or [B, M] where ramps end within pieces."""
        if self.ramp_s is None:
            return self.times_s
        room_s = np.append(np.diff(self.times_s), np.inf)
        within = (self.ramp_s > SAME_TIME_S) & (self.ramp_s < room_s - SAME_TIME_S)
        some = within.any(axis=0)
        if not some.any():
            return self.times_s
        stops_s = self.times_s[some] + np.where(within, self.ramp_s, 0.0)[:, some]
        every_s = np.concatenate([np.broadcast_to(self.times_s, self.start.shape), stops_s], axis=1)
        every_s.sort(axis=1)
        return np.asarray(every_s)

    def starts_at(self, times_s: Array) -> bool:
        """Say whether the first pieces start at these times ([M], in s), one each."""
        own_s = self.times_s[: len(times_s)]
        return len(own_s) == len(times_s) and bool((np.abs(own_s - times_s) < SAME_TIME_S).all())

    def rows(self, which: slice | NDArray[np.intp]) -> Signal:
        """Give some of the signals, with what is known of their integrals."""
        if self.joined:
            some = Signal(self.times_s, self.start[which], joined=True)
        else:
            some = Signal(self.times_s, *(None if term is None else term[which] for term in self._terms()))  # type: ignore[arg-type]
        some._areas = None if self._areas is None else self._areas[which]
        return some

    def shifted(self, by_s: float) -> Signal:
        """Give the same signals, by_s seconds later."""
        if self.joined:
            return Signal(self.times_s + by_s, self.start, joined=True)
        return Signal(self.times_s + by_s, *self._terms())  # type: ignore[arg-type]

    def whole(self) -> Pieces:
        """Give every piece but the last at its own end."""
        return Pieces(
            np.diff(self.times_s),
            *(None if term is None else term[:, :-1] for term in self._terms()),  # type: ignore[arg-type]
        )

    def _terms(self) -> tuple[Array | None, ...]:
        return self.start, self.slope, self.ramp_s, self.bend, self.swing, self.decay_s

    def find(self, at_s: ArrayLike, side: str = "right") -> tuple[Pieces, NDArray[np.intp]]:
        at = np.asarray(at_s, dtype=np.float64)
        # A time that rounding left beside a breakpoint is at it.
        found = np.searchsorted(self.times_s, at + (SAME_TIME_S if side == "right" else -SAME_TIME_S))
        index = np.maximum(found - 1, 0)
        terms = (None if term is None else _take(term, index) for term in self._terms())
        return Pieces(at - self.times_s[index], *terms), index  # type: ignore[arg-type]


def _take(term: Array, index: NDArray[np.intp]) -> Array:
    if index.ndim == 2 and term.shape[0] > 1:
        return np.take_along_axis(term, index, axis=1)
    if index.ndim == 2:
        return np.asarray(term[0].take(index))
    return term.take(index, axis=1)


def held(times_s: ArrayLike, values: ArrayLike, first: ArrayLike) -> Signal:
    """Give the signals that hold each value from its time on: stairs.

    times_s: [J], in s; values: [J] or [B, J]; first: the value before times_s[0], one or [B].
    """
    times = np.asarray(times_s, dtype=np.float64)
    steps = np.atleast_2d(np.asarray(values, dtype=np.float64))
    start = np.empty((steps.shape[0], steps.shape[1] + 1))
    start[:, 0] = first
    start[:, 1:] = steps
    lead_s = 1.0 if len(times) < 2 else float(times[1] - times[0])
    return Signal(np.concatenate([[times[0] - lead_s], times]), start)


def polygon(times_s: ArrayLike, values: ArrayLike) -> Signal:
    """Give the signals that run in straight lines through points, and stay where they end.

    times_s: [J], rising, in s; values: [J] or [B, J].
    """
    times = np.asarray(times_s, dtype=np.float64)
    points = np.atleast_2d(np.asarray(values, dtype=np.float64))
    start = np.concatenate([points[:, :1], points], axis=1)
    return Signal(np.concatenate([[times[0] - 1.0], times]), start, joined=True)


def merged_times(*times_s: Array) -> Array:
    """Give all the times in order, those within SAME_TIME_S of the one before left out."""
    every = np.sort(np.concatenate(times_s))
    keep = np.empty(len(every), dtype=bool)
    keep[:1] = True
    np.greater(np.diff(every), SAME_TIME_S, out=keep[1:])
    return np.asarray(every[keep])


def largest_change(signal: Signal, span_s: float) -> Array:
    """Give, for each signal [B], the largest change within any stretch of span_s seconds, exactly.

    The change over a stretch that starts at t runs straight between the times where t or t + span_s is
    a breakpoint, so its extremes are at those times, just before or after each. The same holds for
    pieces that decay at one rate; bent pieces are refused with ResponseError.
    """
    if signal.bend is not None:
        raise ResponseError("the largest change is found for straight and decaying pieces only")
    breaks = signal.breaks_s()
    axis = breaks.ndim - 1
    both = np.concatenate([breaks, breaks - span_s], axis=axis)
    after = np.abs(signal.at(both + span_s) - signal.at(both)).max(axis=1)
    before = np.abs(signal.before(both + span_s) - signal.before(both)).max(axis=1)
    return np.asarray(np.maximum(after, before))
