"""Light in pieces, straight or exponential, from node to node; and its means over exposures, in closed form.

Work grows with samples and steps, not with their product: each sample looks up the piece that it lies in.
"""

from __future__ import annotations

from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from modebook.measure.trace import Floats

SHORTEST_S = 1e-7  # a length of 0 in a division
BEFORE_S = 1.0  # how long before the first step the first node stands: any time would do

Pieces: TypeAlias = tuple[Floats, Floats, Floats]
"""Nodes [K] in s, rising; heights at each and slopes from each on, in levels and levels a second, [K, P]."""


def jumps(steps_s: Floats, values: Floats) -> Pieces:
    """Give the pieces of light that jumps at each step: steps_s [J], rising; values [J + 1, P]."""
    nodes_s = np.concatenate([[steps_s[0] - BEFORE_S], steps_s])
    return nodes_s, values.astype(np.float64), np.zeros(values.shape)


def ramps(steps_s: Floats, values: Floats, length_s: float) -> Pieces:
    """Give the pieces of a straight line of length_s from each step on, all lines added up."""
    bends = np.diff(values, axis=0) / length_s
    times = np.concatenate([[steps_s[0] - BEFORE_S], steps_s, steps_s + length_s])
    turns = np.concatenate([np.zeros((1, values.shape[1])), bends, -bends])
    order = np.argsort(times, kind="stable")
    nodes_s = times[order]
    slopes = np.cumsum(turns[order], axis=0)
    heights = np.empty_like(slopes)
    heights[0] = values[0]
    heights[1:] = values[0] + np.cumsum(slopes[:-1] * np.diff(nodes_s)[:, None], axis=0)
    return nodes_s, heights, slopes


def lines(nodes_s: Floats, heights: Floats) -> Pieces:
    """Give the pieces of straight lines through corners, level beyond the last."""
    slopes = np.zeros_like(heights)
    spans = np.diff(nodes_s)[:, None]
    np.divide(np.diff(heights, axis=0), spans, out=slopes[:-1], where=spans > 0)
    return nodes_s, heights, slopes


def corners(method: str, steps_s: Floats, values: Floats, length_s: float) -> tuple[Floats, Floats]:
    """Give the corners of the light that limit or restart makes: times [K] in s, heights [K, P]."""
    length = max(length_s, SHORTEST_S)
    # A packet with no new value changes nothing: no new line begins there.
    new = (values[1:] != values[:-1]).any(axis=1)
    steps_s, values = steps_s[new], values[np.concatenate([[True], new])]
    now = values[0].astype(np.float64)
    if not len(steps_s):
        return np.zeros(1), now[None, :]
    times: list[float] = [float(steps_s[0]) - BEFORE_S]
    heights: list[Floats] = [now]
    takes = length
    rooms_s = [*np.diff(steps_s).tolist(), np.inf]
    for begin, room, goal in zip(steps_s.tolist(), rooms_s, values[1:], strict=True):
        gap = goal - now
        if method == "limit":
            takes = float(np.abs(gap).max()) * length
        times.append(begin)
        heights.append(now)
        if takes <= 0.0:
            continue
        if takes > room:
            now = now + gap * (room / takes)
            continue
        now = goal
        times.append(begin + takes)
        heights.append(now)
    return np.array(times), np.array(heights)


def through(nodes_s: Floats, heights: Floats, slopes: Floats, at_s: Floats, open_s: float) -> Floats:
    """Give means of straight pieces over exposures of open_s that open at at_s, [N, P]; level before them."""
    if open_s <= 0.0:
        since, index = _place(nodes_s, at_s)
        return np.asarray(heights[index] + slopes[index] * np.maximum(since, 0.0))
    spans = np.diff(nodes_s)[:, None]
    areas = np.zeros_like(heights)
    np.cumsum((heights[:-1] + 0.5 * slopes[:-1] * spans) * spans, axis=0, out=areas[1:])

    def area(at: Floats) -> Floats:
        since, index = _place(nodes_s, at)
        bend = np.maximum(since, 0.0) * since * 0.5
        return np.asarray(areas[index] + since * heights[index] + bend * slopes[index])

    return np.asarray((area(at_s + open_s) - area(at_s)) / open_s)


def approached(at_s: Floats, open_s: float, steps_s: Floats, values: Floats, tau_s: float) -> Floats:
    """Give means over exposures, [N, P], of light that comes exponentially nearer to the newest value."""
    tau = max(tau_s, SHORTEST_S)
    nodes_s = np.concatenate([[steps_s[0] - BEFORE_S], steps_s])
    spans = np.diff(nodes_s)
    stays = np.exp(-spans / tau)
    gaps = np.zeros(values.shape)  # how far the light is from what it goes for, at each node
    gap = gaps[0]
    changes = values[:-1] - values[1:]
    for j, stay in enumerate(stays):
        gap = gap * stay + changes[j]
        gaps[j + 1] = gap
    if open_s <= 0.0:
        since, index = _place(nodes_s, at_s)
        return np.asarray(values[index] + gaps[index] * np.exp(-np.maximum(since, 0.0) / tau))
    areas = np.zeros(values.shape)
    np.cumsum(values[:-1] * spans[:, None] + tau * gaps[:-1] * (1.0 - stays)[:, None], axis=0, out=areas[1:])

    def area(at: Floats) -> Floats:
        since, index = _place(nodes_s, at)
        come = -tau * np.expm1(-np.maximum(since, 0.0) / tau)
        return np.asarray(areas[index] + since * values[index] + come * gaps[index])

    return np.asarray((area(at_s + open_s) - area(at_s)) / open_s)


def _place(nodes_s: Floats, at_s: Floats) -> tuple[Floats, NDArray[np.intp]]:
    """How long after its node each time is, [N, 1], and which node that is; before the first: negative."""
    index = np.maximum(np.searchsorted(nodes_s, at_s, side="right") - 1, 0)
    return (at_s - nodes_s[index])[:, None], index
