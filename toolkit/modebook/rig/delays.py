"""How far a smoothing choice makes a snap's half-way point run behind its packet, in closed form.

It is what response.late computes with all its arrays (`added_half_s`, which judge() and a cue's `match` go
by) for a snap over the whole scale on a linear curve; an audit of thousands of units has no time for more.
"""

from __future__ import annotations

import math

from modebook.response.smoothing import Smoothing


def half_way_delays_s(smoothing: Smoothing, line_hz: float) -> tuple[float, float]:
    """The delays of a rising and of a falling snap's half-way point, in s, at `line_hz` packets a second.

    average, limit, restart: half of the length. interpolate: the line from the packet before to the snap's
    is drawn one length later, so its middle comes half a packet before that (a length below one packet is a
    line of that length). lag: the time constant times ln 2. Raises ResponseError for an unknown length.
    """
    period_s = 1.0 / line_hz
    rise_s, fall_s = smoothing.lengths_s(period_s)
    return _half_s(smoothing.method, rise_s, period_s), _half_s(smoothing.method, fall_s, period_s)


def _half_s(method: str, length_s: float, period_s: float) -> float:
    if method == "lag":
        return length_s * math.log(2.0)
    if method == "interpolate":
        return length_s - min(length_s, period_s) / 2.0
    return length_s / 2.0
