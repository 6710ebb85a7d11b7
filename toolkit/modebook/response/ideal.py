"""The ideal that a fade is compared with: the same fade without values, packets or losses, delayed alike.

A programmer asks of a fade not whether it moves but whether it moves evenly. So the light is compared
with what the same cue would make if levels had no steps and packets came without end: a ramp, through
the same dimmer curve and the same smoothing, later by as much as the link makes it later on average.
What the fade itself does (its speed, its curve, its start and end, the rounding of its corners by the
smoothing) is in both and drops out; rounding to values, repeats, jumps, losses, and the stairs of the
packets where a camera sees them unevenly are in one and stay.

Delayed alike: a packet's value is as old as the link makes it (delay, waiting for the gateway's tick),
and held stairs run half a packet time behind on average; straight lines between packets do not; a limit
that follows stairs in lines runs behind by half of those lines too.
restart, which a stream without packets cannot describe, is compared with restart itself on packets that
are even, exact and all heard. Shorter than one packet time, restart and interpolate make of every
packet the same line as an average of their length, and are compared with that.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from .errors import ResponseError
from .link import Link, receive, ticks
from .losses import ArrivalLog
from .signal import Array, Signal, held, merged_times, polygon
from .smoothers import average, first_order, restart
from .smoothing import Smoothing
from .transfer import Light, Transfer, through

# A curved ramp that is smoothed after its curve is taken in so many straight pieces, even in level, and as
# many again that are even in light.
CURVE_NODES = 1024


@dataclass(frozen=True, slots=True)
class Ramp:
    """A cue: from one level (0 to 1) to another in seconds_s (s, 0 for a snap), from time 0."""

    from_level: float
    to_level: float
    seconds_s: float

    def __post_init__(self) -> None:
        for level in (self.from_level, self.to_level):
            if not 0.0 <= level <= 1.0:
                raise ResponseError(f"a level of {100 * level:g} % cannot be: give 0 to 100 %")
        if not (np.isfinite(self.seconds_s) and self.seconds_s >= 0.0):
            raise ResponseError(f"a fade of {self.seconds_s:g} s cannot be: give 0 or more")

    @property
    def rising(self) -> bool:
        """Whether the level goes up."""
        return self.to_level > self.from_level

    def level(self, at_s: Array) -> Array:
        """Give the level asked for at times in s, same shape; a snap is at its end from time 0 on."""
        if self.seconds_s == 0.0:
            share = (np.asarray(at_s) >= 0.0).astype(np.float64)
        else:
            share = np.clip(np.asarray(at_s) / self.seconds_s, 0.0, 1.0)
        return np.asarray(self.from_level + (self.to_level - self.from_level) * share)


def mean_age_s(link: Link) -> tuple[float, float]:
    """Give how old a packet's value is when it arrives, and half of how long it is held, on average, in s.

    Both are means over the time for which each packet is held, without losses; from a log, as logged.
    """
    if isinstance(link.losses, ArrivalLog):
        received = receive(link, link.losses.times_s[-1])
        held_s = np.diff(received.times_s)
        if not len(held_s):
            return link.delay_s, link.period_s / 2.0
        age_s = (received.times_s - received.desk_index / link.refresh_hz)[:-1]
        return float((age_s * held_s).sum() / held_s.sum()), float((held_s**2).sum() / held_s.sum() / 2.0)
    if link.gateway_hz is None:
        return link.delay_s, link.period_s / 2.0
    ticks_s, index = ticks(link, 2000.0 / link.gateway_hz)
    return link.delay_s + float(np.mean(ticks_s - index / link.refresh_hz)), link.period_s / 2.0


def ideal_light(ramp: Ramp, choice: Smoothing, transfer: Transfer, link: Link) -> Light:
    """Give the one signal (B = 1) that the light of a fade is compared with; see the module.

    ramp: the cue, of more than 0 s. choice: the smoothing, in one direction (Smoothing.toward).
    transfer: the curve. A lowest output below which light goes out is left out of the ideal, so that
    going out counts as a jump; one at which light stays is kept, since nothing jumps there.
    """
    lowest = transfer.lowest if transfer.on_below else 0.0
    before, after = Transfer(), Transfer(transfer.curve, lowest, transfer.on_below)
    if choice.after_curve:
        before, after = Transfer(transfer.curve), Transfer(lowest=lowest, on_below=transfer.on_below)
    length_s = choice.lengths_s(link.period_s)[0]
    age_s, hold_s = mean_age_s(link)
    short = length_s < link.period_s * (1.0 - 1e-9)
    if choice.method == "restart" and not short:
        return through(_even_restart(ramp, before, length_s, age_s, link.period_s), after)
    held_behind = choice.method != "interpolate" or short
    asked = _asked(ramp, before).shifted(age_s + (hold_s if held_behind else 0.0))
    if choice.method == "none" or length_s == 0.0:
        return through(asked, after)
    if choice.method == "interpolate" and not short:
        return through(asked.shifted(length_s), after)
    if choice.method in ("average", "interpolate", "restart"):
        return through(average(asked, length_s), after)
    if choice.method == "lag":
        return through(first_order(asked, length_s, length_s), after)
    # A limit takes the share of each packet time that the step is of what it could go: so much of a stair
    # becomes a line, which is later by half of it. Where it can't follow, it starts with the first packet.
    busy = min(abs(ramp.to_level - ramp.from_level) * length_s / max(ramp.seconds_s, 1e-9), 1.0)
    return through(_limited(asked.shifted(busy * hold_s), length_s), after)


def _asked(ramp: Ramp, before: Transfer) -> Signal:
    """Give the ramp as it goes into the smoothing: a straight line, or a curve in straight pieces."""
    if before.plain:
        return polygon([0.0, max(ramp.seconds_s, 1e-9)], [ramp.from_level, ramp.to_level])
    even = np.linspace(0.0, 1.0, CURVE_NODES + 1)
    levels = np.concatenate([even, before.curve.to_level(even)])
    low, high = sorted((ramp.from_level, ramp.to_level))
    levels = np.concatenate([[low, high], levels[(levels > low) & (levels < high)]])
    if high == low:
        return polygon([0.0, 1.0], before.light([low, low]))
    shares = (levels - ramp.from_level) / (ramp.to_level - ramp.from_level)
    times_s = merged_times(shares * max(ramp.seconds_s, 1e-9))
    return polygon(times_s, before.light(ramp.level(times_s)))


def _even_restart(ramp: Ramp, before: Transfer, length_s: float, age_s: float, period_s: float) -> Signal:
    packets = np.asarray(np.arange(int(np.ceil(ramp.seconds_s / period_s)) + 2) * period_s, dtype=np.float64)
    values = before.light(ramp.level(packets))
    stairs = held(packets + age_s, values, values[0])
    return restart(stairs, length_s, length_s)


def _limited(asked: Signal, length_s: float) -> Signal:
    """Give what follows one rising or falling polygon at no more than full scale in length_s."""
    times, points = asked.times_s[1:], asked.start[0, 1:]
    sign = 1.0 if points[-1] >= points[0] else -1.0
    goal = sign * points
    rate = 1.0 / length_s
    out_times, out = [float(times[0])], [float(goal[0])]
    for k in range(1, len(times)):
        now_s, now, left_s = out_times[-1], out[-1], float(times[k] - times[k - 1])
        gap = float(goal[k - 1]) - now
        speed = float(goal[k] - goal[k - 1]) / left_s
        if gap > 0.0 and speed < rate and gap / (rate - speed) < left_s:
            meet_s = gap / (rate - speed)
            out_times.append(now_s + meet_s)
            out.append(now + rate * meet_s)
            out_times.append(float(times[k]))
            out.append(float(goal[k]))
            continue
        reach = now + rate * left_s
        out_times.append(float(times[k]))
        out.append(min(reach, float(goal[k])))
    if out[-1] < goal[-1]:
        out_times.append(out_times[-1] + float(goal[-1] - out[-1]) / rate)
        out.append(float(goal[-1]))
    return polygon(out_times, sign * np.array(out))
