"""Fits a method again from what another one found, where its own way there ended in a worse place."""

from __future__ import annotations

from modebook.measure.fit import Fit, Known, Samples, Search, fit, out_of
from modebook.measure.guesses import half_way_s
from modebook.measure.models import Method

SHORT = 0.5  # packets: so short a smoothing begins where none does
TRIES = 15


def retried(
    fits: dict[Method, Fit], searches: dict[Method, Search], samples: Samples, known: Known
) -> tuple[dict[Method, Fit], dict[Method, Search]]:
    """Give fits and searches with each method tried from the best one's steps, and none from all short ones'.

    Which steps a staircase or a fade had is found for each method by itself, and may be found wrongly.
    """
    fits, searches = dict(fits), dict(searches)
    best = min(fits, key=lambda method: fits[method].deviance)
    rival = fits[best].deviance
    most = out_of(rival, len(samples.level))
    for method in list(fits):
        donors = [best]
        if method == "none":
            donors = [other for other in fits if fits[other].length_s < SHORT * known.period_s]
        for donor in donors:
            if donor == method or fits[method].deviance > most:
                continue
            again = _from(method, fits[donor], searches[donor], fits[method].length_s, samples, known, rival)
            if again[0].deviance < fits[method].deviance:
                fits[method], searches[method] = again
    return fits, searches


def _from(
    method: Method,
    donor: Fit,
    donated: Search,
    length_s: float,
    samples: Samples,
    known: Known,
    rival: float,
) -> tuple[Fit, Search]:
    search = Search(method, samples, donated.sending, known)
    shift = half_way_s(donor.method, donor.length_s) - half_way_s(method, length_s)
    timed = donated.sending.timed
    starts = donor.start_s if timed else donor.start_s + shift
    delay = (donor.delay_s or 0.0) + (shift if timed else 0.0)
    first = search.first(length_s, donor.open_s, starts, delay, donor)
    return fit(search, first, TRIES, rival), search
