"""What each smoothing method makes of steps, gathered over a camera's or meter's exposure, exactly.

Steps of the level heard at times s_j, a length L and a packet time T give

- none: a jump at each s_j.
- average: a straight line from s_j to s_j + L for each step; lines add up.
- interpolate: a straight line of one packet time that ends at s_j + L; lines add up. (Below one packet
  it is the line of length L that average gives.)
- lag: an exponential approach with time constant L from each s_j; approaches add up.
- limit: follows the steps no faster than full scale in L. It depends on heights in shares of full.
- restart: from each s_j a new straight line, L long, from where the light stands to the new level.

All but limit are linear in the levels, so that levels are found by linear least squares for any times
and lengths. Samples are means over an exposure, worked out from integrals in closed form. The response
engine's smoothers give the same light packet by packet; the tests compare the two.
"""

from __future__ import annotations

from typing import Literal, TypeAlias

import numpy as np

from modebook.measure.trace import Floats

Method: TypeAlias = Literal["none", "average", "interpolate", "lag", "limit", "restart"]
METHODS: tuple[Method, ...] = ("none", "average", "interpolate", "lag", "limit", "restart")
LINEAR_METHODS: tuple[Method, ...] = ("none", "average", "interpolate", "lag")

SHORTEST_S = 1e-7  # a length of 0 in a division
# Gauss-Legendre places and weights over a patch's rows, from the first row (0) to the last (1).
_ROWS = (0.5 - 0.5 * 0.7745966692414834, 0.5, 0.5 + 0.5 * 0.7745966692414834)
_ROW_SHARES = (5.0 / 18.0, 8.0 / 18.0, 5.0 / 18.0)


def answered(
    method: Method,
    at_s: Floats,
    open_s: float,
    spread_s: float,
    steps_s: Floats,
    values: Floats,
    length_s: float,
    period_s: float,
) -> Floats:
    """Give the mean light over exposures that open at at_s, [N, P], for P sets of levels at once.

    steps_s: [J], rising; values: [J + 1, P], the level before the first step and after each;
    open_s: how long each exposure gathers (0: a moment); spread_s: how much later the last row of the
    patch opens than its first. For limit, values are shares of full and each set is worked out alone.
    """
    if spread_s <= 0.0:
        return _at(method, at_s, open_s, steps_s, values, length_s, period_s)
    total = np.zeros((len(at_s), values.shape[1]))
    for place, share in zip(_ROWS, _ROW_SHARES, strict=True):
        total += share * _at(method, at_s + place * spread_s, open_s, steps_s, values, length_s, period_s)
    return total


def _at(
    method: Method,
    at_s: Floats,
    open_s: float,
    steps_s: Floats,
    values: Floats,
    length_s: float,
    period_s: float,
) -> Floats:
    if method in LINEAR_METHODS:
        since = at_s[:, None] - steps_s[None, :]
        if method == "interpolate":
            since = since - max(length_s - period_s, 0.0)
            length_s = min(length_s, period_s)
        share = unit_answer(method, since, open_s, length_s)
        return np.asarray(values[0] + share @ np.diff(values, axis=0))
    nodes_s, heights = corners(method, steps_s, values, length_s)
    return _through(nodes_s, heights, at_s, open_s)


def unit_answer(method: Method, since: Floats, open_s: float, length_s: float) -> Floats:
    """The answer to a step of 1, by the time since, as a mean over the exposure."""
    if method == "lag":
        tau = max(length_s, SHORTEST_S)
        if open_s <= 0.0:
            return np.asarray(-np.expm1(-np.maximum(since, 0.0) / tau))
        late, early = np.maximum(since + open_s, 0.0), np.maximum(since, 0.0)
        return np.asarray(((late - early) + tau * (np.exp(-late / tau) - np.exp(-early / tau))) / open_s)
    if length_s <= SHORTEST_S or method == "none":
        if open_s <= 0.0:
            return np.asarray((since >= 0.0).astype(np.float64))
        return np.asarray(np.clip(since / open_s + 1.0, 0.0, 1.0))
    if open_s <= 0.0:
        return np.asarray(np.clip(since / length_s, 0.0, 1.0))
    return np.asarray((_ramp_area(since + open_s, length_s) - _ramp_area(since, length_s)) / open_s)


def _ramp_area(since: Floats, length_s: float) -> Floats:
    inside = np.clip(since, 0.0, length_s)
    return inside * inside / (2.0 * length_s) + np.maximum(since - length_s, 0.0)


def corners(method: Method, steps_s: Floats, values: Floats, length_s: float) -> tuple[Floats, Floats]:
    """Give the corners of the light that limit or restart makes: times [K] in s, heights [K, P]."""
    length = max(length_s, SHORTEST_S)
    # A packet with no new value changes nothing: no new line begins there.
    new = (values[1:] != values[:-1]).any(axis=1)
    steps_s, values = steps_s[new], values[np.concatenate([[True], new])]
    now = values[0].astype(np.float64)
    if not len(steps_s):
        return np.zeros(1), now[None, :]
    times: list[float] = [float(steps_s[0]) - 1.0]
    heights: list[Floats] = [now]
    ends = np.append(steps_s[1:], np.inf)
    for j, begin in enumerate(steps_s):
        goal = values[j + 1]
        gap = goal - now
        takes = float(np.abs(gap).max()) * length if method == "limit" else length
        times.append(float(begin))
        heights.append(now)
        if takes <= 0.0:
            continue
        room = float(ends[j]) - float(begin)
        if takes <= room:
            now = goal
            times.append(float(begin) + takes)
        else:
            now = now + gap * (room / takes)
            continue
        heights.append(now)
    return np.array(times), np.array(heights)


def _through(nodes_s: Floats, heights: Floats, at_s: Floats, open_s: float) -> Floats:
    """Means over exposures of straight lines through corners, level beyond both ends, [N, P]."""
    spans = np.diff(nodes_s)
    slopes = np.zeros_like(heights)
    np.divide(np.diff(heights, axis=0), spans[:, None], out=slopes[:-1], where=spans[:, None] > 0)

    def place(at: Floats) -> tuple[Floats, np.ndarray[tuple[int], np.dtype[np.intp]]]:
        index = np.maximum(np.searchsorted(nodes_s, at, side="right") - 1, 0)
        return (at - nodes_s[index])[:, None], index

    if open_s <= 0.0:
        since, index = place(at_s)
        return np.asarray(heights[index] + slopes[index] * np.where(since < 0, 0.0, since))
    areas = np.zeros_like(heights)
    np.cumsum(0.5 * (heights[1:] + heights[:-1]) * spans[:, None], axis=0, out=areas[1:])

    def area(at: Floats) -> Floats:
        since, index = place(at)
        bend = np.where(since < 0, 0.0, slopes[index])
        return np.asarray(areas[index] + since * (heights[index] + 0.5 * since * bend))

    return np.asarray((area(at_s + open_s) - area(at_s)) / open_s)
