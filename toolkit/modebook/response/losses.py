"""Lost packets: by number, by probability, in bursts, or from a log; and how long a burst gets."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from .errors import ResponseError


@dataclass(frozen=True, slots=True)
class LostNumbers:
    """Packets lost by their number on the line, counted from 0, in every trial alike."""

    numbers: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class LostAtRandom:
    """Each packet lost with probability `share` (0 to below 1), independently; the seed fixes which."""

    share: float
    seed: int = 0


@dataclass(frozen=True, slots=True)
class LostInBursts:
    """The two-state model (Gilbert's, from memory): in the bad state every packet is lost, in the good none.

    share: the mean share lost (0 to below 1); mean_length: the mean number of packets lost in a row (1 or
    more; the number is geometric). The first packet finds the link in its steady state.
    """

    share: float
    mean_length: float
    seed: int = 0


@dataclass(frozen=True, slots=True)
class LostBurst:
    """One burst of `length` packets in each trial: trial i loses the packets from starts[i] on."""

    length: int
    starts: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class ArrivalLog:
    """Logged arrival times in s, rising, on the cue's clock: the cue's packet 0 is sent at 0."""

    times_s: tuple[float, ...]


Losses: TypeAlias = LostNumbers | LostAtRandom | LostInBursts | LostBurst | ArrivalLog


def check_losses(losses: Losses | None) -> None:
    """Raise ResponseError unless the losses can be."""
    if isinstance(losses, LostNumbers):
        if any(number < 0 for number in losses.numbers):
            raise ResponseError("lost packets are counted from 0: a number is below 0")
    elif isinstance(losses, LostAtRandom | LostInBursts):
        if not 0.0 <= losses.share < 1.0:
            raise ResponseError(
                f"a lost share of {losses.share:g} cannot be: give 0 to below 1 (0.02 is 2 %)"
            )
        if losses.seed < 0:
            raise ResponseError(f"a seed of {losses.seed} cannot be: give 0 or more")
        if isinstance(losses, LostInBursts):
            _burst_rates(losses)
    elif isinstance(losses, LostBurst):
        if losses.length < 0 or any(start < 0 for start in losses.starts):
            raise ResponseError("a burst of lost packets has a length and a start of 0 or more")
    elif isinstance(losses, ArrivalLog):
        times = losses.times_s
        if not times or not all(map(math.isfinite, times)):
            raise ResponseError("a log of arrivals needs at least one time, in s")
        if any(b <= a for a, b in pairwise(times)):
            raise ResponseError("a log's arrival times must rise")


def lost_mask(losses: Losses, trials: int, packets: int) -> NDArray[np.bool_]:
    """Give which packets are lost, [trials, packets]. Raises ResponseError for numbers beyond the packets."""
    if isinstance(losses, LostAtRandom):
        return np.random.default_rng(losses.seed).random((trials, packets)) < losses.share
    if isinstance(losses, LostInBursts):
        return _bursts(losses, trials, packets)
    if isinstance(losses, ArrivalLog):
        raise ResponseError("a log of arrivals names no lost packets")
    if isinstance(losses, LostBurst):
        if len(losses.starts) != trials:
            raise ResponseError(f"{len(losses.starts)} bursts for {trials} trials: give one for each")
        since = np.arange(packets) - np.array(losses.starts)[:, None]
        return np.asarray((since >= 0) & (since < losses.length))
    beyond = [number for number in losses.numbers if number >= packets]
    if beyond:
        raise ResponseError(f"packet {beyond[0]} cannot be lost: the fade is over by packet {packets - 1}")
    mask = np.zeros((trials, packets), dtype=bool)
    mask[:, list(losses.numbers)] = True
    return mask


def has_run(lost: NDArray[np.bool_], length: int) -> bool:
    """Say whether some trial loses at least `length` (1 or more) packets in a row."""
    # runs[:, j] says that the `reach` packets from j on are all lost; each round may double the reach.
    runs, reach = lost, 1
    while reach < length and runs.shape[1]:
        step = min(reach, length - reach)
        runs = runs[:, :-step] & runs[:, step:]
        reach += step
    return bool(runs.any())


def longest_usual(losses: Losses | None) -> int:
    """Give how many packets in a row may well be lost: a cue is followed so far beyond its end."""
    if isinstance(losses, LostBurst):
        return losses.length
    return math.ceil(4.0 * losses.mean_length) if isinstance(losses, LostInBursts) else 0


def _burst_rates(losses: LostInBursts) -> tuple[float, float]:
    """Give the probabilities of going bad, and of going good again, from one packet to the next."""
    if not (math.isfinite(losses.mean_length) and losses.mean_length >= 1.0):
        raise ResponseError(f"a mean burst of {losses.mean_length:g} packets cannot be: give 1 or more")
    good_again = 1.0 / losses.mean_length
    going_bad = good_again * losses.share / (1.0 - losses.share)
    if going_bad > 1.0:
        raise ResponseError(
            f"bursts of {losses.mean_length:g} packets on average cannot lose {losses.share:.0%}: "
            "give longer bursts or a smaller share"
        )
    return going_bad, good_again


def _bursts(losses: LostInBursts, trials: int, packets: int) -> NDArray[np.bool_]:
    going_bad, good_again = _burst_rates(losses)
    draws = np.random.default_rng(losses.seed).random((packets, trials))
    bad = np.empty((packets, trials), dtype=bool)
    bad[0] = draws[0] < losses.share
    for n in range(1, packets):
        bad[n] = np.where(bad[n - 1], draws[n] >= good_again, draws[n] < going_bad)
    return np.ascontiguousarray(bad.T)


@lru_cache(maxsize=4096)
def burst_not_exceeded(losses: Losses | None, packets: int, confidence: float = 0.95) -> int:
    """Give the longest run of lost packets not exceeded, with `confidence`, in a cue of so many packets.

    Exact for LostAtRandom and LostInBursts, by the probability that no longer run occurs, carried from
    packet to packet; for LostNumbers and LostBurst the longest run named; 0 without losses or for a
    log. A run that began before the cue counts from the cue's first packet. Raises ResponseError unless
    0 < confidence < 1.
    """
    if not 0.0 < confidence < 1.0:
        raise ResponseError(f"a confidence of {confidence:g} cannot be: give more than 0 and less than 1")
    if packets < 1 or losses is None or isinstance(losses, ArrivalLog):
        return 0
    if isinstance(losses, LostBurst):
        return losses.length
    if isinstance(losses, LostNumbers):
        numbers = sorted(set(losses.numbers))
        longest = run = 0
        for place, number in enumerate(numbers):
            run = run + 1 if place and number == numbers[place - 1] + 1 else 1
            longest = max(longest, run)
        return longest
    if isinstance(losses, LostInBursts):
        going_bad, good_again = _burst_rates(losses)
    else:
        going_bad, good_again = losses.share, 1.0 - losses.share
    first = losses.share
    for longest in range(packets):
        if _no_longer_run(first, going_bad, good_again, packets, longest) >= confidence:
            return longest
    return packets


def _no_longer_run(first: float, going_bad: float, good_again: float, packets: int, longest: int) -> float:
    """Give the probability that no run of more than `longest` losses is among the packets."""
    if not longest:
        return (1.0 - first) * (1.0 - going_bad) ** (packets - 1)
    # begun[t]: a run began at packet t, and none was too long before; a run of `longest` that goes on is
    # dropped, so that one sum stands for the runs of all lengths.
    good, bad, begun = 1.0 - first, first, [first]
    staying = 1.0 - good_again
    whole = staying ** (longest - 1)
    for packet in range(1, packets):
        full = begun[packet - longest] * whole if packet >= longest else 0.0
        begun.append(good * going_bad)
        good, bad = good * (1.0 - going_bad) + bad * good_again, (bad - full) * staying + begun[-1]
    return good + bad
