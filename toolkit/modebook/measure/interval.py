"""The 95 % interval of a length: how far it can be held from its best before the fit is clearly worse."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from modebook.measure.fit import LONGEST_S, ROBUST_AT, Fit, Search
from modebook.measure.guesses import at_length

CHI2_95 = 3.841  # one degree of freedom (any table of the chi-squared distribution)
ROUNDS = 7
CLOSE = 0.1  # of the rise in deviance that is looked for
NEIGHBORS = 8  # samples whose errors may be alike
NEAR = 0.35  # of it: from here the parabola does


@dataclass(frozen=True, slots=True)
class Interval:
    """From and to, in s; open: whether no end was found on that side before the longest length."""

    from_s: float
    to_s: float
    open_end: bool = False


def interval_of(search: Search, best: Fit, scale: float) -> Interval:
    """Give the profile-likelihood interval; scale: the deviance of the noise per sample, at least 1."""
    deviation_s, alike = _deviation(search, best, scale)
    wanted = CHI2_95 * scale * alike
    guess = max(deviation_s * float(np.sqrt(alike)) * 1.96, 1e-5)
    low = _edge(search, best, wanted, -guess)
    high = _edge(search, best, wanted, guess)
    return Interval(max(low, 0.0), min(high, LONGEST_S), high >= LONGEST_S)


def covering(interval: tuple[float, float], best: Fit, most: float, period_s: float) -> tuple[float, float]:
    """Give an interval in packets that holds the lengths of other counts of steps, too, which explain the
    light up to a deviance of most.
    """
    packets = [*interval, *(length_s / period_s for length_s, deviance in best.others if deviance < most)]
    return min(packets), max(packets)


def _deviation(search: Search, best: Fit, scale: float) -> tuple[float, float]:
    """The length's standard deviation by the slopes at the best fit, in s, as if samples were independent;
    and by how much its variance is greater because neighbors are off alike, at least 1.

    A camera's compression carries errors on from frame to frame. Their variance by sums over neighbors, with
    weights falling to the farthest: W. K. Newey, K. D. West, Econometrica 55 (1987) 703, from memory.
    """
    figures = search.first(best.length_s, best.open_s, best.start_s, best.delay_s or 0.0, best)
    slopes = search.slopes(figures)
    left = search.left(figures)
    square = slopes.T @ slopes
    spread = np.sqrt(np.maximum(np.diag(square), 1e-30))
    inverse = np.linalg.pinv(square / np.outer(spread, spread), rcond=1e-9) / np.outer(spread, spread)
    variance = max(float(inverse[0, 0]) * scale, 1e-30)
    # How each sample moves the length; those far off count less and less, as in the fit.
    moves = (slopes @ inverse[0]) * left / np.sqrt(1.0 + (left / ROBUST_AT) ** 2)
    count = len(best.left)
    samples = moves[:count]
    total = float(moves @ moves)
    for apart in range(1, min(NEIGHBORS, count // 4) + 1):
        weight = 1.0 - apart / (NEIGHBORS + 1)
        total += 2.0 * weight * float(samples[apart:] @ samples[:-apart])
    total *= count / max(count - best.searched, 1)
    return float(np.sqrt(variance)) * 1e-3, max(total / variance, 1.0)


def _edge(search: Search, best: Fit, wanted: float, step_s: float) -> float:
    """Where the deviance has risen by what is wanted, on one side: steps outward, then by a parabola."""
    inner, inner_rise = best.length_s, 0.0
    near = best
    outer, outer_rise = inner, 0.0
    for _ in range(ROUNDS):
        outer = min(max(best.length_s + step_s, 0.0), LONGEST_S)
        near_outer = at_length(search, near, outer)
        outer_rise = near_outer.deviance - best.deviance
        if abs(outer_rise - wanted) < NEAR * wanted:
            # About a parabola: where it is as high as wanted follows.
            return best.length_s + (outer - best.length_s) * float(np.sqrt(wanted / outer_rise))
        if outer_rise >= wanted:
            break
        if outer in (0.0, LONGEST_S):
            return outer
        inner, inner_rise, near = outer, max(outer_rise, 0.0), near_outer
        step_s *= min(max(1.1 * float(np.sqrt(wanted / max(inner_rise, 0.02 * wanted))), 1.2), 3.0)
    else:
        return outer
    for _ in range(ROUNDS):
        if abs(outer_rise - wanted) < CLOSE * wanted or abs(outer - inner) < 2e-5:
            break
        # The root of the deviance rises about straight.
        below, above, goal = (float(np.sqrt(max(rise, 0.0))) for rise in (inner_rise, outer_rise, wanted))
        share = min(max((goal - below) / max(above - below, 1e-12), 0.1), 0.9)
        middle = inner + share * (outer - inner)
        near_middle = at_length(search, near, middle)
        rise = near_middle.deviance - best.deviance
        if rise >= wanted:
            outer, outer_rise = middle, rise
        else:
            inner, inner_rise, near = middle, rise, near_middle
    return outer
