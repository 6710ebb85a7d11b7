"""Reads the time of sending off a second lamp without smoothing: single steps, staircases and fades."""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple, TypeAlias

import numpy as np
from numpy.typing import NDArray

from modebook.measure.errors import MeasureError
from modebook.measure.events import Change, Scene
from modebook.measure.sending import HELD_S, Sending, from_steps
from modebook.measure.trace import Floats, Trace

JUMP = 0.06  # of a change: a step of a staircase
CREEPS = 0.2  # of a change: what is not done by its one jump
STEPS_MOST = 12  # more steps than that in one change are a fade
SLOW = 4  # frames more than an exposure needs: a change that takes longer, without steps, is a fade
FADE_DOUBT = 0.1  # packets
SHORTEST_DOUBT_S = 1e-5
CLIPPED_WITHIN = 0.02  # of the level of clipping: what comes so near may be clipped
TOP_MOST = 1.7  # times the level of clipping: nobody clips by more
HALVED_DOUBT = 0.03  # of a clipped top that a level between gave
NO_CLOSER = 0.5  # packets: no two steps come so close


class Step(NamedTuple):
    """One step: its time in s, the level after it, and the doubt about the time (standard deviation, s).

    slack_s: where two frames bracket it, how far to either side any time is as good; else 0.
    """

    at_s: float
    level: float
    doubt_s: float
    slack_s: float = 0.0


Steps: TypeAlias = list[Step]


def from_reference(
    reference: Trace, scene: Scene, open_s: float, period_s: float, fitted: Callable[[Change], Steps | None]
) -> Sending:
    """Give the steps that a lamp without smoothing shows: a level per steady stretch, a time per step.

    scene: what was recognised in it. A step within an exposure shows as a share of it, which tells its
    time far better than a frame does. A fade comes in a step per packet. fitted: gives the steps of a
    change whose frames are too few to show each. Raises MeasureError where the lamp shows no steps.
    """
    times: list[float] = []
    values: list[float] = [float(scene.levels[scene.changes[0].before])]
    doubts: list[float] = []
    slacks: list[float] = []
    for n, change in enumerate(scene.changes):
        stop_s = scene.changes[n + 1].from_s if n + 1 < len(scene.changes) else float(reference.time_s[-1])
        start_s = scene.changes[n - 1].to_s if n else float(reference.time_s[0])
        steps = _steps(reference, scene, change, (start_s, stop_s), open_s)
        if steps is None:
            steps = fitted(change)
        if steps is None:
            steps = _fade(reference, scene, change, open_s, period_s)
        for step in merged(steps, values[-1], NO_CLOSER * period_s):
            times.append(max(step.at_s, times[-1] + 1e-6) if times else step.at_s)
            values.append(step.level)
            doubts.append(step.doubt_s)
            slacks.append(step.slack_s)
    if not times:
        raise MeasureError(reference.path, "the reference light shows no step", remedy="give its box")
    shares = (np.array(values) - min(values)) / (max(values) - min(values))
    # A level seen twice is one level, whatever noise makes of it.
    held = np.diff(np.concatenate([[reference.time_s[0]], times, [reference.time_s[-1]]])) >= HELD_S
    for value in shares[held]:
        shares[np.abs(shares - value) < 0.02] = value
    return from_steps(
        np.array(times),
        shares,
        np.array(doubts),
        float(reference.time_s[-1]),
        float(reference.time_s[0]),
        np.array(slacks),
    )


def merged(steps: Steps, before: float, closer_s: float) -> Steps:
    """Give steps with those that come closer than any packets as one, at the middle of their heights."""
    found: Steps = []
    level = before  # before the last one found
    for step in steps:
        if found and step.at_s - found[-1].at_s < closer_s:
            last = found[-1]
            first, second = abs(last.level - level), abs(step.level - last.level)
            share = second / max(first + second, 1e-12)
            middle_s = last.at_s + share * (step.at_s - last.at_s)
            doubt_s, slack_s = max(step.doubt_s, last.doubt_s), max(step.slack_s, last.slack_s)
            found[-1] = Step(middle_s, step.level, doubt_s, slack_s)
            continue
        if found:
            level = found[-1].level
        found.append(step)
    return found


def _steps(
    reference: Trace, scene: Scene, change: Change, around_s: tuple[float, float], open_s: float
) -> Steps | None:
    """The steps of one change: time, level after it, doubt; None where it shows no steps."""
    # A single step is partly in so many exposures at most.
    frames = int(np.ceil((open_s + reference.spread_s) / reference.step_s))
    begin_s = max(change.from_s - 4 * reference.step_s, around_s[0])
    end_s = min(change.to_s + 4 * reference.step_s, max(around_s[1], change.to_s + reference.step_s))
    i, j = np.searchsorted(reference.time_s, [begin_s, end_s])
    i, j = max(int(i) - 1, 0), min(int(j) + 1, len(reference.time_s))
    level, opens = reference.level[i:j], reference.time_s[i:j]
    first, last = float(scene.levels[change.before]), float(scene.levels[change.after])
    noise = float(scene.noise.max())
    jump = np.abs(np.diff(level)) > max(JUMP * abs(last - first), 5.0 * noise)
    runs = _runs(jump)
    if len(runs) < 2 or len(runs) > STEPS_MOST:
        return None
    means = [float(np.median(level[a:b])) for a, b in runs]
    means[0], means[-1] = first, last
    # Compression may let the light creep to its level once it has jumped.
    creeps = CREEPS if len(runs) == 2 else 1.5 * JUMP
    if any(float(np.ptp(level[a:b])) > max(creeps * abs(last - first), 8.0 * noise) for a, b in runs):
        return None
    found: Steps = []
    for n in range(len(runs) - 1):
        end, begin = runs[n][1], runs[n + 1][0]
        if begin - end > frames:
            return None
        at_s, doubt_s, slack_s = time_of(
            level,
            opens,
            (end, begin),
            (means[n], means[n + 1]),
            _top(scene, change),
            (open_s, reference.spread_s),
            noise,
        )
        found.append(Step(at_s, means[n + 1], doubt_s, slack_s))
    return found


def _top(scene: Scene, change: Change) -> tuple[float, float, float] | None:
    """Where the upper level of a change is clipped, and from what to what it may be; None where it is not."""
    last = len(scene.levels) - 1
    if scene.seen is None or last not in (change.before, change.after):
        return None
    clip, low, about = float(scene.seen[-1]), float(scene.levels[0]), float(scene.levels[-1])
    if last > 1:  # a level between gave it
        return clip, max((1.0 - HALVED_DOUBT) * about, clip), (1.0 + HALVED_DOUBT) * about
    return clip, clip, low + TOP_MOST * (clip - low)


def time_of(
    level: Floats,
    opens: Floats,
    around: tuple[int, int],
    between: tuple[float, float],
    top: tuple[float, float, float] | None,
    open_and_spread_s: tuple[float, float],
    noise: float,
) -> tuple[float, float, float]:
    """When a step came, its doubt and its slack, by the exposures that saw part of it or were near it.

    around: the last frame before it, plus one, and the first after it; between: the levels; top: where the
    upper one is clipped, and from and to what it may be.
    """
    (end, begin), (before, after), (open_s, spread_s) = around, between, open_and_spread_s
    margin = 4.0 * noise / abs(after - before) + 0.02
    if top is None and open_s > 0.0:
        seen = np.clip((level[end:begin] - before) / (after - before), 0.0, 1.0)
        partly = (seen > margin) & (seen < 1.0 - margin)
        if partly.any():
            lit_s, slope_s = _since(seen[partly], open_s, spread_s)
            at_s = float(np.mean(opens[end:begin][partly] + open_s + spread_s - lit_s))
            doubt_s = noise / abs(after - before) * float(slope_s.max()) / float(np.sqrt(partly.sum()))
            return at_s, max(doubt_s, 0.02 * open_s, SHORTEST_DOUBT_S), 0.0
    # An exposure that saw some of the new level closed after the step; one that saw some of the old opened
    # before it: how much of each bounds the time.
    low = min(before, after)
    clip, least, most = (max(before, after),) * 3 if top is None else top
    frames = slice(end - 1, begin + 1)
    lit_least = np.clip((level[frames] - low) / (most - low) - margin, 0.0, 1.0)
    lit_most = np.clip((level[frames] - low) / (least - low) + margin, 0.0, 1.0)
    lit_most[level[frames] > clip - CLIPPED_WITHIN * (clip - low)] = 1.0
    new_least, new_most = (lit_least, lit_most) if after > before else (1.0 - lit_most, 1.0 - lit_least)
    old, new = new_most < 1.0, new_least > 0.0
    from_s = (opens[frames] + open_s * (1.0 - new_most))[old].max(initial=float(opens[end - 1]))
    to_s = (opens[frames] + open_s * (1.0 - new_least) + spread_s)[new].min(
        initial=float(opens[begin]) + open_s
    )
    slack_s = 0.5 * max(float(to_s - from_s), 0.0)
    doubt_s = max(slack_s / float(np.sqrt(3.0)), 0.02 * open_s, SHORTEST_DOUBT_S)
    return 0.5 * float(from_s + to_s), doubt_s, slack_s


def _since(seen: Floats, open_s: float, spread_s: float) -> tuple[Floats, Floats]:
    """How long before the last row closed a step came that exposures saw so much of, in s, and by how much
    that moves with what was seen. Rows that open one after another give a long exposure with soft ends.
    """
    long_s, short_s = max(open_s, spread_s), min(open_s, spread_s)
    soft = short_s / (2.0 * long_s)
    ends = np.minimum(seen, 1.0 - seen)
    bent_s = np.sqrt(2.0 * long_s * short_s * ends)
    since_s = np.where(ends < soft, bent_s, long_s * ends + 0.5 * short_s)
    since_s = np.where(seen > 0.5, open_s + spread_s - since_s, since_s)
    slope_s = np.where(ends < soft, long_s * short_s / np.maximum(bent_s, 1e-12), long_s)
    return since_s, slope_s


def _fade(reference: Trace, scene: Scene, change: Change, open_s: float, period_s: float) -> Steps:
    """A fade's steps, one a packet, by the straight line through its middle."""
    first, last = float(scene.levels[change.before]), float(scene.levels[change.after])
    i, j = np.searchsorted(reference.time_s, [change.from_s - 0.1, change.to_s + 0.1])
    share = (reference.level[i:j] - first) / (last - first)
    middle = (share > 0.12) & (share < 0.88)
    at_s = reference.time_s[i:j] + 0.5 * open_s
    if middle.sum() >= 3:
        rate, offset = np.polyfit(at_s[middle], share[middle], 1)
        begin_s, takes_s = float(-offset / rate), float(1.0 / rate)
    else:
        begin_s, takes_s = change.half_s + 0.5 * open_s - 0.5 * change.width_s, change.width_s
    count = max(round(takes_s / period_s), 1)
    # Stairs lie half a packet behind the line through their middles.
    steps_s = begin_s + takes_s * (np.arange(count) + 0.5) / count
    values = first + (last - first) * np.arange(1, count + 1) / count
    return [Step(float(s), float(v), FADE_DOUBT * period_s) for s, v in zip(steps_s, values, strict=True)]


def _runs(jump: NDArray[np.bool_]) -> list[tuple[int, int]]:
    """Stretches of at least two samples without a jump between them."""
    still = np.concatenate([[False], ~jump, [False]])
    edges = np.flatnonzero(np.diff(still.astype(np.int8)))
    return [(int(a), int(b) + 1) for a, b in zip(edges[::2], edges[1::2], strict=True)]
