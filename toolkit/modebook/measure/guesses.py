"""Where a fit begins: steps placed so that each event is half done when it was seen to be, for a length."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from modebook.measure.fit import Fit, Known, Search, deviance_of, fit
from modebook.measure.models import Method, unit_answer
from modebook.measure.trace import Floats

LONG_EXPOSURE = 0.95  # of a frame
BLIND_FRAMES = 2.0  # a change shorter than this may lie between two exposures


def at_length(search: Search, best: Fit, length_s: float, tries: int = 10) -> Fit:
    """Give the best fit with the length held, from a fit nearby."""
    held = Search(search.method, search.samples, search.sending, replace(search.known, length_s=length_s))
    shift = half_way_s(search.method, best.length_s) - half_way_s(search.method, length_s)
    timed = search.sending.timed
    starts = best.start_s if timed else best.start_s + shift
    delay = (best.delay_s or 0.0) + (shift if timed else 0.0)
    found = fit(held, held.first(length_s, best.open_s, starts, delay, best), tries)
    if not timed and length_s < BLIND_FRAMES * search.known.frame_s:
        moved = placed(held, starts, length_s, best.open_s, *_around(search, best))
        again = fit(held, held.first(length_s, best.open_s, moved, delay, best), tries)
        found = again if again.deviance < found.deviance else found
    return found


def first_exposures(known: Known, open_s: float) -> list[float]:
    """Exposures to begin with, in s: the known one, or a half and a whole frame."""
    return [open_s] if known.open_s is not None else [open_s, LONG_EXPOSURE * known.frame_s]


def half_way_s(method: Method, length_s: float) -> float:
    """How long after a full step the light is half way."""
    if method == "lag":
        return float(np.log(2.0)) * length_s
    return 0.0 if method == "none" else 0.5 * length_s


def first_guess(
    search: Search, length_s: float, half_s: Floats, open_s: float, before: Floats, after: Floats
) -> Floats:
    """Where to begin: each event half done when it was seen to be, for this length.

    half_s: [E]; before, after: [E], the levels around each event. Where a step may lie between two
    exposures the slopes are blind: there, times around the guess are tried out.
    """
    lead = half_way_s(search.method, length_s)
    period_s = search.known.period_s
    if search.method == "interpolate":
        lead = 0.5 * min(period_s, length_s) + (max(length_s - period_s, 0.0) if search.free_length else 0.0)
    frame_s = search.known.frame_s
    if search.sending.timed:
        starts = search.sending.start_s
        late = float(np.median(half_s - starts)) - lead
        if not search.free_delay:
            return search.first(length_s, open_s, starts, 0.0)
        tried = [max(late + share * frame_s, 0.0) for share in np.linspace(-1.0, 1.0, 13)]
        guesses = [search.first(length_s, open_s, starts, delay) for delay in [*tried, search.known.delay_s]]
        worth = [deviance_of(search.left(guess)) for guess in guesses]
        return guesses[int(np.argmin(worth))]
    begin = placed(search, half_s - lead, length_s, open_s, before, after)
    return search.first(length_s, open_s, begin, 0.0)


def placed(
    search: Search, start_s: Floats, length_s: float, open_s: float, before: Floats, after: Floats
) -> Floats:
    """Starts of single steps moved within a frame to where they explain the light best, [E].

    Where a step may lie between two exposures the slopes are blind. before, after: [E], levels around each.
    """
    samples, frame_s, period_s = search.samples, search.known.frame_s, search.known.period_s
    shape_s = period_s if search.method == "interpolate" else length_s
    kind: Method = "average" if search.method not in ("lag", "none") else search.method
    begin = start_s.copy()
    if shape_s > 3.0 * frame_s:
        return begin
    for e, at in enumerate(start_s):
        if search.sending.span_s[e] > 0.0:
            continue
        tries = at + np.linspace(-1.0, 1.0, 25) * frame_s
        i, j = np.searchsorted(samples.time_s, [at - 3 * frame_s - open_s, at + 4 * frame_s + 3 * shape_s])
        if j - i < 2:
            continue
        seen = unit_answer(kind, samples.time_s[i:j, None] - tries[None, :], open_s, shape_s)
        left = before[e] + (after[e] - before[e]) * seen - samples.level[i:j, None]
        left[samples.clipped[i:j, None] & (left > 0)] = 0.0
        cost = ((left / samples.sigma[i:j, None]) ** 2).sum(axis=0)
        # Several may be as good: the middle one of them.
        good = np.flatnonzero(cost <= cost.min() + 0.5)
        begin[e] = tries[good[len(good) // 2]]
    return begin


def _around(search: Search, best: Fit) -> tuple[Floats, Floats]:
    """The levels before and after each event of a fit, [E]."""
    sent = search.sending
    rows = np.searchsorted(sent.event, np.arange(len(sent.start_s)))
    if search.method == "limit":
        heights = best.levels[0] + (best.levels[1] - best.levels[0]) * sent.values
    else:
        heights = sent.weights @ best.levels
    return heights[rows], heights[rows + 1]
