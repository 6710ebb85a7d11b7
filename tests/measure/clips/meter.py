"""A photodiode or scope that logs a light: samples with noise, a gain, an offset, a rail, as CSV."""

from __future__ import annotations

import io
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from .camera import STEADY, Flicker
from .light import Light

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Meter:
    """rate_hz samples a second; full light reads `full` over `offset`, and nothing reads past rail times full
    over the offset. noise: standard deviation as a share of full. sent_full: what the log of the wire writes
    for full (1, 100 or 255); None: the wire is not logged."""

    rate_hz: float
    full: float = 3.0
    offset: float = 0.05
    noise: float = 0.005
    rail: float = np.inf
    sent_full: float | None = None
    flicker: Flicker = STEADY

    def samples(self, light: Light, seconds: float, seed: int) -> tuple[Floats, Floats]:
        """Give times (s) and readings of a light over `seconds`."""
        rng = np.random.default_rng((seed, 3))
        times_s = np.arange(int(seconds * self.rate_hz)) / self.rate_hz
        sine = np.sin(2 * np.pi * self.flicker.hz * times_s + self.flicker.phase)
        level = light.at(times_s) * (1.0 + self.flicker.lamp_depth * sine)
        level += self.flicker.other * (1.0 + self.flicker.other_depth * sine)
        level = np.minimum(level + rng.normal(0.0, self.noise, times_s.size), self.rail)
        return times_s, self.offset + self.full * level


def held(times_s: Floats, heard_s: Floats, levels: Floats, first: float) -> Floats:
    """Give the newest level on the wire at each of times_s."""
    index = np.searchsorted(heard_s, times_s, side="right") - 1
    return np.where(index >= 0, levels[np.maximum(index, 0)], first)


def as_csv(times_s: Floats, readings: Floats, sent: Floats | None) -> str:
    """Give the log as text, with the titles time_s, level and, where it was logged, sent."""
    text = io.StringIO()
    columns = [times_s, readings] if sent is None else [times_s, readings, sent]
    titles = "time_s,level" if sent is None else "time_s,level,sent"
    formats = ["%.6f", "%.5f"] if sent is None else ["%.6f", "%.5f", "%.6g"]
    np.savetxt(text, np.column_stack(columns), fmt=formats, delimiter=",", header=titles, comments="")
    return text.getvalue()
