"""What would cure a fade that is seen to step: each cure searched with the engine that found the fault."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from typing import Literal, TypeAlias

import numpy as np

from .cue_light import cue_light
from .errors import ResponseError
from .fade import SEEN_PERCENTILE, Fade, worst_of
from .late import lateness
from .link import Link
from .seen import THRESHOLD_JND
from .smoothing import Smoothing
from .timing import max_refresh_hz

Kind: TypeAlias = Literal["bits", "smoothing", "slower", "rate", "bits and smoothing"]

BITS = (16, 24)
PACKETS = (1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 16.0)
SLOWEST = 16.0  # times as long as the fade asked for
HALVINGS = 6  # of the gap left between a length that is seen and one that is not
RATES_HZ = (25.0, 30.0, 40.0, 44.0, 60.0, 80.0, 100.0, 120.0)
TRIALS_MAX = 64  # cures are found with at most so many of the trials


@dataclass(frozen=True, slots=True)
class Cure:
    """One change to a fade, and what the engine finds with it.

    kind: what is changed; bits, packets (of an average), seconds_s, refresh_hz: to what, where it is that.
    worst_stepping_jnd: what is left. works: whether that is no longer seen; if not, this is the best
    of what was tried. adds_s: how much later a snap with this cure would settle, above what it does now.
    """

    kind: Kind
    worst_stepping_jnd: float
    works: bool
    bits: int | None = None
    packets: float | None = None
    seconds_s: float | None = None
    refresh_hz: float | None = None
    adds_s: float = 0.0


def stepping_of(fade: Fade) -> float:
    """Give the worst stepping of a fade in JND; with trials its 95th percentile."""
    choice = fade.smoothing.toward(fade.ramp.rising)
    cue = cue_light(fade.ramp, choice, fade.transfer, fade.link, fade.bits, fade.trials)
    stepping = worst_of(fade, cue)[0].stepping_jnd
    return float(np.percentile(stepping, SEEN_PERCENTILE) if fade.trials > 1 else stepping[0])


def cures(fade: Fade, threshold_jnd: float = THRESHOLD_JND) -> tuple[Cure, ...]:
    """Give what would bring a fade's stepping to threshold_jnd or below, by kind, those that work first.

    Each kind is searched alone: more bits (16, 24); the shortest average that hides it; the least slower
    fade, to 2 %; the lowest higher rate that the line takes. 16 bits together with
    an average is searched only where neither does alone. Empty for a fade that is not seen, and for a
    snap. The worst stepping is not monotone in any of these: a cure holds for its own figure, and
    others beyond it were not tried. Raises ResponseError as fade.answer does.
    """
    fade = replace(fade, trials=min(fade.trials, TRIALS_MAX))
    if fade.seconds_s == 0.0 or stepping_of(fade) <= threshold_jnd:
        return ()
    found = [
        _first("bits", _more_bits(fade), threshold_jnd, fade),
        _first("smoothing", _longer(fade), threshold_jnd, fade),
        _slower(fade, threshold_jnd),
        _first("rate", _rates(fade), threshold_jnd, fade),
    ]
    alone = [cure for cure in found if cure is not None and cure.kind in ("bits", "smoothing")]
    if fade.bits < BITS[0] and not any(cure.works for cure in alone):
        found.append(_first("bits and smoothing", _longer(replace(fade, bits=BITS[0])), threshold_jnd, fade))
    there = [cure for cure in found if cure is not None]
    return tuple(sorted(there, key=lambda cure: not cure.works))


def _first(kind: Kind, tried: Iterable[Fade], threshold_jnd: float, fade: Fade) -> Cure | None:
    """Give the first of some fades that is not seen, or the best of them."""
    best: Cure | None = None
    for changed in tried:
        stepping = stepping_of(changed)
        if best is None or stepping < best.worst_stepping_jnd:
            best = _cure(kind, fade, changed, stepping, threshold_jnd)
        if stepping <= threshold_jnd:
            break
    return best


def _cure(kind: Kind, fade: Fade, changed: Fade, stepping: float, threshold_jnd: float) -> Cure:
    smoothed = changed.smoothing != fade.smoothing
    return Cure(
        kind,
        stepping,
        stepping <= threshold_jnd,
        bits=changed.bits if changed.bits != fade.bits else None,
        packets=changed.smoothing.packets if smoothed else None,
        seconds_s=changed.seconds_s if changed.seconds_s != fade.seconds_s else None,
        refresh_hz=changed.link.refresh_hz if changed.link != fade.link else None,
        adds_s=_snap_settles_s(changed) - _snap_settles_s(fade) if smoothed else 0.0,
    )


def _snap_settles_s(fade: Fade) -> float:
    snap = replace(fade.ramp, seconds_s=0.0)
    choice = fade.smoothing.toward(snap.rising)
    return lateness(snap, choice, fade.transfer, fade.link, fade.bits).settles.worst_s


def _more_bits(fade: Fade) -> Iterator[Fade]:
    return (replace(fade, bits=bits) for bits in BITS if bits > fade.bits)


def _longer(fade: Fade) -> Iterator[Fade]:
    """Give the fade with longer and longer averages, or its own method at longer lengths."""
    now_s = fade.smoothing.lengths_s(fade.link.period_s)[0]
    method = "average" if fade.smoothing.method == "none" else fade.smoothing.method
    for packets in PACKETS:
        if packets * fade.link.period_s > now_s + 1e-9:
            choice = Smoothing(method, packets=packets, after_curve=fade.smoothing.after_curve)
            yield replace(fade, smoothing=choice)


def _rates(fade: Fade) -> Iterator[Fade]:
    """Give the fade at higher rates that the line takes; a gateway goes at least as fast."""
    most_hz = math.inf if fade.link.line == "network" else max_refresh_hz(fade.link.slots)
    for rate_hz in (*RATES_HZ, most_hz):
        if not (math.isfinite(rate_hz) and fade.link.refresh_hz < rate_hz <= most_hz):
            continue
        gateway_hz = fade.link.gateway_hz
        if gateway_hz is not None:
            gateway_hz = max(gateway_hz, min(rate_hz, max_refresh_hz(fade.link.slots)))
        try:
            link: Link = replace(fade.link, refresh_hz=rate_hz, gateway_hz=gateway_hz)
        except ResponseError:
            continue
        yield replace(fade, link=link)


def _slower(fade: Fade, threshold_jnd: float) -> Cure | None:
    """Search the fade's length: doubled until it is not seen, then back toward what it was.

    A faster fade is not searched: it is another cue, and what it cures it cures by a lucky fit to values.
    """
    seen, at = 1.0, 2.0
    best: Cure | None = None
    while at <= SLOWEST:
        changed = replace(fade, seconds_s=fade.seconds_s * at)
        stepping = stepping_of(changed)
        if best is None or stepping < best.worst_stepping_jnd:
            best = _cure("slower", fade, changed, stepping, threshold_jnd)
        if stepping <= threshold_jnd:
            return _nearest(fade, threshold_jnd, seen, at, best)
        seen, at = at, 2.0 * at
    return best


def _nearest(fade: Fade, threshold_jnd: float, seen: float, unseen: float, best: Cure) -> Cure:
    """Narrow down the length between one that is seen and one that is not."""
    for _ in range(HALVINGS):
        middle = math.sqrt(seen * unseen)
        changed = replace(fade, seconds_s=fade.seconds_s * middle)
        stepping = stepping_of(changed)
        if stepping <= threshold_jnd:
            unseen, best = middle, _cure("slower", fade, changed, stepping, threshold_jnd)
        else:
            seen = middle
    return best
