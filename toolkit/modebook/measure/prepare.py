"""From a trace to what is fitted: fine samples gathered, steady stretches cut short, noise at each level."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from modebook.measure.events import Scene
from modebook.measure.fit import Samples
from modebook.measure.trace import Floats, Trace

FINE = 12.0  # samples a packet: finer ones are gathered, which keeps what they hold and saves time
BEFORE_S = 0.08
AFTER_S = 0.1
AFTER_WIDTHS = 1.5  # a lag is long in coming
FRAMES = 4
LONG_PACKETS = 10.0  # a change of so many packets is a fade, or goes for one
PART_OF_STEP = 0.5
UNEVEN = 0.006  # of the range: how far stretches of one level may differ where only one of each is seen
ROUNDING = 2e-4  # of the range: below it nothing that a model leaves out is told from noise


def gathered(trace: Trace, period_s: float) -> Trace:
    """Give the trace with runs of fine samples as their means, whose exposure is the run's length."""
    count = int(period_s / FINE / trace.step_s)
    if count < 2:
        return trace
    whole = len(trace.time_s) // count * count

    def mean(values: Floats) -> Floats:
        return np.asarray(values[:whole].reshape(-1, count).mean(axis=1))

    first = trace.time_s[:whole].reshape(-1, count)[:, 0]
    open_s = trace.open_s or 0.0
    # Moments stand for the time around them; exposures follow each other.
    begins = first - (0.5 * trace.step_s if open_s == 0.0 else 0.0)
    lasts = count * trace.step_s if open_s == 0.0 else (count - 1) * trace.step_s + open_s
    clipped = None
    if trace.clipped is not None:
        clipped = np.asarray(trace.clipped[:whole].reshape(-1, count).any(axis=1))
    return replace(
        trace,
        time_s=begins,
        level=mean(trace.level),
        open_s=lasts,
        clipped=clipped,
        rough=None if trace.rough is None else mean(trace.rough),
        sent=None,
        reference=None if trace.reference is None else mean(trace.reference),
    )


def with_uneven_fades(trace: Trace, scene: Scene, period_s: float) -> Trace:
    """Give the trace with the doubt that a gateway leaves in a fade: some packets come twice, some never.

    Each may be off by a part of a packet's step, which no straight fade shows.
    """
    rough = np.zeros(len(trace.time_s)) if trace.rough is None else trace.rough.copy()
    for change in scene.changes:
        packets = change.width_s / period_s
        if packets < LONG_PACKETS:
            continue
        step = abs(float(scene.levels[change.after] - scene.levels[change.before])) / packets
        inside = (trace.time_s > change.from_s - 0.2 * change.width_s) & (
            trace.time_s < change.to_s + 0.2 * change.width_s
        )
        rough[inside] = np.hypot(rough[inside], step * PART_OF_STEP)
    return replace(trace, rough=rough)


def samples_of(trace: Trace, scene: Scene) -> Samples:
    """Give the samples around the changes, with the noise that samples of their level have."""
    keep = np.zeros(len(trace.time_s), dtype=bool)
    for change in scene.changes:
        before = max(BEFORE_S, 0.3 * change.width_s, FRAMES * trace.step_s)
        after = max(AFTER_S, AFTER_WIDTHS * change.width_s, FRAMES * trace.step_s)
        keep |= (trace.time_s > change.from_s - before) & (trace.time_s < change.to_s + after)
    span = float(np.ptp(scene.levels))
    variance = np.interp(trace.level, scene.levels, scene.noise**2) + (ROUNDING * span) ** 2
    if trace.rough is not None:
        variance = variance + trace.rough**2
    if trace.kind == "clip":
        variance = variance + (uneven_of(scene, trace.kind, 0.0) * span) ** 2
    clipped = np.zeros(len(trace.time_s), dtype=bool) if trace.clipped is None else trace.clipped
    return Samples(
        trace.time_s[keep], trace.level[keep], np.sqrt(variance[keep]), clipped[keep], trace.spread_s
    )


def uneven_of(scene: Scene, kind: str, once: float = UNEVEN) -> float:
    """How far stretches of one level differ, as a share of the range: what a camera does to levels, [0, 1].

    Compression and exposure leave each stretch a little off, and a change between two of them with it.
    kind: a clip's or a meter's trace; once: what is given for a clip in which no level is seen often enough.
    """
    steady = scene.flat[scene.steady > 0]
    stretches = steady[np.flatnonzero(np.diff(steady, prepend=np.nan) != 0)]
    levels = scene.levels if scene.seen is None else scene.seen
    nearest = np.abs(stretches[:, None] - levels[None, :]).argmin(axis=1)
    off = stretches - levels[nearest]
    free = len(stretches) - len(levels)
    span = max(float(np.ptp(levels)), 1e-12)
    if free < 2:
        return once if kind == "clip" else 0.0
    return float(np.sqrt((off**2).sum() / free)) / span
