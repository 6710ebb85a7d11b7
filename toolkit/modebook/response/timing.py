"""Packet timing on a DMX512 line (ANSI E1.11), and when a cue's change can reach the fixture.

The figures of ANSI E1.11 (DMX512-A) used here: a break of at least 92 us, a mark after break of at
least 12 us, 44 us a slot (11 bits at 250 kbit/s), at most 512 data slots after the START code, and at
least 1204 us from break to break. A network stream (ANSI E1.31) has no line to wait for.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from .errors import ResponseError

Line = Literal["dmx", "network"]

BREAK_MIN_US = 92.0
MARK_MIN_US = 12.0
SLOT_US = 44.0
SLOTS_MAX = 512
BREAK_TO_BREAK_MIN_US = 1204.0

# The trade writes the full line's 44.0995 Hz as 44.1: a rate is refused only when it is more than a
# rounding above what the line takes.
RATE_ROUNDING = 1e-3


@dataclass(frozen=True, slots=True)
class Reach:
    """From the cue to the moment its value is in the fixture, best and worst over the phase, in s."""

    best_s: float
    worst_s: float


def packet_s(slots: int, break_us: float = BREAK_MIN_US, mark_us: float = MARK_MIN_US) -> float:
    """Give the shortest time in s from one break to the next for a packet of `slots` data slots.

    slots: 0 to 512, the highest address sent (the START code is added here). break_us, mark_us: at
    least 92 and 12. Never less than 1204 us. Source: ANSI E1.11. Raises ResponseError.
    """
    sent_us = break_us + mark_us + _slots_us(slots, break_us, mark_us)
    return max(sent_us, BREAK_TO_BREAK_MIN_US) * 1e-6


def max_refresh_hz(slots: int, break_us: float = BREAK_MIN_US, mark_us: float = MARK_MIN_US) -> float:
    """Give the greatest packet rate in Hz of a DMX512 line that sends `slots` data slots (see packet_s)."""
    return 1.0 / packet_s(slots, break_us, mark_us)


def slot_arrival_s(address: int, break_us: float = BREAK_MIN_US, mark_us: float = MARK_MIN_US) -> float:
    """Give the time in s from a packet's break until the slot at `address` (1 to 512) is in whole.

    Source: ANSI E1.11; slots are taken to follow each other without idle time.
    """
    if address < 1:
        raise ResponseError(f"address {address} is not a DMX512 address: give 1 to {SLOTS_MAX}")
    return (break_us + mark_us + _slots_us(address, break_us, mark_us)) * 1e-6


def check_rate(refresh_hz: float, slots: int = SLOTS_MAX, line: Line = "dmx") -> float:
    """Return `refresh_hz` if the line can carry it, else raise ResponseError saying what it can.

    On line 'dmx' the limit is max_refresh_hz(slots), with a thousandth to spare for the trade's rounding
    (44.1 for 44.0995). On line 'network' any rate above 0 is taken. Source: ANSI E1.11.
    """
    if not (math.isfinite(refresh_hz) and refresh_hz > 0):
        raise ResponseError(f"a rate of {refresh_hz:g} Hz sends no packets: give a rate above 0")
    if line == "network":
        return refresh_hz
    if line != "dmx":
        raise ResponseError(f"line {line!r} is unknown: give 'dmx' or 'network'")
    most_hz = max_refresh_hz(slots)
    if refresh_hz > most_hz * (1 + RATE_ROUNDING):
        raise ResponseError(
            f"{refresh_hz:g} Hz is more than a DMX512 line takes: {slots} slots go at most "
            f"{most_hz:.2f} times a second; lower the rate, send fewer slots, or say the line is a network"
        )
    return refresh_hz


def cue_reach_s(
    refresh_hz: float,
    address: int,
    *,
    slots: int = SLOTS_MAX,
    line: Line = "dmx",
    gateway_hz: float | None = None,
    delay_s: float = 0.0,
) -> Reach:
    """Give when a cue's change can be in the fixture, best and worst over the phase of cue and packets.

    The desk puts the change into the next packet that it starts, so the wait is 0 to one packet time;
    a gateway with a clock of its own adds 0 to one of its packet times (the two clocks are taken as
    independent); then the slot at `address` must have arrived over the DMX512 line, which is always the
    last stretch when there is a gateway, and the only one when `line` is 'dmx'. Line 'network' without
    a gateway has no line to wait for. `line` says what the desk sends on; gateway_hz is then the DMX512
    rate. delay_s is fixed. A fixture that waits for the end of the packet is later by the rest of it.
    Raises ResponseError. Source: ANSI E1.11 arithmetic.
    """
    if not 1 <= address <= slots:
        raise ResponseError(f"address {address} is not among the {slots} slots that are sent")
    if not (math.isfinite(delay_s) and delay_s >= 0):
        raise ResponseError(f"a delay of {delay_s:g} s cannot be: give 0 or more")
    wait_s = 1.0 / check_rate(refresh_hz, slots, line)
    best_s = delay_s
    if gateway_hz is not None:
        wait_s += 1.0 / check_rate(gateway_hz, slots, "dmx")
    if line == "dmx" or gateway_hz is not None:
        best_s += slot_arrival_s(address)
    return Reach(best_s=best_s, worst_s=best_s + wait_s)


def _slots_us(slots: int, break_us: float, mark_us: float) -> float:
    """Give the time of the START code and `slots` data slots, after checking all three figures."""
    if not 0 <= slots <= SLOTS_MAX:
        raise ResponseError(f"{slots} slots do not fit a DMX512 packet: give 0 to {SLOTS_MAX}")
    if not (math.isfinite(break_us) and break_us >= BREAK_MIN_US):
        raise ResponseError(
            f"a break of {break_us:g} us is too short: E1.11 asks for {BREAK_MIN_US:g} us or more"
        )
    if not (math.isfinite(mark_us) and mark_us >= MARK_MIN_US):
        raise ResponseError(
            f"a mark after break of {mark_us:g} us is too short: E1.11 asks for {MARK_MIN_US:g} us or more"
        )
    return SLOT_US * (slots + 1)
