"""Strobe rates that packets can give evenly, and those that a camera sees evenly.

A strobe made by packets (a level sent on and off) can flash only when a packet arrives: the time between
flashes is a whole number of packets, so a rate that does not divide the packet rate flashes unevenly. A
camera sees a strobe evenly if every frame holds the same number of flashes, or if a flash falls in every
n-th frame: a whole multiple of the frame rate, or a whole part of it. Strobe light can harm people with
photosensitive epilepsy: warn the set, and keep rates and durations within local rules.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from .errors import ResponseError

# Rates are typed with a few digits; within this share two of them are one. The slip is a packet or a
# frame in about a million.
SAME_RATE = 1e-6


@dataclass(frozen=True, slots=True)
class PacketStrobe:
    """Time between the flashes that packets make: shortest and longest, in packets and in s."""

    even: bool
    shortest_packets: int
    longest_packets: int
    shortest_s: float
    longest_s: float


@dataclass(frozen=True, slots=True)
class CameraStrobe:
    """How a camera sees an even strobe: flashes in a frame, fewest and most, and frames from flash to flash.

    Frames from one that holds a flash to the next that does: shortest_frames and longest_frames.
    """

    even: bool
    fewest_per_frame: int
    most_per_frame: int
    shortest_frames: int
    longest_frames: int


def strobe_by_packets(strobe_hz: float, refresh_hz: float) -> PacketStrobe:
    """Give the time between flashes when packets at refresh_hz make a strobe of strobe_hz.

    At most half the packet rate, since a flash takes a packet on and a packet off. Raises ResponseError.
    """
    _check(strobe_hz, refresh_hz, "packet")
    most_hz = refresh_hz / 2.0
    if strobe_hz > most_hz * (1.0 + SAME_RATE):
        raise ResponseError(
            f"{refresh_hz:g} packets a second flash at most {most_hz:g} times a second, not {strobe_hz:g}"
        )
    even, shortest, longest = _counts(refresh_hz / strobe_hz)
    return PacketStrobe(even, shortest, longest, shortest / refresh_hz, longest / refresh_hz)


def strobe_under_camera(strobe_hz: float, fps: float) -> CameraStrobe:
    """Give how a camera of `fps` sees a strobe whose own flashes are even and short.

    The shutter is taken as always open (360 degrees): a narrower one misses flashes or cuts them, the
    same ones in every turn if `even`, and now these, now those if not. Raises ResponseError.
    """
    _check(strobe_hz, fps, "frame")
    if strobe_hz > fps * (1.0 + SAME_RATE):
        even, fewest, most = _counts(strobe_hz / fps)
        return CameraStrobe(even, fewest, most, 1, 1)
    even, shortest, longest = _counts(fps / strobe_hz)
    return CameraStrobe(even, int(longest == 1), 1, shortest, longest)


def even_strobe_rates_hz(refresh_hz: float, lowest_hz: float = 1.0) -> list[float]:
    """Give the strobe rates, falling from half the packet rate to lowest_hz, that packets give evenly.

    refresh_hz / n for n from 2; only an even n can be on as long as off.
    """
    _check(lowest_hz, refresh_hz, "packet")
    return [refresh_hz / n for n in range(2, math.floor(refresh_hz / lowest_hz * (1.0 + SAME_RATE)) + 1)]


def even_on_camera_hz(refresh_hz: float, fps: float, lowest_hz: float = 1.0) -> list[float]:
    """Give those of even_strobe_rates_hz that stay even under a camera of `fps`."""
    return [
        rate for rate in even_strobe_rates_hz(refresh_hz, lowest_hz) if strobe_under_camera(rate, fps).even
    ]


def _counts(ratio: float) -> tuple[bool, int, int]:
    """Give whether a ratio is whole, and the whole numbers that its count moves between."""
    nearest = round(ratio)
    if abs(ratio - nearest) <= SAME_RATE * ratio:
        return True, nearest, nearest
    return False, math.floor(ratio), math.ceil(ratio)


def _check(strobe_hz: float, clock_hz: float, of: str) -> None:
    if not (math.isfinite(strobe_hz) and strobe_hz > 0.0):
        raise ResponseError(f"a strobe of {strobe_hz:g} Hz cannot be: give one above 0")
    if not (math.isfinite(clock_hz) and clock_hz > 0.0):
        raise ResponseError(f"a {of} rate of {clock_hz:g} Hz cannot be: give one above 0")
