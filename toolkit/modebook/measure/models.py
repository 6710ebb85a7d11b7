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

from modebook.measure.pieces import SHORTEST_S, approached, corners, jumps, lines, ramps, through
from modebook.measure.trace import Floats

Method: TypeAlias = Literal["none", "average", "interpolate", "lag", "limit", "restart"]
METHODS: tuple[Method, ...] = ("none", "average", "interpolate", "lag", "limit", "restart")

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
    if not len(steps_s):
        return np.repeat(values[:1].astype(np.float64), len(at_s), axis=0)
    if method == "lag":
        return approached(at_s, open_s, steps_s, values, length_s)
    if method == "interpolate":
        steps_s = steps_s + max(length_s - period_s, 0.0)
        length_s = min(length_s, period_s)
    if method in ("limit", "restart"):
        nodes_s, heights, slopes = lines(*corners(method, steps_s, values, length_s))
    elif method == "none" or length_s <= SHORTEST_S:
        nodes_s, heights, slopes = jumps(steps_s, values)
    else:
        nodes_s, heights, slopes = ramps(steps_s, values, length_s)
    return through(nodes_s, heights, slopes, at_s, open_s)


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
