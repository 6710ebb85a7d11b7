"""From a cue to the light: levels into values, over the link, through smoothing and curve, in one call."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from .ideal import Ramp
from .link import Link, Received, receive
from .losses import ArrivalLog, longest_usual
from .quantize import dequantize, quantize
from .signal import Array, Signal
from .smoothers import smooth
from .smoothing import Smoothing
from .transfer import Light, Transfer, through

BLOCK_VALUES = 50_000  # trials times packets worked on at a time
PACKETS_AFTER = 8  # packets computed beyond the cue's end, so that a lost last packet shows


@dataclass(frozen=True, slots=True)
class CueLight:
    """A cue as B trials of it reach the light.

    received: what the fixture heard. values: [P], the desk's values by packet, packet 0 first. taken: what
    the smoothing makes of each, and last what it made of the level before the cue. moves_until_s: when
    the last of the light has settled (a lag: to within a millionth of full).
    """

    received: Received
    values: NDArray[np.int64]
    taken: Array
    choice: Smoothing
    after: Transfer
    moves_until_s: float

    @property
    def trials(self) -> int:
        """How many trials there are (B)."""
        return 1 if self.received.desk_index.ndim == 1 else len(self.received.desk_index)

    def light(self, rows: slice = slice(None)) -> Light:
        """Give the light of all trials, or of some."""
        received = self.received
        held = self.taken.take(np.atleast_2d(received.desk_index)[rows])
        heard = None if received.heard is None else received.heard[rows]
        level = smooth(self.choice, received.times_s, held, float(self.taken[-1]), received.period_s, heard)
        return through(level, self.after)

    def blocks(self) -> Iterator[slice]:
        """Give the trials in blocks that a processor's cache holds."""
        rows = max(1, BLOCK_VALUES // len(self.received.times_s))
        for first in range(0, self.trials, rows):
            yield slice(first, first + rows)


def cue_light(
    ramp: Ramp, choice: Smoothing, transfer: Transfer, link: Link, bits: int, trials: int = 1
) -> CueLight:
    """Give the light of a cue; see ideal.Ramp, smoothing, transfer and link for the parts.

    bits: 8, 16, 24 or 32. trials: how many times losses are drawn. Raises ResponseError where the
    smoothing's length is unknown.
    """
    choice = choice.toward(ramp.rising)
    packets_after = PACKETS_AFTER + longest_usual(link.losses)
    until_s = end_s(ramp, link) + packets_after / min(link.line_hz, link.refresh_hz)
    if isinstance(link.losses, ArrivalLog):
        until_s = max(until_s, link.losses.times_s[-1])
    received = receive(link, until_s, trials)
    packets = np.arange(math.ceil(until_s * link.refresh_hz) + 2)
    values = quantize(ramp.level(packets / link.refresh_hz), bits)
    # Packet -1 is the one before the cue: the last place, as an index of -1 finds it.
    levels = dequantize(np.concatenate([values, quantize([ramp.from_level], bits)]), bits)
    before, after = (
        (transfer_in(transfer), transfer_out(transfer)) if choice.after_curve else (Transfer(), transfer)
    )
    length_s = choice.lengths_s(received.period_s)[0]
    settling_s = length_s * (math.log(1e6) if choice.method == "lag" else 1.0)
    if choice.method == "interpolate":
        settling_s += received.period_s
    until_s = float(received.times_s[-1]) + settling_s
    return CueLight(received, values, before.light(levels), choice, after, until_s)


def transfer_in(transfer: Transfer) -> Transfer:
    """Give what comes before a smoothing of light: the curve alone."""
    return Transfer(transfer.curve)


def transfer_out(transfer: Transfer) -> Transfer:
    """Give what comes after a smoothing of light: the lowest output alone."""
    return Transfer(lowest=transfer.lowest, on_below=transfer.on_below)


def end_s(ramp: Ramp, link: Link) -> float:
    """Give when the desk sends the packet that carries the cue's end, in s after packet 0."""
    return math.ceil(ramp.seconds_s * link.refresh_hz - 1e-9) / link.refresh_hz


def packets_s(received: Received, until_s: float) -> Array:
    """Give when packets arrive, in s, from the one before the first to the first after until_s (s), [M]."""
    times_s, period_s = received.times_s, received.period_s
    more = max(math.ceil((until_s - times_s[-1]) / period_s - 1e-9), 0) + 1
    after_s = times_s[-1] + period_s * np.arange(1, more + 1)
    return np.concatenate([[times_s[0] - period_s], times_s, after_s])


def middles_s(received: Received, until_s: float) -> Array:
    """Give the moments midway between packets, in s, from before the first to after until_s (s), [M]."""
    every_s = packets_s(received, until_s)
    return np.asarray(0.5 * (every_s[1:] + every_s[:-1]))


def largest_step(light: Light, times_s: Array) -> Array:
    """Give the size of the light's largest change from one of times_s ([M], s) to the next, [B], 0 to 1."""
    if isinstance(light, Signal) and light.starts_at(times_s):
        lit = light.start[:, : len(times_s)]
    else:
        lit = light.at(times_s)
    steps = np.diff(lit, axis=1)
    return np.asarray(np.maximum(steps.max(axis=1), -steps.min(axis=1)) + 0.0)
