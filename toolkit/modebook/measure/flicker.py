"""Mains flicker in a trace: found at twice the mains' frequency on the steady stretches, and taken out.

Lamps on the mains flicker at 100 or 120 Hz. What a camera makes of it is a sine of that frequency at
its frames' times, whatever rate it appears to have. Part of it may come from other lamps (it is there
when ours is out), part from ours (it grows with its light): both are fitted and taken out.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from modebook.measure.trace import Floats, Trace

MAINS_HZ = (100.0, 120.0)
OFF_BY_HZ = 0.3  # mains and camera clocks together
SHARE_EXPLAINED = 0.25  # of the variance of the steady stretches
RIDGE = 1e-6
LEVELS_APART = 0.2  # of the range
SLOWEST_HZ = 1.0  # a flicker that the samples' rate turns into something slower looks like the end of a lag


@dataclass(frozen=True, slots=True)
class Flicker:
    """A fitted flicker: its frequency, and the amplitudes in shares of the trace's range."""

    frequency_hz: float
    of_others: float
    of_light: float


def _columns(at_s: Floats, frequency_hz: float, light: Floats) -> Floats:
    angle = 2.0 * np.pi * frequency_hz * at_s
    waves = [np.cos(angle), np.sin(angle), np.cos(2.0 * angle), np.sin(2.0 * angle)]
    return np.stack(waves + [wave * light for wave in waves], axis=1)


def without_flicker(trace: Trace, steady: Floats, level: Floats) -> tuple[Trace, Flicker | None]:
    """Give the trace with mains flicker taken out, and what was found; unchanged where there is none.

    steady: [N], 1 where the light stands still, else 0; level: [N], a smooth light, about as it would be
    without flicker. A flicker that the camera's rate turns into something still cannot be seen and does
    no harm; what it turns into something slow is left alone, for it cannot be told from a slow light.
    """
    use = steady > 0
    if trace.clipped is not None:
        use = use & ~trace.clipped
    if use.sum() < 40:
        return trace, None
    low, high = float(level.min()), float(level.max())
    shares = (level - low) / (high - low) if high > low else np.zeros_like(level)
    left = (trace.level - level)[use]
    left = left - left.mean()
    middle_s = trace.time_s + 0.5 * (trace.open_s or 0.0)
    lasts_s = float(np.ptp(trace.time_s))
    step_hz = min(max(0.25 / max(lasts_s, 1e-3), 0.01), 0.15)
    rate_hz = 1.0 / trace.step_s
    offsets = np.arange(-OFF_BY_HZ, OFF_BY_HZ + step_hz / 2, step_hz)
    # What grows with the light shows only where unclipped samples stand at several levels.
    count = 8 if float(np.ptp(shares[use])) > LEVELS_APART else 4
    best: tuple[float, float, Floats] | None = None
    for mains in MAINS_HZ:
        if abs(mains - rate_hz * round(mains / rate_hz)) < SLOWEST_HZ:
            continue
        for frequency in mains + offsets:
            terms = _columns(middle_s, float(frequency), shares)
            some = terms[use, :count]
            square = some.T @ some
            square[np.diag_indices(len(square))] += RIDGE * len(some)
            amounts = np.linalg.solve(square, some.T @ left)
            unexplained = float(((left - some @ amounts) ** 2).sum())
            if best is None or unexplained < best[0]:
                best = (unexplained, float(frequency), amounts)
    if best is None:
        return trace, None
    whole = float((left**2).sum())
    if whole <= 0.0 or best[0] > (1.0 - SHARE_EXPLAINED) * whole:
        return trace, None
    _, frequency, amounts = best
    amounts = np.concatenate([amounts, np.zeros(8 - count)])
    if (
        min(abs(abs(frequency - mains) - OFF_BY_HZ) for mains in MAINS_HZ) < 0.5 * step_hz
        and step_hz < OFF_BY_HZ / 3
    ):
        return trace, None  # best at the end of what was searched: something else than mains
    terms = _columns(middle_s, frequency, np.ones_like(shares))[:, :4]
    others = terms @ amounts[:4]
    ours = terms @ amounts[4:]
    # A light of share s shows s (high - low) + low + others + s ours: taken apart by its own level.
    swing = high - low if high > low else 1.0
    cleaned = low + (trace.level - low - others) / (1.0 + ours / swing)
    if trace.clipped is not None:
        cleaned = np.where(trace.clipped, trace.level, cleaned)  # no flicker is seen beyond the top
    span = swing or 1.0
    found = Flicker(
        frequency,
        float(np.hypot(amounts[0], amounts[1]) / span),
        float(np.hypot(amounts[4], amounts[5]) / span),
    )
    return replace(trace, level=cleaned), found
