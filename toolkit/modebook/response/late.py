"""What is late: when a cue's light starts, is half done and done, best and worst, and the setting's part."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np

from .camera import Camera, partly_exposed
from .cue_light import cue_light, end_s
from .ideal import Ramp
from .link import Link
from .signal import Array
from .smoothing import OFF, Smoothing
from .transfer import Light, Transfer

LAG_DONE = 0.99  # a first-order lag never arrives: done is 99 % of the way
STARTED = 1e-9  # of full: less than this has not started
SECTIONS, ROUNDS = 64, 9  # each round cuts the time into so many: from hours to below rounding


@dataclass(frozen=True, slots=True)
class Span:
    """The least and the greatest of a time over the phase of cue against packets, in s."""

    best_s: float
    worst_s: float


@dataclass(frozen=True, slots=True)
class Lateness:
    """When a cue's light moves, in s.

    starts, half, settles: after the cue, without losses. packet_starts_s, packet_half_s,
    packet_settles_s: after the packet that carries the snap (for a fade, its packet 0) has been sent.
    added_s: the worst settling less the worst without smoothing. added_half_s: the same at half.
    frames_partly_exposed: the fewest and the most camera frames that see the light between its two
    levels; None without a camera.
    """

    starts: Span
    half: Span
    settles: Span
    packet_starts_s: float
    packet_half_s: float
    packet_settles_s: float
    added_s: float
    added_half_s: float
    frames_partly_exposed: tuple[int, int] | None


def lateness(
    ramp: Ramp,
    choice: Smoothing,
    transfer: Transfer,
    link: Link,
    bits: int = 16,
    camera: Camera | None = None,
) -> Lateness:
    """Give when a cue's light starts, is half done and is done.

    The desk takes the cue up in the next packet it sends, so it waits 0 to one packet time; a gateway
    with a clock of its own adds 0 to one of its own; then comes the link's delay. Losses are left out.
    Half is half of the light's change; done is its end, or for a lag 99 % of the change. The time
    that the packet itself takes on the line (timing.slot_arrival_s) is not in it.
    """
    clean = link.lossless()
    # The wait for a gateway's tick is counted here; a gateway's rate is the line's.
    even = replace(clean, refresh_hz=clean.line_hz, gateway_hz=None, gateway_phase=0.0, delay_s=0.0)
    lag = choice.method == "lag"
    moments = _moments(ramp, choice, transfer, even, bits, lag)
    without = _moments(ramp, OFF, transfer, even, bits, lag)
    wait_s = 1.0 / link.refresh_hz + (0.0 if link.gateway_hz is None else 1.0 / link.gateway_hz)
    spans = [Span(link.delay_s + at_s, link.delay_s + at_s + wait_s) for at_s in moments]
    return Lateness(
        spans[0],
        spans[1],
        spans[2],
        packet_starts_s=moments[0],
        packet_half_s=moments[1],
        packet_settles_s=moments[2],
        added_s=moments[2] - without[2],
        added_half_s=moments[1] - without[1],
        frames_partly_exposed=None if camera is None else partly_exposed(moments[2] - moments[0], camera),
    )


@lru_cache(maxsize=4096)
def _moments(
    ramp: Ramp, choice: Smoothing, transfer: Transfer, even: Link, bits: int, lag: bool
) -> tuple[float, float, float]:
    """Give start, half and end after packet 0 was sent, over an even link without gateway or delay.

    lag: whether the end is a lag's; unsmoothed light that a lag is compared with ends at 99 % too.
    """
    cue = cue_light(ramp, choice, transfer, even, bits)
    # The light may reach its end much later than its last packet, which the horizon has to cover.
    horizon_s = max(cue.moves_until_s, end_s(ramp, even)) + even.period_s
    light = cue.light()
    first, last = light.at([-1e3, horizon_s + 1e3])[0]
    if first == last:
        return 0.0, 0.0, 0.0
    shares = np.array([STARTED / abs(last - first), 0.5, LAG_DONE if lag else 1.0 - STARTED])
    start_s, half_s, done_s = _reaches(light, first, last, shares, horizon_s)
    return float(start_s), float(half_s), float(done_s)


def _reaches(light: Light, first: float, last: float, shares: Array, horizon_s: float) -> Array:
    """Give the first times, [S], at which monotone light has gone shares ([S]) of its way."""
    low_s, high_s = np.full(len(shares), -1.0), np.full(len(shares), horizon_s)
    rows = np.arange(len(shares))
    for _ in range(ROUNDS):
        tried_s = np.linspace(low_s, high_s, SECTIONS + 1, axis=1)
        gone = (light.at(tried_s.ravel())[0].reshape(tried_s.shape) - first) / (last - first)
        there = gone >= shares[:, None]
        there[:, -1] = True
        at = np.maximum(there.argmax(axis=1), 1)
        low_s, high_s = tried_s[rows, at - 1], tried_s[rows, at]
    return np.where(np.abs(high_s) > 1e-9, high_s, 0.0)
