"""One cue judged under one choice, for planning: stepping with the likely burst, lateness, delay; cached.

No trials are drawn: the losses are one burst, the longest that is not exceeded in 95 % of such cues,
placed where it hurts most, and the camera stands at its worst phase. The same question is computed once.
A plan asks thousands of questions and needs the stepping of one cue and the lateness of another: each can
be asked for alone, in less than half of the time, with the same figures.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from .camera import Camera
from .cue_light import CueLight, cue_light, middles_s
from .fade import Fade, ideal_of, sent_values, worst_of
from .late import lateness
from .losses import ArrivalLog, LostBurst, burst_not_exceeded
from .phases import at_worst_phase
from .signal import Array
from .stepping import Worst, by_eye
from .transfer import Light

CONFIDENCE = 0.95
PLACES = 256  # starts of the burst that are tried at first; between them the best is searched
CLOSER = 8  # starts whose worst phase is searched closely, those that could hurt most first
LATE_CONSTANTS = 5.0  # time constants after which a lag's memory of a burst is below 1 %


@dataclass(frozen=True, slots=True)
class Judgement:
    """What one choice makes of one cue; times in s.

    worst_stepping_jnd, worst_step_jnd, worst_step_percent: over camera phases and places of the burst
    (a snap has no stepping: 0). worst_stepping_at_s: where, after the cue. burst_packets: the packets
    lost in a row. added_s: the setting's part in the settling of the cue. settles_s: after the cue, worst
    phase, without losses; settles_lossy_s: with the burst at the end of the cue. delay_s: how far
    the light's half-way point runs behind its packets for the setting and the link: what match compares.
    frames_partly_exposed: most camera frames that see a snap in part; None without a camera.
    """

    worst_stepping_jnd: float
    worst_step_jnd: float
    worst_step_percent: float
    worst_stepping_at_s: float
    burst_packets: int
    added_s: float
    settles_s: float
    settles_lossy_s: float
    delay_s: float
    frames_partly_exposed: int | None


@dataclass(frozen=True, slots=True)
class Stepping:
    """The stepping of a Judgement alone; see there."""

    worst_stepping_jnd: float
    worst_stepping_at_s: float
    burst_packets: int


@dataclass(frozen=True, slots=True)
class Late:
    """The times of a Judgement alone; see there."""

    added_s: float
    settles_s: float
    settles_lossy_s: float
    delay_s: float
    frames_partly_exposed: int | None


@lru_cache(maxsize=16384)
def judge(fade: Fade, confidence: float = CONFIDENCE) -> Judgement:
    """Judge one cue under one choice; see the module. fade.trials is left aside.

    The camera's phase, where given, is left aside too. Raises ResponseError as fade.answer does.
    """
    fade, clean, cue, packets, burst = _asked(fade, confidence)
    worst, _ = worst_of(clean, cue)
    found = [worst]
    ideal = ideal_of(clean)
    if burst and ideal is not None:
        found += _burst_everywhere(clean, ideal, burst, packets, only_stepping=False)
    top = _most(found)
    late = judge_lateness(fade, confidence)
    return Judgement(
        worst_stepping_jnd=top[0],
        worst_step_jnd=max(float(one.step_jnd.max()) for one in found),
        worst_step_percent=max(float(one.step_percent.max()) for one in found),
        worst_stepping_at_s=top[1],
        burst_packets=burst,
        added_s=late.added_s,
        settles_s=late.settles_s,
        settles_lossy_s=late.settles_lossy_s,
        delay_s=late.delay_s,
        frames_partly_exposed=late.frames_partly_exposed,
    )


@lru_cache(maxsize=16384)
def judge_stepping(fade: Fade, confidence: float = CONFIDENCE) -> Stepping:
    """Judge how one cue steps under one choice: the stepping of `judge`, without its other figures."""
    _, clean, cue, packets, burst = _asked(fade, confidence)
    ideal = ideal_of(clean)
    if ideal is None:
        return Stepping(0.0, 0.0, burst)
    found = [worst_of(clean, cue, only_stepping=True)[0]]
    if burst:
        found += _burst_everywhere(clean, ideal, burst, packets, only_stepping=True)
    return Stepping(*_most(found), burst)


@lru_cache(maxsize=16384)
def judge_lateness(fade: Fade, confidence: float = CONFIDENCE) -> Late:
    """Judge how late one cue is under one choice: the times of `judge`, without its other figures."""
    choice = fade.smoothing.toward(fade.ramp.rising)
    link = replace(fade.link, losses=None)
    camera = None if fade.camera is None else replace(fade.camera, phase=None)
    late = lateness(fade.ramp, choice, fade.transfer, link, fade.bits, camera)
    burst = 0
    if fade.link.losses is not None:
        _, _, _, _, burst = _asked(fade, confidence)
    return Late(
        added_s=late.added_s,
        settles_s=late.settles.worst_s,
        settles_lossy_s=late.settles.worst_s + burst * link.period_s,
        delay_s=late.added_half_s + link.delay_s,
        frames_partly_exposed=None if late.frames_partly_exposed is None else late.frames_partly_exposed[1],
    )


def _asked(fade: Fade, confidence: float) -> tuple[Fade, Fade, CueLight, int, int]:
    """Give a question, it without losses, its light, and how many packets it has and loses in a row."""
    camera = None if fade.camera is None else replace(fade.camera, phase=None)
    kept = fade.link.losses if isinstance(fade.link.losses, ArrivalLog) else None
    clean = replace(fade, link=replace(fade.link, losses=kept), camera=camera, trials=1)
    choice = fade.smoothing.toward(fade.ramp.rising)
    cue = cue_light(clean.ramp, choice, clean.transfer, clean.link, clean.bits)
    packets = len(sent_values(clean, cue))
    return fade, clean, cue, packets, burst_not_exceeded(fade.link.losses, packets, confidence)


def _most(found: list[Worst]) -> tuple[float, float]:
    """Give the largest stepping in JND of some, and where it is, in s; of equals the first."""
    worst, at_s = -math.inf, 0.0
    for one in found:
        top = int(one.stepping_jnd.argmax())
        if one.stepping_jnd[top] > worst:
            worst, at_s = float(one.stepping_jnd[top]), float(one.stepping_at_s[top])
    return worst, at_s


def _burst_everywhere(fade: Fade, ideal: Light, burst: int, packets: int, only_stepping: bool) -> list[Worst]:
    """Give the worst with the burst at each of PLACES starts, then at each start around the worst of them."""
    starts = np.unique(np.linspace(0, packets - 1, min(packets, PLACES)).round().astype(np.int64))
    found, top = _with_burst(fade, ideal, burst, starts, only_stepping)
    if len(starts) == packets:
        return [found]
    worst = int(top[found.stepping_jnd.argmax()])
    low, high = starts[max(worst - 1, 0)], starts[min(worst + 1, len(starts) - 1)]
    around, _ = _with_burst(fade, ideal, burst, np.arange(low, high + 1), only_stepping)
    return [found, around]


def _with_burst(
    fade: Fade, ideal: Light, burst: int, starts: NDArray[np.int64], only_stepping: bool
) -> tuple[Worst, NDArray[np.intp]]:
    """Give the worst with the burst at the starts that hurt most, and which of the starts those are."""
    link = replace(fade.link, losses=LostBurst(burst, tuple(int(start) for start in starts)))
    choice = fade.smoothing.toward(fade.ramp.rising)
    cue = cue_light(fade.ramp, choice, fade.transfer, link, fade.bits, len(starts))
    light = cue.light()
    if fade.camera is None:
        samples_s = middles_s(cue.received, cue.moves_until_s)
        return by_eye(light, ideal, fade.viewing, samples_s), np.arange(len(starts))
    from_s, to_s = _touched_s(cue, starts, burst, fade.camera)
    coarse = at_worst_phase(light, ideal, fade.viewing, fade.camera, from_s, to_s, False, only_stepping)
    top = np.argsort(-(coarse.stepping_jnd + coarse.bound_jnd), kind="stable")[:CLOSER]
    rows = light.rows(top)
    closer = at_worst_phase(
        rows, ideal, fade.viewing, fade.camera, from_s[top], to_s[top], only_stepping=only_stepping
    )
    return closer, top


def _touched_s(cue: CueLight, starts: NDArray[np.int64], burst: int, camera: Camera) -> tuple[Array, Array]:
    """Give from when to when, [B] each in s, the burst changes the light; elsewhere it is that without."""
    period_s = cue.received.period_s
    length_s = cue.choice.lengths_s(period_s)[0]
    memory_s = length_s * (LATE_CONSTANTS if cue.choice.method == "lag" else 1.0)
    if cue.choice.method == "restart":
        memory_s = length_s * math.ceil(LATE_CONSTANTS)
    from_s = cue.received.times_s[starts] - period_s
    return from_s, from_s + (burst + 2) * period_s + memory_s + camera.frame_s
