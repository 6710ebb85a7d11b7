"""Steps of a staircase come with packets: their times are put on their grid, where the light agrees."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from modebook.measure.fit import Fit, Known, Samples, Search, fit, out_of
from modebook.measure.guesses import half_way_s
from modebook.measure.models import Method
from modebook.measure.sending import Sending
from modebook.measure.trace import Floats

CLOSE_S = 0.4  # steps of one staircase are not farther apart; over longer times clocks drift
OFF_MOST = 0.4  # packets: a step farther from the grid is of no such staircase
TRIES = 12
PER_STEP, ONCE = 4.0, 6.0  # of deviance a sample: what the grid may cost, a step's time and once


def on_packets(
    fits: dict[Method, Fit],
    searches: dict[Method, Search],
    samples: Samples,
    known: Known,
    best: Fit,
) -> tuple[dict[Method, Fit], dict[Method, Search]] | None:
    """Give fits and searches with a staircase's steps whole packets apart, if hardly worse than the best.

    Steps whose times are free let one method pass for another. The grid of each method's own times is tried
    for all of them. None where there are no such steps, or where the light does not agree.
    """
    rival = best.deviance
    most = out_of(rival, len(samples.level))
    inside = [method for method in fits if fits[method].deviance <= most]
    grids: dict[bytes, tuple[Method, Sending]] = {}
    for method in inside:
        made = on_grid(searches[method].sending, fits[method].start_s, known.period_s)
        if made is not None:
            shape = np.concatenate([made.event, np.round(made.share * made.span_s[made.event], 6)]).tobytes()
            grids.setdefault(shape, (method, made))
    if not grids:
        return None
    found_fits, found_searches = dict(fits), dict(searches)
    for method in inside:
        tried = [
            _fitted(method, fits[method], fits[donor], made, samples, known) for donor, made in grids.values()
        ]
        found_fits[method], found_searches[method] = min(tried, key=lambda one: one[0].deviance)
    least = min(found_fits[method].deviance for method in inside)
    freed = best.searched - min(found_fits[method].searched for method in inside)
    misfit = max(rival / max(len(samples.level) - best.searched, 1), 1.0)
    if least > rival + misfit * (PER_STEP * max(freed, 0) + ONCE):
        return None
    return found_fits, found_searches


def _fitted(
    method: Method, own: Fit, donor: Fit, made: Sending, samples: Samples, known: Known
) -> tuple[Fit, Search]:
    search = Search(method, samples, made, known)
    shift = half_way_s(donor.method, donor.length_s) - half_way_s(method, own.length_s)
    spans = replace(
        own, span_s=made.span_s, lead_s=np.zeros(len(made.start_s)) if made.lead_s is None else made.lead_s
    )
    first = search.first(own.length_s, own.open_s, made.start_s + shift, own.delay_s or 0.0, spans)
    return fit(search, first, TRIES), search


def on_grid(sending: Sending, start_s: Floats, period_s: float) -> Sending | None:
    """Give the steps that follow each other closely the same way as one event, whole packets apart.

    start_s: [E], about when each event comes. None where no steps are like that.
    """
    counts = np.bincount(sending.event, minlength=len(start_s))
    rows = np.searchsorted(sending.event, np.arange(len(start_s)))
    ways = np.sign(np.diff(sending.values))[rows]
    first = np.ones(len(start_s), dtype=bool)
    first[1:] = (ways[1:] != ways[:-1]) | (np.diff(start_s) > CLOSE_S)
    first |= counts > 1
    first[1:] |= counts[:-1] > 1
    share, begin_s, span_s = sending.share.copy(), start_s.copy(), sending.span_s.copy()
    some = False
    for run in np.split(np.arange(len(start_s)), np.flatnonzero(first)[1:]):
        if len(run) < 2:
            continue
        ticks, from_s = _ticks(start_s[run], period_s)
        off = np.abs(start_s[run] - from_s - ticks * period_s).max() / period_s
        if off > OFF_MOST or (np.diff(ticks) < 1).any():
            first[run] = True
            continue
        some = True
        share[rows[run]] = ticks / ticks[-1]
        begin_s[run[0]], span_s[run[0]] = from_s, ticks[-1] * period_s
    if not some:
        return None
    place = np.cumsum(first) - 1
    return replace(
        sending,
        event=place[sending.event],
        share=share,
        start_s=begin_s[first],
        span_s=span_s[first],
        free_span=sending.free_span[first],
        doubt_s=None if sending.doubt_s is None else sending.doubt_s[first],
        slack_s=None if sending.slack_s is None else sending.slack_s[first],
        lead_s=None if sending.lead_s is None else sending.lead_s[first],
        phase_s=None if sending.phase_s is None else sending.phase_s[first],
    )


def _ticks(times_s: Floats, period_s: float) -> tuple[NDArray[np.float64], float]:
    """On which packets of a grid times lie, from 0, and when the first of them is."""
    turns = np.exp(2j * np.pi * times_s / period_s).mean()
    phase_s = float(np.angle(turns)) / (2 * np.pi) * period_s
    ticks = np.round((times_s - phase_s) / period_s)
    return ticks - ticks[0], float(phase_s + ticks[0] * period_s)
