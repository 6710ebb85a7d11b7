"""Finds what happened in a trace: stretches where the light stands still, and the changes between them."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from modebook.measure.errors import MeasureError
from modebook.measure.trace import Floats, Trace

LOOK_S = 0.12  # a light that changes by less than FLAT within this time stands still
LOOK_CLOSER_S = 0.05
FLAT = 0.015  # of the trace's range
SAME_LEVEL = 0.08  # of the range: plateaus closer than this are one level
LEAST_RANGE = 6.0  # in standard deviations of the noise: below it there is no event
FULL = 0.8
HALF = (0.3, 0.7)
CLOSE_S = 0.6  # steps of one staircase are not farther apart
FADE_S = 0.5


@dataclass(frozen=True, slots=True)
class Change:
    """One change of the light between two stretches where it stands still."""

    from_s: float
    to_s: float
    half_s: float
    """When it is half done."""
    width_s: float
    """From 10 to 90 % of it, divided by 0.8: the length of a straight line."""
    before: int
    after: int
    """Levels, by their place in Scene.levels."""


@dataclass(frozen=True, slots=True)
class Scene:
    """The changes of a trace; levels [P] rising; steady [N], 1 where the light stands still; flat [N]."""

    changes: tuple[Change, ...]
    levels: Floats
    steady: Floats
    flat: Floats
    noise: Floats
    """Standard deviation of a sample while steady, at each of the levels, [P]."""
    seen: Floats | None = None
    """The levels as they stand in the trace, where the highest is clipped."""


def recognise(trace: Trace) -> Scene:
    """Give the changes of a trace in order. Raises MeasureError where nothing happens in it."""
    time_s, level = trace.time_s, trace.level
    sigma = _noise(level)
    low, high = (float(value) for value in np.percentile(level, [0.5, 99.5]))
    span = high - low
    if not span > max(LEAST_RANGE * sigma, 1e-12):
        raise MeasureError(
            trace.path,
            "no event: the light does not change by more than its noise",
            remedy="start the clip before the first change and let it hold at least one",
        )
    still = _still(time_s, level, LOOK_S, max(FLAT * span, 4.0 * sigma / np.sqrt(_wide(trace, LOOK_S))))
    closer = _still(
        time_s, level, LOOK_CLOSER_S, max(FLAT * span, 3.0 * sigma / np.sqrt(_wide(trace, LOOK_CLOSER_S)))
    )
    runs = _plateaus(trace, still, closer, span, sigma)
    if len(runs) < 2:
        raise MeasureError(
            trace.path,
            "no event: no two stretches of steady light with a change between them",
            remedy="hold the light for half a second before and after each change",
        )
    means = np.array([np.median(level[a:b]) for a, b in runs])
    runs, means = _joined(runs, means, level, max(SAME_LEVEL * span, 3.0 * sigma))
    which, levels = _levels(means, [b - a for a, b in runs], max(SAME_LEVEL * span, 3.0 * sigma))
    steady, flat = np.zeros(len(level)), np.empty(len(level))
    flat[:] = np.interp(time_s, [0.5 * (time_s[a] + time_s[b - 1]) for a, b in runs], means)
    for (a, b), mean in zip(runs, means, strict=True):
        steady[a:b], flat[a:b] = 1.0, mean
    noise = np.array(
        [
            max(
                (
                    _spread(level[a:b] - np.median(level[a:b]))
                    for (a, b), w in zip(runs, which, strict=True)
                    if w == p
                ),
                default=sigma,
            )
            for p in range(len(levels))
        ]
    )
    changes = [
        _change(time_s, level, runs[k], runs[k + 1], means[k], means[k + 1], int(which[k]), int(which[k + 1]))
        for k in range(len(runs) - 1)
        if which[k] != which[k + 1]
    ]
    if not changes:
        raise MeasureError(
            trace.path,
            "no event: the light comes back to where it was before it has stood still",
            remedy="hold the light for half a second before and after each change",
        )
    return Scene(tuple(changes), levels, steady, flat, noise)


def named(scene: Scene) -> tuple[str, ...]:
    """Give the events in words: snap up, snap down (full, half or other height), staircase, fade."""
    span = float(np.ptp(scene.levels)) or 1.0
    usual = float(np.median([change.width_s for change in scene.changes]))
    told: list[str] = []
    at = 0
    while at < len(scene.changes):
        first = scene.changes[at]
        rising = scene.levels[first.after] > scene.levels[first.before]
        last = at
        while (
            last + 1 < len(scene.changes)
            and (scene.levels[scene.changes[last + 1].after] > scene.levels[scene.changes[last + 1].before])
            == rising
            and scene.changes[last + 1].half_s - scene.changes[last].half_s < CLOSE_S
        ):
            last += 1
        way = "up" if rising else "down"
        height = abs(scene.levels[first.after] - scene.levels[first.before]) / span
        if last - at >= 2:
            told.append(f"staircase {way}")
        elif first.width_s > max(FADE_S, 2.5 * usual):
            told.append(f"fade {way}")
            last = at
        else:
            last = at
            size = "full" if height > FULL else "half" if HALF[0] < height < HALF[1] else "other"
            told.append(f"snap {way}, {size} height")
        at = last + 1
    return tuple(told)


def _noise(level: Floats) -> float:
    """The standard deviation of the noise, from differences of neighbors: changes are few among them."""
    return float(np.median(np.abs(np.diff(level))) / (0.6745 * np.sqrt(2.0)))


def _spread(left: Floats) -> float:
    """The standard deviation of what is left, little moved by outliers; of few samples the plain one."""
    if len(left) < 4:
        return 0.0
    robust = 1.4826 * float(np.median(np.abs(left)))
    plain = float(np.std(left))
    return plain if robust == 0.0 or plain < 2.0 * robust else robust


def _wide(trace: Trace, look_s: float) -> int:
    return max(2, round(look_s / trace.step_s))


def _still(time_s: Floats, level: Floats, look_s: float, most: float) -> NDArray[np.bool_]:
    """Where the means of the stretches before and after differ by little."""
    width = max(2, round(look_s / float(np.median(np.diff(time_s)))))
    if len(level) < 2 * width + 1:
        return np.zeros(len(level), dtype=bool)
    sums = np.concatenate([[0.0], np.cumsum(level)])
    means = (sums[width:] - sums[:-width]) / width  # mean of level[i:i + width]
    differ = np.abs(means[width:] - means[:-width])  # at i + width
    found = np.ones(len(level), dtype=bool)
    found[width : width + len(differ)] = differ < most
    found[:width] = found[width]
    found[width + len(differ) :] = found[width + len(differ) - 1]
    return found


def _plateaus(
    trace: Trace, still: NDArray[np.bool_], closer: NDArray[np.bool_], span: float, sigma: float
) -> list[tuple[int, int]]:
    """Stretches where the light stands still, and shorter ones inside a change that look flat close up."""
    runs = _runs(still)
    shortest = max(3, round(0.04 / trace.step_s))
    found = list(runs)
    gaps = [(runs[k][1], runs[k + 1][0]) for k in range(len(runs) - 1)]
    for a, b in gaps:
        for c, d in _runs(closer[a:b]):
            # The edges belong to the stretches around.
            if c > 0 and d < b - a and d - c >= shortest:
                part = trace.level[a + c : a + d]
                if np.ptp(part) < max(2.0 * FLAT * span, 6.0 * sigma):
                    found.append((a + c, a + d))
    return sorted(found)


def _runs(mask: NDArray[np.bool_]) -> list[tuple[int, int]]:
    edges = np.flatnonzero(np.diff(np.concatenate([[False], mask, [False]]).astype(np.int8)))
    return [(int(a), int(b)) for a, b in zip(edges[::2], edges[1::2], strict=True)]


def _joined(
    runs: list[tuple[int, int]], means: Floats, level: Floats, same: float
) -> tuple[list[tuple[int, int]], Floats]:
    """Neighbors of one level are one stretch, unless the light left it in between."""
    kept: list[tuple[int, int]] = []
    told: list[float] = []
    for (a, b), mean in zip(runs, means, strict=True):
        if kept and abs(mean - told[-1]) < same:
            between = level[kept[-1][1] : a]
            if not len(between) or np.abs(between - mean).max() < 2.0 * same:
                kept[-1] = (kept[-1][0], b)
                told[-1] = float(np.median(level[kept[-1][0] : b]))
                continue
        kept.append((a, b))
        told.append(float(mean))
    return kept, np.array(told)


def _levels(means: Floats, counts: list[int], same: float) -> tuple[NDArray[np.intp], Floats]:
    """Which plateaus share a level, and the levels, rising."""
    order = np.argsort(means)
    which = np.zeros(len(means), dtype=np.intp)
    groups: list[list[int]] = []
    for n in order:
        if groups and means[n] - means[groups[-1][0]] < same:
            groups[-1].append(int(n))
        else:
            groups.append([int(n)])
    levels = []
    for p, members in enumerate(groups):
        which[members] = p
        levels.append(np.average(means[members], weights=[counts[n] for n in members]))
    return which, np.array(levels)


def _change(
    time_s: Floats,
    level: Floats,
    before: tuple[int, int],
    after: tuple[int, int],
    low: float,
    high: float,
    from_level: int,
    to_level: int,
) -> Change:
    # A plateau's end lies some way before the change: look from its middle to the next one's middle.
    a, b = (before[0] + before[1]) // 2, (after[0] + after[1]) // 2
    share = (level[a : b + 1] - low) / (high - low)
    at_s = time_s[a : b + 1]

    def crossing(goal: float) -> float:
        above = share >= goal
        # The last time that it stood below: noise on the plateau before does not count.
        k = int(np.flatnonzero(~above)[-1]) if (~above).any() else 0
        first = int(np.flatnonzero(above)[0]) if above.any() else len(share) - 1
        k = k if goal < 0.5 else max(first - 1, 0)
        if goal >= 0.5:
            k = min(k, len(share) - 2)
        k = min(max(k, 0), len(share) - 2)
        rise = share[k + 1] - share[k]
        part = (goal - share[k]) / rise if abs(rise) > 1e-12 else 0.5
        return float(at_s[k] + min(max(part, 0.0), 1.0) * (at_s[k + 1] - at_s[k]))

    early, middle, late = crossing(0.1), crossing(0.5), crossing(0.9)
    width = max(late - early, 0.0) / 0.8
    return Change(min(early, middle), max(late, middle), middle, width, from_level, to_level)
