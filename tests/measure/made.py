"""Lights worked out by the definitions of smoothing on a fine grid, and filmed: for tests of fitting."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from modebook.measure.trace import Trace

Floats = NDArray[np.float64]
FINE_S = 1e-4


def sent(steps: Sequence[tuple[float, float]], until_s: float) -> tuple[Floats, Floats]:
    """What is sent on a fine grid of times in s: (time, level) pairs, 0 before the first."""
    at_s = np.arange(-1.0, until_s + 1.0, FINE_S)
    times, levels = np.array([time for time, _ in steps]), np.array([0.0, *(level for _, level in steps)])
    return at_s, levels[np.searchsorted(times, at_s, side="right")]


def averaged(at_s: Floats, levels: Floats, length_s: float) -> Floats:
    """The mean of what was sent over the last length_s."""
    wide = max(round(length_s / FINE_S), 1)
    sums = np.concatenate([np.zeros(wide), np.cumsum(levels)])
    return (sums[wide:] - sums[:-wide]) / wide


def limited(at_s: Floats, levels: Floats, length_s: float) -> Floats:
    """What follows the steps no faster than full scale in length_s."""
    light, now, most = np.empty_like(levels), float(levels[0]), FINE_S / length_s
    for n, goal in enumerate(levels):
        now += min(max(float(goal) - now, -most), most)
        light[n] = now
    return light


def filmed(
    at_s: Floats,
    light: Floats,
    *,
    fps: float = 240.0,
    open_s: float = 1 / 480,
    noise: float = 0.002,
    top: float | None = None,
    **more: object,
) -> Trace:
    """A trace of mean light over exposures, with noise, clipped at `top`."""
    opens = np.arange(0.05, float(at_s[-1]) - 1.0, 1 / fps)
    area = np.concatenate([[0.0], np.cumsum(light)]) * FINE_S
    edges = np.append(at_s, at_s[-1] + FINE_S)
    level = (np.interp(opens + open_s, edges, area) - np.interp(opens, edges, area)) / open_s
    level = level + noise * np.random.default_rng(7).standard_normal(len(opens))
    clipped = None
    if top is not None:
        clipped = level >= top
        level = np.minimum(level, top)
    return Trace("made", "clip", opens, level, open_s, fps=fps, clipped=clipped, **more)  # type: ignore[arg-type]
