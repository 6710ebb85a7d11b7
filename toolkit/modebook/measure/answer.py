"""From a trace to an answer: events recognised, flicker out, every model fitted, and what that can tell."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from modebook.measure.clipping import Top, clipped_top, with_top
from modebook.measure.events import Scene, named
from modebook.measure.every_model import every_model
from modebook.measure.fit import Fit, Known, Samples, Search
from modebook.measure.flicker import Flicker
from modebook.measure.interval import Interval, covering, interval_of
from modebook.measure.judgement import LATE_WORSE, Candidate, Judgement, judge, out_at
from modebook.measure.known_sending import cleaned_of, known_sending
from modebook.measure.models import Method
from modebook.measure.prepare import gathered, samples_of, uneven_of, with_uneven_fades
from modebook.measure.same_light import same_light
from modebook.measure.sending import (
    Sending,
    from_changes,
)
from modebook.measure.setup import Setup
from modebook.measure.trace import Floats, Trace

USUAL_HZ = 44.0
# Clocks, shutter and transfer curve are taken as told; what they may be off by widens the interval.
SURE_PACKETS = 0.03
SURE_SHARE = 0.01
HEARING_S = 0.002  # standard deviation of what a fixture takes to hear a packet, beside another or the wire
SHOWS_TOP = 2.0  # deviance per degree of freedom: a model that leaves more does not show a clipped top
OTHER_STEPS = 2.0  # times a deviance: steps found otherwise are seldom found to their very best
UNEVEN_TIMES = 4.0  # a lag's length moves by about so many times the share that its last level is off


@dataclass(frozen=True, slots=True)
class Answer:
    """What a measurement found; figures are None where the data do not hold them."""

    trace: Trace
    setup: Setup
    judgement: Judgement
    fits: dict[Method, Fit]
    worse: dict[Method, float]
    events: tuple[str, ...]
    length_s: float | None
    delay_s: float | None
    refresh_hz: float | None
    at_s: Floats
    level: Floats
    flicker: Flicker | None
    scale: float
    notes: tuple[str, ...]

    @property
    def best(self) -> Fit:
        """The fit of the method told, else the one that explains best."""
        told = self.judgement.method
        if told is not None:
            return self.fits[told]
        return self.fits[min(self.worse, key=lambda name: self.worse[name])]


def measure(trace: Trace, setup: Setup) -> Answer:
    """Give what a trace tells under these circumstances. Raises MeasureError where nothing happens in it."""
    notes = list(trace.notes)
    refresh_hz = setup.line_hz
    period_s = 1.0 / (refresh_hz or USUAL_HZ)
    open_s = trace.open_s
    guess_s = open_s if open_s is not None else 0.5 * trace.step_s
    if open_s is None:
        notes.append("the shutter was not given: fitted with the rest")
    trace = replace(trace, open_s=guess_s)
    made_s = setup.made_s
    sending = known_sending(trace, guess_s, period_s, made_s, notes)
    fine = gathered(trace, period_s)
    cleaned, scene, flicker = cleaned_of(fine)
    if flicker is not None:
        notes.append(f"mains flicker of {flicker.frequency_hz:.2f} Hz was fitted and taken out")
    if setup.gateway_hz is not None and setup.refresh_hz is None and trace.sent is None:
        cleaned = with_uneven_fades(cleaned, scene, period_s)
    top = clipped_top(cleaned, scene)
    if top is not None and top.halved:
        notes.append("the top is clipped: the level between is taken as half of it")
    if top is not None:
        scene = with_top(scene, cleaned, top.level)
    if sending is None:
        sending = from_changes(scene)
    exposed_s = None if open_s is None else cleaned.open_s
    known = Known(
        period_s,
        exposed_s,
        trace.step_s,
        setup.delay_s,
        top=None if top is None else top.about,
        made_s=made_s,
    )
    fits, searches = every_model(cleaned, scene, sending, known, refresh_hz is not None)
    return _judged(trace, setup, cleaned, scene, top, fits, searches, sending, flicker, notes, period_s)


def _wider(
    reach: Interval, length_s: float, period_s: float, uneven: float, shared_s: float, over: float
) -> tuple[float, float]:
    """An interval in packets, widened by what the fit takes as exact and no clock and no camera is.

    over: the doubt about a clipped top, as a share of it: a straight line to a higher top is longer.
    """
    length = length_s / period_s
    doubts = (
        SURE_PACKETS,
        SURE_SHARE * length,
        UNEVEN_TIMES * uneven * length,
        shared_s / period_s,
        over * length,
    )
    extra = float(np.linalg.norm(doubts))
    low, high = length - reach.from_s / period_s, reach.to_s / period_s - length
    return max(length - float(np.hypot(low, extra)), 0.0), length + float(np.hypot(high, extra))


def _shared_doubt(sending: Sending, frame_s: float) -> float:
    """How far all times of sending may be off together, in s: it looks like more or less interpolation.

    A fixture takes some time to hear a packet, a reference another; and where frames and packets keep step,
    each packet is as far from its frame as the one before.
    """
    if sending.doubt_s is None:
        return 0.0
    in_step = abs(np.exp(2j * np.pi * sending.start_s / frame_s).mean()) ** 2
    alike = in_step + (1.0 - in_step) / len(sending.start_s)
    return 1.96 * float(np.hypot(HEARING_S, np.median(sending.doubt_s) * np.sqrt(alike)))


def _left_over(best: Fit, samples: Samples) -> float:
    seen = ~samples.clipped
    left = (best.modeled - samples.level)[seen]
    return float(np.sqrt(np.mean(left**2)) / max(np.ptp(samples.level), 1e-12))


def _judged(
    trace: Trace,
    setup: Setup,
    cleaned: Trace,
    scene: Scene,
    top: Top | None,
    fits: dict[Method, Fit],
    searches: dict[Method, Search],
    sending: Sending,
    flicker: Flicker | None,
    notes: list[str],
    period_s: float,
) -> Answer:
    best = min(fits.values(), key=lambda one: one.deviance)
    free = max(len(best.left) - best.searched, 1)
    misfit = best.deviance / free
    scale = max(misfit, 1.0)
    worse = {method: (one.deviance - best.deviance) / scale for method, one in fits.items()}
    candidates: dict[Method, Candidate] = {}
    # Times of sending, or steps on the way, show how high a clipped top is: where a model explains them.
    shown = misfit < SHOWS_TOP and (
        sending.timed or len(searches[best.method].sending.event) > len(scene.changes)
    )
    open_top = top is not None and not top.halved and not shown
    uneven = uneven_of(scene, cleaned.kind) / float(np.sqrt(len(scene.changes)))
    for method, one in fits.items():
        interval = None
        held = method != "none" and searches[method].free_length
        short = method == "average" and (worse["none"] < out_at(misfit) or one.length_s < period_s)
        near = worse[method] < max(LATE_WORSE if method == "interpolate" else 0.0, out_at(misfit))
        quick = one.length_s < period_s and worse[method] <= worse["none"]
        if held and (one is best or short or near or quick):
            reach = interval_of(searches[method], one, scale)
            shared_s = _shared_doubt(sending, trace.step_s) if method == "interpolate" else 0.0
            over = 0.0 if top is None or not open_top or method == "lag" else top.doubt / top.level
            interval = _wider(reach, one.length_s, period_s, uneven, shared_s, over)
            most = max(OTHER_STEPS * one.deviance, one.deviance + scale * out_at(misfit))
            interval = covering(interval, one, most, period_s)
        delay = None if one.delay_s is None else (one.delay_s - setup.delay_s) / period_s
        candidates[method] = Candidate(method, worse[method], one.length_s / period_s, interval, delay)
    for method in same_light(best, searches[best.method]):
        candidates[method] = replace(candidates[best.method], method=method)
    judgement = judge(
        candidates,
        timed=sending.timed,
        misfit=misfit,
        left_over=_left_over(best, samples_of(cleaned, scene)),
        fps=trace.fps or 1.0 / trace.step_s,
        refresh_hz=1.0 / period_s,
        clipped=open_top,
    )
    length_s = None if judgement.length_packets is None else judgement.length_packets * period_s
    refresh_hz = setup.line_hz
    if refresh_hz is None:
        judgement = replace(
            judgement,
            can_tell=False,
            length_packets=None,
            interval_packets=None,
            why=f"the packet rate is not known; {judgement.why}",
            help=("give the desk's rate with --refresh", *judgement.help),
        )
    told = judgement.method
    delay_s = None
    if sending.timed and told is not None and told in fits:
        delay_s = fits[told].delay_s
    at = samples_of(cleaned, scene)
    return Answer(
        trace,
        setup,
        judgement,
        fits,
        worse,
        named(scene),
        length_s,
        delay_s,
        refresh_hz,
        at.time_s,
        at.level,
        flicker,
        scale,
        tuple(notes),
    )
