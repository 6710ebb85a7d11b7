"""The smoothing methods as exact signals: what light answers packets, for many trials in one call."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from .errors import ResponseError
from .signal import SAME_TIME_S, Array, Signal, held, merged_times, polygon
from .smoothing import Smoothing


def smooth(
    choice: Smoothing,
    times_s: Array,
    values: Array,
    first: float,
    period_s: float,
    heard: NDArray[np.bool_] | None = None,
) -> Signal:
    """Give the signals that a smoothing choice makes of held values; see smoothing for each method.

    times_s: [J] arrivals in s, rising; values: [B, J], what the fixture holds from each arrival on;
    first: what it held before; period_s: the packet time of the line, which a length in packets counts;
    heard: [B, J], False where no packet arrived, None where all did. Raises ResponseError where the
    length is unknown, or differs for rise and fall in a method with one length.
    """
    rise_s, fall_s = choice.lengths_s(period_s)
    if choice.method in ("average", "interpolate") and rise_s != fall_s:
        raise ResponseError(f"{choice.method} has one length: ask for one direction of the cue")
    if choice.method == "none" or max(rise_s, fall_s) == 0.0:
        return held(times_s, values, first)
    if choice.method == "average":
        packets = rise_s / period_s
        even = (
            abs(packets - round(packets)) < 1e-9
            and np.ptp(np.diff(times_s, prepend=times_s[0] - period_s)) < SAME_TIME_S
        )
        if even and packets > 0.5:
            return average_even(times_s, values, first, period_s, round(packets))
        return average(held(times_s, values, first), rise_s)
    if choice.method == "interpolate":
        return interpolate(times_s, values, first, period_s, rise_s, heard)
    if choice.method == "lag":
        return first_order(held(times_s, values, first), rise_s, fall_s)
    if choice.method == "limit":
        return limit(held(times_s, values, first), rise_s, fall_s)
    return restart(held(times_s, values, first), rise_s, fall_s)


def average(of: Signal, length_s: float) -> Signal:
    """Give the mean of signals of straight pieces over the last length_s (s, above 0), exactly."""
    times = merged_times(of.times_s, of.times_s + length_s)
    back = of.pieces(times - length_s)
    area_back = of.area(times - length_s)
    now = of.pieces(times)
    start = of.area(times)
    start -= area_back
    start /= length_s
    slope = now.value() - back.value()
    slope /= length_s
    if of.slope is None:
        return Signal(times, start, slope)
    assert now.slope is not None
    assert back.slope is not None
    return Signal(times, start, slope, bend=(now.slope - back.slope) / (2.0 * length_s))


def average_even(times_s: Array, values: Array, first: float, period_s: float, packets: int) -> Signal:
    """Give the mean of held values over the last `packets` packets, which come period_s (s) apart, exactly.

    What average() gives, in a third of its time: every breakpoint is a packet.
    """
    # Each value divided by the length: sums over the window are then means.
    shares = np.empty((len(values), packets + 1 + len(times_s) + packets))
    shares[:, : packets + 1] = first / packets
    np.divide(values, packets, out=shares[:, packets + 1 : -packets])
    shares[:, -packets:] = shares[:, -packets - 1, None]
    times = times_s[0] + period_s * np.arange(-1, len(times_s) + packets + 1)
    return Signal(times, _window_sums(shares, packets), joined=True)


def _window_sums(values: Array, count: int) -> Array:
    """Give the sums of `count` neighbors, [B, M] to [B, M - count + 1], by sums of 1, 2, 4, 8 ... of them."""
    length = values.shape[1]
    total, have, power, size = values, 0, values, 1
    while True:
        if count & size:
            there = length - have - size + 1
            total = power if have == 0 else total[:, :there] + power[:, have : have + there]
            have += size
        if have == count:
            return total
        power = power[:, :-size] + power[:, size:]
        size *= 2


def interpolate(
    times_s: Array,
    values: Array,
    first: float,
    period_s: float,
    length_s: float,
    heard: NDArray[np.bool_] | None = None,
) -> Signal:
    """Give straight lines from packet to packet, length_s (s, above 0) after they were heard, exactly."""
    values = np.atleast_2d(values)
    nodes = merged_times(times_s[:1] - period_s + length_s, times_s, times_s + length_s)
    # With a packet of the time before the cue in front, packet j stands at place j + 1.
    places_s = np.concatenate([[times_s[0] - period_s], times_s])
    points = np.concatenate([np.full((len(values), 1), first), values], axis=1)
    ripe = np.searchsorted(places_s + length_s, nodes + 1e-12, side="right") - 1
    ripe = np.maximum(ripe, 0)
    due = np.minimum(ripe + 1, len(times_s))
    if heard is None:
        last, following = ripe[None, :], due[None, :]
    else:
        last, following = _heard_around(heard, ripe, due)
    from_value = np.take_along_axis(points, np.broadcast_to(last, (len(points), len(nodes))), axis=1)
    to_value = np.take_along_axis(points, np.broadcast_to(following, (len(points), len(nodes))), axis=1)
    begin_s = np.maximum(places_s[last] + length_s, places_s[following])
    end_s = places_s[following] + length_s
    share = np.ones(begin_s.shape)
    np.divide(nodes - begin_s, end_s - begin_s, out=share, where=end_s > begin_s)
    np.clip(share, 0.0, 1.0, out=share)
    return polygon(nodes, from_value + (to_value - from_value) * share)


def _heard_around(
    heard: NDArray[np.bool_], ripe: NDArray[np.intp], due: NDArray[np.intp]
) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """Give the places of the last heard packet up to `ripe` and of the next from `due` on, [B, M]."""
    count = heard.shape[1] + 1
    place = np.arange(count)
    there = np.concatenate([np.ones((len(heard), 1), dtype=bool), heard], axis=1)
    last = np.maximum.accumulate(np.where(there, place, 0), axis=1)
    following = np.minimum.accumulate(np.where(there, place, count)[:, ::-1], axis=1)[:, ::-1]
    before, after = last[:, ripe], following[:, due]
    # Behind the last packet heard there is no next one: the light stays.
    return before, np.where(after >= count, before, after)


def first_order(of: Signal, rise_s: float, fall_s: float) -> Signal:
    """Give the first-order lag of straight pieces, with time constants in s for rise and fall, exactly.

    A signal with slopes must go one way only: then the light stays on one side of it.
    """
    durations_s = np.diff(of.times_s)
    target = np.ascontiguousarray(of.start.T)
    slope = None if of.slope is None else np.ascontiguousarray(of.slope.T)
    start, swing, decay = np.empty_like(target), np.empty_like(target), np.empty_like(target)
    now = target[0].copy()
    for k in range(len(target)):
        rising = target[k] > now
        if slope is not None:
            rising |= (target[k] == now) & (slope[k] > 0)
        decay[k] = np.where(rising, rise_s, fall_s)
        # A time constant of 0 follows at once; the least that keeps the closed form finite does the same.
        np.maximum(decay[k], 1e-12, out=decay[k])
        start[k] = now
        swing[k] = target[k] - now
        if slope is not None:
            swing[k] -= slope[k] * decay[k]
        if k < len(durations_s):
            now = now - swing[k] * np.expm1(-durations_s[k] / decay[k])
            if slope is not None:
                now += slope[k] * durations_s[k]
    return Signal(
        of.times_s,
        np.ascontiguousarray(start.T),
        of.slope,
        swing=np.ascontiguousarray(swing.T),
        decay_s=np.ascontiguousarray(decay.T),
    )


def limit(of: Signal, rise_s: float, fall_s: float) -> Signal:
    """Give what follows stairs at no more than full scale in rise_s up and fall_s down (s), exactly."""
    durations_s = np.append(np.diff(of.times_s), np.inf)
    target = np.ascontiguousarray(of.start.T)
    start, slope, ramp = np.empty_like(target), np.empty_like(target), np.empty_like(target)
    now = target[0].copy()
    for k in range(len(target)):
        gap = target[k] - now
        length_s = np.where(gap > 0, rise_s, fall_s)
        start[k] = now
        slope[k] = np.sign(gap) / np.maximum(length_s, 1e-12)
        ramp[k] = np.abs(gap) * np.maximum(length_s, 1e-12)
        arrived = ramp[k] <= durations_s[k]
        now = np.where(arrived, target[k], now + slope[k] * min(durations_s[k], 1e9))
    return Signal(of.times_s, *(np.ascontiguousarray(term.T) for term in (start, slope, ramp)))


def restart(of: Signal, rise_s: float, fall_s: float) -> Signal:
    """Give a straight line, rise_s or fall_s (s) long, to each value that differs from the last, exactly."""
    durations_s = np.append(np.diff(of.times_s), np.inf)
    target = np.ascontiguousarray(of.start.T)
    start, slope, ramp = np.empty_like(target), np.zeros_like(target), np.zeros_like(target)
    now = target[0].copy()
    start[0] = now
    for k in range(1, len(target)):
        new = target[k] != target[k - 1]
        gap = target[k] - now
        length_s = np.maximum(np.where(gap > 0, rise_s, fall_s), 1e-12)
        left_s = np.maximum(ramp[k - 1] - durations_s[k - 1], 0.0)
        start[k] = now
        slope[k] = np.where(new, gap / length_s, np.where(left_s > 0, slope[k - 1], 0.0))
        ramp[k] = np.where(new, length_s, left_s)
        done = ramp[k] <= durations_s[k]
        now = np.where(done, target[k], now + slope[k] * min(durations_s[k], 1e9))
    return Signal(of.times_s, *(np.ascontiguousarray(term.T) for term in (start, slope, ramp)))
