"""The light that each smoothing method makes of packets, exactly, with its integral over time.

Written from the methods' definitions. T is the time between packets, L = N T the length.
none: stairs. average: mean of the stairs over the last L. interpolate: the line from packet to packet, L
late. lag: dy/dt = (x - y) / L. limit: full scale in L at most. restart: at a packet with a new value a line
of L from where the light is.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Protocol

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

METHODS = ("none", "average", "interpolate", "lag", "limit", "restart")


class Light(Protocol):
    """Light over time, settled before its first and after its last breakpoint."""

    def at(self, times_s: Floats) -> Floats:
        """Give the light, 0 to 1, at times_s."""
        ...

    def integral(self, times_s: Floats) -> Floats:
        """Give the light's integral (level times s) from a fixed moment to times_s."""
        ...


@dataclass(frozen=True, slots=True)
class Straight:
    """Light that runs straight between breakpoints; two at one time are a jump."""

    times_s: Floats
    levels: Floats

    def at(self, times_s: Floats) -> Floats:
        index, since, slope = self._piece(times_s)
        return self.levels[index] + slope * since

    def integral(self, times_s: Floats) -> Floats:
        steps = np.diff(self.times_s)
        sums = np.concatenate(([0.0], np.cumsum(steps * (self.levels[1:] + self.levels[:-1]) / 2)))
        index, since, slope = self._piece(times_s)
        return sums[index] + self.levels[index] * since + slope * since**2 / 2

    def _piece(self, times_s: Floats) -> tuple[NDArray[np.intp], Floats, Floats]:
        index = np.maximum(np.searchsorted(self.times_s, times_s, side="right") - 1, 0)
        since = times_s - self.times_s[index]
        steps = np.diff(self.times_s, append=np.inf)
        rises = np.diff(self.levels, append=self.levels[-1])
        slopes = np.where(steps > 0, rises / np.where(steps > 0, steps, 1.0), 0.0)
        return index, since, np.where(since < 0, 0.0, slopes[index])


@dataclass(frozen=True, slots=True)
class Lagging:
    """Light that from each of times_s on goes from `starts` to `targets` with one time constant."""

    times_s: Floats
    starts: Floats
    targets: Floats
    constant_s: float

    def at(self, times_s: Floats) -> Floats:
        index, since = self._piece(times_s)
        gap = (self.starts - self.targets)[index]
        return self.targets[index] + gap * np.exp(-np.maximum(since, 0.0) / self.constant_s)

    def integral(self, times_s: Floats) -> Floats:
        steps = np.diff(self.times_s)
        gaps = self.starts - self.targets
        whole = self.targets[:-1] * steps - gaps[:-1] * self.constant_s * np.expm1(-steps / self.constant_s)
        sums = np.concatenate(([0.0], np.cumsum(whole)))
        index, since = self._piece(times_s)
        after = self.targets[index] * since - gaps[index] * self.constant_s * np.expm1(
            -np.maximum(since, 0.0) / self.constant_s
        )
        return sums[index] + np.where(since < 0, self.starts[0] * since, after)

    def _piece(self, times_s: Floats) -> tuple[NDArray[np.intp], Floats]:
        index = np.maximum(np.searchsorted(self.times_s, times_s, side="right") - 1, 0)
        return index, times_s - self.times_s[index]


def respond(method: str, length_s: float, times_s: Floats, levels: Floats, first: float) -> Light:
    """Give the light for packets `levels` heard at times_s (evenly spaced), settled at `first` before them.

    A length of 0 is none, whatever the method, except that interpolate needs at least one packet's time.
    """
    if method == "interpolate":
        return _interpolated(length_s, times_s, levels, first)
    changed = np.diff(levels, prepend=first) != 0
    if not changed.any():
        return Straight(times_s[:1], np.array([first]))
    heard_s, sent = times_s[changed], levels[changed]
    if method == "none" or length_s < 1e-9:
        before = np.concatenate(([first], sent[:-1]))
        return Straight(np.repeat(heard_s, 2), np.ravel(np.column_stack((before, sent))))
    if method == "average":
        return _averaged(length_s, heard_s, sent, first)
    if method == "lag":
        return _lagged(length_s, heard_s, sent, first)
    if method in ("limit", "restart"):
        return _chased(method, length_s, heard_s, sent, first)
    raise ValueError(f"{method!r} is no method: give one of {', '.join(METHODS)}")


def _interpolated(length_s: float, times_s: Floats, levels: Floats, first: float) -> Straight:
    period_s = float(times_s[1] - times_s[0])
    points_s = np.concatenate(([times_s[0] - period_s], times_s)) + length_s
    return Straight(points_s, np.concatenate(([first], levels)))


def _averaged(length_s: float, heard_s: Floats, sent: Floats, first: float) -> Straight:
    stairs = respond("none", 0.0, heard_s, sent, first)
    points_s = np.unique(np.concatenate((heard_s, heard_s + length_s)))
    return Straight(points_s, (stairs.integral(points_s) - stairs.integral(points_s - length_s)) / length_s)


def _lagged(constant_s: float, heard_s: Floats, sent: Floats, first: float) -> Lagging:
    starts = [first]
    for index, step_s in enumerate(np.diff(heard_s)):
        starts.append(sent[index] + (starts[-1] - sent[index]) * np.exp(-step_s / constant_s))
    return Lagging(heard_s, np.array(starts), sent, constant_s)


def _chased(method: str, length_s: float, heard_s: Floats, sent: Floats, first: float) -> Straight:
    """Straight lines after each change: at one rate (limit) or in one time (restart)."""
    points_s, light = [float(heard_s[0])], [first]
    for start_s, end_s, target in zip(heard_s, np.append(heard_s[1:], np.inf), sent, strict=True):
        here = light[-1]
        takes_s = length_s * abs(target - here) if method == "limit" else length_s
        done_s = start_s + takes_s
        if done_s <= end_s:
            points_s.append(done_s)
            light.append(target)
        if np.isfinite(end_s):
            share = min((end_s - start_s) / takes_s, 1.0) if takes_s > 0 else 1.0
            points_s.append(end_s)
            light.append(here + (target - here) * share)
    return Straight(np.array(points_s), np.array(light))
