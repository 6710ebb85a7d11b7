"""A top that is clipped: how high it may be, and when the light was half way to it."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from modebook.measure.events import Change, Scene
from modebook.measure.trace import Trace

OVER, OVER_DOUBT = 1.2, 0.3  # a top that is clipped is about so many times the level that it is clipped at
HALF_DOUBT = 0.03  # of the top, where a level between stands for half of it
HALF_MOST = 2.0  # times the level of clipping: a middle level that makes the top higher is not half of it


@dataclass(frozen=True, slots=True)
class Top:
    """About what level a clipped top would have, and the doubt about it; halved: a level between gave it."""

    level: float
    doubt: float
    halved: bool

    @property
    def about(self) -> tuple[float, float]:
        """Level and doubt."""
        return self.level, self.doubt


def clipped_top(trace: Trace, scene: Scene) -> Top | None:
    """Give about what a clipped top would be: twice a level between, if that can be, or somewhat above.

    None where nothing is clipped. Nobody clips by many times; and who sends a middle level sends half.
    """
    if trace.clipped is None or not trace.clipped.any():
        return None
    low, clip = float(scene.levels[0]), float(np.median(trace.level[trace.clipped]))
    for middle in scene.levels[1:-1][::-1]:
        top = 2.0 * float(middle) - low
        if 0.98 * (clip - low) <= top - low <= HALF_MOST * (clip - low):
            return Top(top, HALF_DOUBT * (top - low), True)
    return Top(low + OVER * (clip - low), OVER_DOUBT * max(clip - low, 1e-12), False)


def with_top(scene: Scene, trace: Trace, top: float) -> Scene:
    """Give the scene with its highest level at a clipped top, and its changes as wide as up to there."""
    last = len(scene.levels) - 1
    levels = np.append(scene.levels[:-1], top)
    changes = [
        _up_to(change, scene, trace, top) if last in (change.before, change.after) else change
        for change in scene.changes
    ]
    return replace(scene, levels=levels, changes=tuple(changes), seen=scene.levels)


def _up_to(change: Change, scene: Scene, trace: Trace, top: float) -> Change:
    rising = scene.levels[change.after] > scene.levels[change.before]
    base, clip = float(scene.levels[change.before if rising else change.after]), float(scene.levels[-1])
    times = (top - base) / (clip - base)
    i, j = np.searchsorted(trace.time_s, [change.from_s, change.to_s])
    at_s, level = trace.time_s[i : j + 1], trace.level[i : j + 1]
    if len(at_s) < 2:
        return replace(change, width_s=change.width_s * times)
    share = (level - base) / (top - base)
    if rising:
        half_s = float(np.interp(0.5, np.maximum.accumulate(share), at_s))
    else:
        half_s = float(np.interp(0.5, np.maximum.accumulate(share[::-1]), at_s[::-1]))
    return replace(change, half_s=half_s, width_s=change.width_s * times)
