"""The road from desk to fixture: which desk packet the fixture holds, and from when, with losses.

The desk sends packet k, counted from 0, at k / refresh_hz; packet 0 goes out at time 0, which is the
start of the cue, and carries the level the cue starts from. A gateway or radio with a clock of its own
sends at each of its ticks the latest desk packet that it has heard; where the rates differ, it repeats
some unevenly or leaves some out. Everything arrives delay_s later. Packets on the line, the last
stretch before the fixture, are again counted from 0, and losses happen there:

- missing: the fixture hears nothing at that tick and holds what it has.
- repeat: the link sends its last packet again, so that the fixture hears an old value as a new packet.
  The light differs only for smoothing that looks at packets (interpolate), see smoothing.

The fixture holds the last value it heard. After 1.25 s without any packet (ANSI E1.11, from memory) it
takes the signal as lost and its own fail mode rules: the result flags that and does not go there.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal, TypeAlias

import numpy as np
from numpy.typing import NDArray

from .errors import ResponseError
from .losses import ArrivalLog, Losses, check_losses, has_run, lost_mask
from .timing import SLOTS_MAX, Line, check_rate

Loss: TypeAlias = Literal["missing", "repeat"]

SIGNAL_LOST_S = 1.25  # ANSI E1.11, from memory
TICK_ROUNDING = 1e-9  # a gateway tick that falls on a desk packet has heard it, rounding or not


@dataclass(frozen=True, slots=True)
class Link:
    """The desk's rate and what lies between it and the fixture; see the module.

    gateway_phase: where in its own packet time (0 to below 1) the gateway stands at time 0. `slots` and
    `line` ('dmx', or 'network' for a stream that no DMX512 line slows) say what the desk sends on; after
    a gateway the line is always DMX512. `loss` says which of the two kinds a loss is.
    Raises ResponseError for a rate of 0 or above what ANSI E1.11 allows, and for a negative delay.
    """

    refresh_hz: float
    gateway_hz: float | None = None
    delay_s: float = 0.0
    gateway_phase: float = 0.0
    losses: Losses | None = None
    loss: Loss = "missing"
    slots: int = SLOTS_MAX
    line: Line = "dmx"

    def __post_init__(self) -> None:
        check_rate(self.refresh_hz, self.slots, self.line)
        if self.gateway_hz is not None:
            check_rate(self.gateway_hz, self.slots, "dmx")
        if not (math.isfinite(self.delay_s) and self.delay_s >= 0):
            raise ResponseError(f"a delay of {self.delay_s:g} s cannot be: give 0 or more")
        if not 0.0 <= self.gateway_phase < 1.0:
            raise ResponseError(f"a gateway phase of {self.gateway_phase:g} cannot be: give 0 to below 1")
        if self.loss not in ("missing", "repeat"):
            raise ResponseError(f"loss {self.loss!r} is unknown: give 'missing' or 'repeat'")
        check_losses(self.losses)

    @property
    def line_hz(self) -> float:
        """The rate of the packets that the fixture hears."""
        return self.refresh_hz if self.gateway_hz is None else self.gateway_hz

    @property
    def period_s(self) -> float:
        """The time between two packets that the fixture hears."""
        return 1.0 / self.line_hz

    def lossless(self) -> Link:
        """Give the same link without its losses."""
        return Link(
            self.refresh_hz,
            self.gateway_hz,
            self.delay_s,
            self.gateway_phase,
            None,
            self.loss,
            self.slots,
            self.line,
        )


@dataclass(frozen=True, slots=True)
class Received:
    """What a fixture hears, for B trials.

    times_s: [J], rising, in s: when each packet of the line arrives, or would have. desk_index: [J] or
    [B, J]: the desk packet whose value the fixture holds from then on (-1: from before packet 0).
    heard: [B, J], False where nothing arrived; None where every packet did. lost: [B, J], True where
    a packet was lost, of either kind; None without losses. period_s: the line's packet time.
    """

    times_s: NDArray[np.float64]
    desk_index: NDArray[np.int64]
    heard: NDArray[np.bool_] | None
    lost: NDArray[np.bool_] | None
    period_s: float

    @property
    def longest_gap_s(self) -> NDArray[np.float64]:
        """The longest time without a packet, [B] in s."""
        gap_s = float(np.diff(self.times_s, prepend=self.times_s[0] - self.period_s).max())
        if self.heard is None:
            return np.array([gap_s])
        place = np.arange(self.heard.shape[1])
        last = np.maximum.accumulate(np.where(self.heard, place, -1), axis=1)
        return np.asarray((1 + (place - last).max(axis=1)) * self.period_s)

    @property
    def signal_lost(self) -> bool:
        """Whether a gap reaches the time after which a fixture's fail mode rules, which is not computed."""
        if self.heard is None or self.lost is None:
            return bool((self.longest_gap_s > SIGNAL_LOST_S).any())
        return has_run(self.lost, math.floor(SIGNAL_LOST_S / self.period_s))


def receive(link: Link, until_s: float, trials: int = 1) -> Received:
    """Give what the fixture hears of the packets that the line carries from time 0 to until_s (s).

    With losses the last packet of the stretch is taken as heard: the stream goes on after it. Lost
    packet numbers that lie beyond the stretch raise ResponseError, as does trials below 1.
    """
    if trials < 1:
        raise ResponseError(f"{trials} trials show nothing: give 1 or more")
    if not (math.isfinite(until_s) and until_s >= 0):
        raise ResponseError(f"a time of {until_s:g} s cannot be: give 0 or more")
    if isinstance(link.losses, ArrivalLog):
        return _from_log(link, link.losses, until_s)
    ticks_s, index = ticks(link, until_s)
    times_s = ticks_s + link.delay_s
    if link.losses is None:
        return Received(times_s, index, None, None, link.period_s)
    lost = lost_mask(link.losses, trials, len(ticks_s))
    lost[:, -1] = False
    line = np.arange(len(ticks_s))
    last = np.where(lost, -1, line)
    np.maximum.accumulate(last, axis=1, out=last)
    held = last if link.gateway_hz is None else np.append(index, -1)[last]
    return Received(times_s, held, ~lost if link.loss == "missing" else None, lost, link.period_s)


def ticks(link: Link, until_s: float) -> tuple[NDArray[np.float64], NDArray[np.int64]]:
    """Give when the line's packets are sent, in s, and which desk packet each carries, unlost, [J]."""
    if link.gateway_hz is None:
        index = np.arange(math.floor(until_s * link.refresh_hz + TICK_ROUNDING) + 1, dtype=np.int64)
        return index / link.refresh_hz, index
    n = math.floor(until_s * link.gateway_hz - link.gateway_phase + TICK_ROUNDING) + 1
    times_s = np.asarray((np.arange(max(n, 1)) + link.gateway_phase) / link.gateway_hz, dtype=np.float64)
    return times_s, np.floor(times_s * link.refresh_hz + TICK_ROUNDING).astype(np.int64)


def _from_log(link: Link, log: ArrivalLog, until_s: float) -> Received:
    """Take the arrivals as they were logged; each brings the latest packet that was sent delay_s before."""
    times_s = np.array(log.times_s, dtype=np.float64)
    times_s = times_s[times_s <= until_s + link.delay_s]
    if not len(times_s):
        raise ResponseError("no packet of the log arrives within the time asked about")
    index = np.floor((times_s - link.delay_s) * link.refresh_hz + TICK_ROUNDING).astype(np.int64)
    return Received(times_s, np.maximum(index, -1), None, None, link.period_s)
