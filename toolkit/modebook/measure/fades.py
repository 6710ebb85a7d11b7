"""Fades that a reference lamp shows: when they come is known to about a packet, how they go is fitted."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from modebook.measure.sending import Sending

START_DOUBT = 0.3  # packets: a reference shows no better where a fade's line is
CLOSE_S = 1e-6


@dataclass(frozen=True, slots=True)
class Fade:
    """A straight fade's packets: the first one's time, the line's length, how far along the line it is.

    phase_s: when one of the desk's packets came after the first one, where a gateway sends at its own rate.
    """

    start_s: float
    span_s: float
    lead_s: float
    phase_s: float


def fade_of(layout: Sending, event: int) -> Fade:
    """Give the fade that an event of a layout is."""
    assert layout.lead_s is not None
    phase_s = 0.0 if layout.phase_s is None else float(layout.phase_s[event])
    return Fade(
        float(layout.start_s[event]), float(layout.span_s[event]), float(layout.lead_s[event]), phase_s
    )


def with_fades(sending: Sending, fades: Sequence[Fade], period_s: float, made_s: float) -> Sending:
    """Give the steps with those of these fades as packets of a line whose place and length stay open."""
    events = len(sending.start_s)
    tick_s = np.zeros(len(sending.event)) if sending.tick_s is None else sending.tick_s.copy()
    share, span_s, free = sending.share.copy(), sending.span_s.copy(), sending.free_span.copy()
    lead_s, phase_s = np.zeros(events), np.zeros(events)
    doubt_s = None if sending.doubt_s is None else sending.doubt_s.copy()
    times_s = sending.steps_s(sending.start_s, sending.span_s)
    some = False
    for fade in fades:
        first = int(np.argmin(np.abs(times_s - fade.start_s)))
        event = int(sending.event[first])
        rows = np.flatnonzero(sending.event == event)
        if abs(times_s[first] - fade.start_s) > CLOSE_S or rows[0] != first or len(rows) < 2:
            continue
        ticks = np.arange(len(rows)) * period_s
        if np.abs(times_s[rows] - times_s[first] - ticks).max() > 0.5 * period_s:
            continue
        tick_s[rows], share[rows] = ticks, 0.0
        span_s[event], free[event] = fade.span_s, True
        lead_s[event], phase_s[event] = fade.lead_s, fade.phase_s
        if doubt_s is not None:
            doubt_s[event] = max(doubt_s[event], START_DOUBT * period_s)
        some = True
    if not some:
        return sending
    return replace(
        sending,
        tick_s=tick_s,
        share=share,
        span_s=span_s,
        free_span=free,
        lead_s=lead_s,
        phase_s=phase_s,
        made_s=made_s,
        doubt_s=doubt_s,
    )
