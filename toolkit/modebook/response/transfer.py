"""Light from a level through a dimmer curve and a lowest output, and the exact area under it over time."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache, partial
from typing import Protocol

import numpy as np
from numpy.typing import ArrayLike, NDArray

from .curves import LINEAR, Curve
from .quantize import above_lowest
from .signal import Array, Pieces, Signal

# Along a decaying or bent piece through a curve the area comes from Gauss-Legendre sums of this many
# points on each panel, a panel being at most half a time constant: for smooth curves that is rounding;
# at a kink of a table or a lowest output it is an approximation, whose error the tests bound.
NODES = 8
BENT_PANELS = 2
PANEL_CONSTANTS = 0.5
PANELS_MAX = 256.0
SMALL_SPAN = 1e-6  # of full: below it the difference of two areas has lost too many digits


class Light(Protocol):
    """Something with exact values and areas over time; Signal and Shaped are."""

    @property
    def count(self) -> int:
        """How many signals there are."""
        ...

    @property
    def straight(self) -> bool:
        """Whether every piece is straight."""
        ...

    def at(self, at_s: ArrayLike) -> Array:
        """Values [B, Q]."""
        ...

    def area(self, at_s: ArrayLike) -> Array:
        """Integrals [B, Q] from the first breakpoint."""
        ...

    def breaks_s(self) -> Array:
        """Times at which a formula changes."""
        ...

    def rows(self, which: slice | NDArray[np.intp]) -> Light:
        """Some of the signals."""
        ...


@dataclass(frozen=True, slots=True)
class Transfer:
    """A dimmer curve with a lowest stable output (0 to 1 of full; 0: none); see quantize.above_lowest."""

    curve: Curve = LINEAR
    lowest: float = 0.0
    on_below: bool = False

    @property
    def plain(self) -> bool:
        """Whether light is the level itself."""
        return self.curve.name == "linear" and self.lowest == 0.0

    def light(self, level: ArrayLike) -> Array:
        """Give the light (0 to 1) of levels (0 to 1), same shape."""
        if self.plain:
            return np.asarray(level, dtype=np.float64)
        lit = self.curve.to_light(level)
        return above_lowest(lit, self.lowest, on_below=self.on_below) if self.lowest else lit

    def area(self, level: ArrayLike) -> Array:
        """Give the integral of light over level from 0 to each level: closed forms of the curve."""
        at = np.clip(np.asarray(level, dtype=np.float64), 0.0, 1.0)
        if not self.lowest:
            return _curve_area(self.curve, at)
        edge = self.curve.to_level(self.lowest)
        floor = self.lowest if self.on_below else 0.0
        above = np.maximum(at, edge)
        return np.asarray(
            _curve_area(self.curve, above) - _curve_area(self.curve, edge) + floor * np.minimum(at, edge)
        )


@dataclass(eq=False)
class Shaped:
    """Signals of levels (constant, straight or decaying pieces) seen through a transfer: light."""

    level: Signal
    transfer: Transfer
    _areas: Array | None = None

    @property
    def count(self) -> int:
        """How many signals there are (B)."""
        return self.level.count

    @property
    def straight(self) -> bool:
        """Whether every piece is straight: not in general."""
        return False

    def at(self, at_s: ArrayLike) -> Array:
        """Give the light [B, Q] at times [Q] or [B, Q] in s."""
        return self.transfer.light(self.level.at(at_s))

    def breaks_s(self) -> Array:
        """Give every time at which the light's formula changes, but for the kinks of the curve itself.

        [M], or [B, M] where ramps end within pieces or the level meets the lowest output.
        """
        breaks = self.level.breaks_s()
        if not self.transfer.lowest:
            return breaks
        every = np.concatenate(
            [np.broadcast_to(breaks, (self.count, breaks.shape[-1])), self._met_s()], axis=1
        )
        every.sort(axis=1)
        return every

    def _met_s(self) -> Array:
        """Give when, in each piece, the level meets the lowest output; its start where it does not."""
        level = self.level
        edge = float(self.transfer.curve.to_level(self.transfer.lowest))
        room_s = np.append(np.diff(level.times_s), np.inf)
        since = np.zeros(level.start.shape)
        with np.errstate(divide="ignore", invalid="ignore"):
            if level.swing is not None and level.decay_s is not None:
                since = -level.decay_s * np.log1p((level.start - edge) / level.swing)
            elif level.slope is not None:
                since = (edge - level.start) / level.slope
        return np.asarray(level.times_s + np.where((since > 0.0) & (since < room_s), since, 0.0))

    def rows(self, which: slice | NDArray[np.intp]) -> Shaped:
        """Give some of the signals."""
        return Shaped(self.level.rows(which), self.transfer)

    def area(self, at_s: ArrayLike) -> Array:
        """Give the integrals [B, Q] of the light from the first breakpoint, in seconds of full."""
        pieces, index = self.level.find(at_s)
        if self._areas is None:
            whole = self._piece_area(self.level.whole())
            self._areas = np.concatenate([np.zeros((self.count, 1)), np.cumsum(whole, axis=1)], axis=1)
        base = self._areas.take(index, axis=1) if index.ndim == 1 else self._own(index)
        return np.asarray(base + self._piece_area(pieces))

    def _own(self, index: NDArray[np.intp]) -> Array:
        assert self._areas is not None
        rows = np.broadcast_to(self._areas, (len(index), self._areas.shape[1]))
        return np.take_along_axis(rows, index, axis=1)

    def _piece_area(self, pieces: Pieces) -> Array:
        if pieces.swing is not None or pieces.bend is not None:
            return self._summed_area(pieces)
        if pieces.slope is None:
            return self.transfer.light(pieces.start) * pieces.since_s
        since = np.broadcast_to(pieces.since_s, pieces.start.shape)
        ramped = since if pieces.ramp_s is None else np.minimum(since, pieces.ramp_s)
        end = pieces.start + pieces.slope * ramped
        span = end - pieces.start
        wide = np.abs(span) > SMALL_SPAN
        mean = self.transfer.light(0.5 * (pieces.start + end))
        areas = self.transfer.area(end) - self.transfer.area(pieces.start)
        np.divide(areas, span, out=mean, where=wide)
        return np.asarray(mean * ramped + self.transfer.light(end) * (since - ramped))

    def _summed_area(self, pieces: Pieces) -> Array:
        """Sum the light of decaying or bent pieces over panels (see NODES)."""
        shape = np.broadcast_shapes(pieces.start.shape, pieces.since_s.shape)
        flat = pieces.map(lambda term: np.broadcast_to(term, shape).ravel())
        moving, panels = flat.since_s, np.full(flat.since_s.shape, BENT_PANELS)
        if flat.decay_s is not None:
            if flat.slope is None:
                # Beyond 40 time constants nothing moves: panels there would be wasted.
                moving = np.minimum(moving, 40.0 * flat.decay_s)
            spans = np.clip(moving / flat.decay_s / PANEL_CONSTANTS, 1.0, PANELS_MAX)
            panels = np.maximum(panels, np.exp2(np.ceil(np.log2(spans)))).astype(np.int64)
        rest = flat.since_s - moving
        areas = self.transfer.light(flat.value()) * rest if rest.any() else np.zeros(rest.shape)
        for count in np.unique(panels):
            chosen = np.flatnonzero(panels == count)
            places, weights = _panel_nodes(int(count))
            some = flat.map(partial(_column, chosen))
            lit = self.transfer.light(replace(some, since_s=moving[chosen, None] * places).value())
            areas[chosen] += (lit @ weights) * moving[chosen]
        return np.asarray(areas.reshape(shape))


def through(level: Signal, transfer: Transfer) -> Light:
    """Give the light that levels make through a transfer; the signal itself where they are the same."""
    return level if transfer.plain else Shaped(level, transfer)


def _curve_area(curve: Curve, at: Array) -> Array:
    if curve.name == "linear":
        return np.asarray(at**2 / 2.0)
    if curve.name == "square":
        return np.asarray(at**3 / 3.0)
    if curve.name == "s":
        return np.asarray(at**3 - at**4 / 2.0)
    if curve.name == "inverse-square":
        return np.asarray(at**1.5 / 1.5)
    levels, lights = np.array(curve.points, dtype=np.float64).T
    areas = np.append(0.0, np.cumsum(np.diff(levels) * (lights[:-1] + lights[1:]) / 2.0))
    left = np.clip(np.searchsorted(levels, at, side="right") - 1, 0, len(levels) - 2)
    share = (at - levels[left]) / (levels[left + 1] - levels[left])
    mean = lights[left] + (lights[left + 1] - lights[left]) * share / 2.0
    return np.asarray(areas[left] + mean * (at - levels[left]))


def _column(chosen: NDArray[np.intp], term: Array) -> Array:
    return np.asarray(term[chosen, None])


@lru_cache(maxsize=16)
def _panel_nodes(panels: int) -> tuple[Array, Array]:
    """Give places (0 to 1) and weights of Gauss-Legendre sums over so many equal panels."""
    nodes, weights = np.polynomial.legendre.leggauss(NODES)
    places = (np.arange(panels)[:, None] + 0.5 * (nodes + 1.0)) / panels
    return places.ravel(), np.tile(0.5 * weights / panels, panels)
