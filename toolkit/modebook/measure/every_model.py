"""Fits every method to a trace: its changes as single steps, staircases or fades, from several guesses."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import product
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from modebook.measure.events import Scene
from modebook.measure.fit import Fit, Known, Samples, Search, deviance_of, fit
from modebook.measure.guesses import first_exposures, first_guess
from modebook.measure.models import METHODS, Method
from modebook.measure.packet_grid import on_packets
from modebook.measure.prepare import samples_of
from modebook.measure.retry import retried
from modebook.measure.sending import Sending
from modebook.measure.staircases import (
    Stairs,
    first_lengths,
    halves_of,
    in_steps,
    narrow_fits,
    nearest_changes,
    wide_changes,
)
from modebook.measure.trace import Trace

SHORT = 0.2  # packets: no longer than this in the single snaps, all methods give one light
HOPELESS_TIMES = 20.0  # the least deviance, by the narrow changes alone: a method so bad is not given stairs
HOPELESS = 300.0  # deviance above the best, by the narrow changes alone, in units of the deviance per sample
MISSED_TIMES = 4.0  # the usual deviance per sample: a change explained so much worse may be several steps

Found: TypeAlias = tuple[dict[Method, Fit], dict[Method, Search]]


def every_model(trace: Trace, scene: Scene, sending: Sending, known: Known, counted: bool) -> Found:
    """Give each method's best fit and its search. counted: whether the packet rate is known.

    Where the time of sending is not known, changes far wider than others are taken apart into steps, and then
    those that the best method explains far worse than the others.
    """
    samples = samples_of(trace, scene)
    wide = np.zeros(0, dtype=np.intp) if sending.timed else wide_changes(scene, trace.step_s)
    fits, searches = _fitted(trace, scene, samples, sending, known, counted, wide)
    if sending.timed:
        return fits, searches
    missed = np.setdiff1d(_missed(scene, samples, fits), wide)
    if not len(missed) or len(missed) + len(wide) >= len(scene.changes):
        return fits, searches
    again = _fitted(trace, scene, samples, sending, known, counted, np.union1d(wide, missed))
    best, best_again = (min(one.deviance for one in found.values()) for found in (fits, again[0]))
    return again if best_again < best else (fits, searches)


def _missed(scene: Scene, samples: Samples, fits: dict[Method, Fit]) -> NDArray[np.intp]:
    """The changes that the best method explains far worse than others."""
    best = min(fits.values(), key=lambda one: one.deviance)
    nearest = nearest_changes(samples, scene)
    each = np.array(
        [
            deviance_of(best.left[nearest == e]) / max((nearest == e).sum(), 1)
            for e in range(len(scene.changes))
        ]
    )
    return np.flatnonzero(each > MISSED_TIMES * max(float(np.median(each)), 1.0))


def _fitted(
    trace: Trace,
    scene: Scene,
    samples: Samples,
    sending: Sending,
    known: Known,
    counted: bool,
    wide: NDArray[np.intp],
) -> Found:
    open_s = trace.open_s or 0.0
    before = np.array([scene.levels[change.before] for change in scene.changes])
    after = np.array([scene.levels[change.after] for change in scene.changes])
    halves = halves_of(scene, sending, open_s)
    tried = [method for method in METHODS if counted or method != "interpolate"]
    layouts = {method: [Stairs(sending, None)] for method in tried}
    if len(wide):
        layouts = _taken_apart(tried, trace, scene, samples, sending, known, wide)
    runs: list[Found] = []
    for n in range(max(len(several) for several in layouts.values())):
        fits: dict[Method, Fit] = {}
        searches: dict[Method, Search] = {}
        for method in tried:
            if n >= len(layouts[method]):
                continue
            stairs = layouts[method][n]
            search = Search(method, samples, stairs.sending, known)
            lengths = [stairs.length_s] if stairs.length_s is not None else []
            lengths = lengths or first_lengths(method, trace, scene, sending, known, open_s)
            for length_s, opened_s in product(lengths, first_exposures(known, open_s)):
                if len(wide):
                    first = search.first(length_s, opened_s, stairs.sending.start_s, 0.0)
                else:
                    first = first_guess(search, length_s, halves, opened_s, before, after)
                rival = min((one.deviance for one in fits.values()), default=np.inf)
                found = fit(search, first, rival=rival)
                if method not in fits or found.deviance < fits[method].deviance:
                    fits[method], searches[method] = found, search
        runs.append(retried(fits, searches, samples, known))
    if sending.timed or not counted or not len(wide):
        return _best_of(runs)
    best = min((one for fits, _ in runs for one in fits.values()), key=lambda one: one.deviance)
    on_grid = [on_packets(*run, samples, known, best) for run in runs]
    gridded = [run for run in on_grid if run is not None]
    if not gridded:
        return _best_of(runs)
    # What only another run has keeps its place there: with free times it explains the light no worse.
    (loose, loose_searches), (fits, searches) = _best_of(runs), _best_of(gridded)
    return {**loose, **fits}, {**loose_searches, **searches}


def _best_of(runs: Sequence[Found]) -> Found:
    """Each method's best of several runs; what the others found is kept beside it."""
    fits: dict[Method, Fit] = {}
    searches: dict[Method, Search] = {}
    for method in METHODS:
        of = [(run[0][method], run[1][method]) for run in runs if method in run[0]]
        if not of:
            continue
        best, searches[method] = min(of, key=lambda one: one[0].deviance)
        others = tuple((one.length_s, one.deviance) for one, _ in of if one is not best)
        fits[method] = replace(best, others=others)
    return fits, searches


def _taken_apart(
    tried: list[Method],
    trace: Trace,
    scene: Scene,
    samples: Samples,
    sending: Sending,
    known: Known,
    wide: NDArray[np.intp],
) -> dict[Method, list[Stairs]]:
    """Each method's changes with the wide ones as staircases or fades."""
    open_s = trace.open_s or 0.0
    layouts: dict[Method, list[Stairs]] = {}
    narrow = narrow_fits(tried, samples, scene, sending, known, wide, trace, open_s)
    least = min(one.deviance / max(len(one.left), 1) for one, _ in narrow.values())
    first_in = min(narrow, key=lambda method: narrow[method][0].deviance)
    hopeless = {
        method
        for method, (one, _) in narrow.items()
        if one.deviance > HOPELESS_TIMES * narrow[first_in][0].deviance + HOPELESS * max(least, 1.0)
    }
    short: list[Stairs] = []
    for method in tried:
        if method in hopeless:
            continue
        one, places = narrow[method]
        quick = one.length_s < SHORT * known.period_s
        if quick and short:
            layouts[method] = short  # all methods are one at so short a length
            continue
        layouts[method] = in_steps(method, samples, scene, sending, known, wide, one, places, open_s)
        if quick:
            short = [replace(stairs, length_s=None) for stairs in layouts[method]]
    for method in hopeless:
        layouts[method] = [replace(layouts[first_in][0], length_s=None)]
    return layouts
