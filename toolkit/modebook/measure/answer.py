"""From a trace to an answer: events recognised, flicker out, every model fitted, and what that can tell."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from modebook.measure.events import Scene, named, recognise
from modebook.measure.fit import Fit, Known, Search, first_guess, fit
from modebook.measure.flicker import Flicker, without_flicker
from modebook.measure.interval import interval_of
from modebook.measure.judgement import WORSE, Candidate, Judgement, judge
from modebook.measure.models import METHODS, Method
from modebook.measure.prepare import gathered, samples_of
from modebook.measure.sending import Sending, from_changes, from_reference, from_wire, loosened, with_stairs
from modebook.measure.setup import Setup
from modebook.measure.trace import Floats, Trace

USUAL_HZ = 44.0
WIDE = 1.8  # a change this much wider than its height explains may be several steps
WIDE_OF_ONE_HEIGHT = 1.3
STAIRS = (2, 3, 4, 5, 6, 8, 10)
FEW_TRIES = 6
MANY_TRIES = 40


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
        return self.fits[told or min(self.worse, key=lambda method: self.worse[method])]


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
    sending = _known_sending(trace, guess_s)
    fine = gathered(trace, period_s)
    cleaned, scene, flicker = _cleaned(fine)
    if flicker is not None:
        notes.append(f"mains flicker of {flicker.frequency_hz:.2f} Hz was fitted and taken out")
    if sending is None:
        sending = from_changes(scene)
    known = Known(
        period_s, None if open_s is None else cleaned.open_s, trace.step_s, setup.delay_s
    )
    fits, searches = _every_model(cleaned, scene, sending, known, refresh_hz is not None)
    return _judged(trace, setup, cleaned, scene, fits, searches, sending, flicker, notes, period_s)


def _known_sending(trace: Trace, open_s: float) -> Sending | None:
    if trace.sent is not None:
        return from_wire(trace)
    reference = trace.reference_trace
    return None if reference is None else from_reference(reference, open_s)


def _cleaned(trace: Trace) -> tuple[Trace, Scene, Flicker | None]:
    scene = recognise(trace)
    cleaned, flicker = without_flicker(trace, scene.steady, scene.flat)
    if flicker is None:
        return trace, scene, None
    scene = recognise(cleaned)
    cleaned, flicker = without_flicker(trace, scene.steady, scene.flat)
    return cleaned, recognise(cleaned), flicker


def _halves(scene: Scene, sending: Sending, open_s: float) -> Floats:
    """When each event was seen half done, less half its own span; [E]."""
    if not sending.timed:
        return np.array([change.half_s for change in scene.changes]) + 0.5 * open_s - 0.5 * sending.span_s
    halves = np.array([change.half_s for change in scene.changes]) + 0.5 * open_s
    found = np.empty(len(sending.start_s))
    ends = np.append(sending.start_s[1:], np.inf)
    for e, (start, end) in enumerate(zip(sending.start_s, ends, strict=True)):
        inside = halves[(halves > start - 0.02) & (halves < end + 0.02)]
        found[e] = (float(inside.mean()) if len(inside) else start) - 0.5 * sending.span_s[e]
    return found


def _every_model(
    trace: Trace, scene: Scene, sending: Sending, known: Known, counted: bool
) -> tuple[dict[Method, Fit], dict[Method, Search]]:
    samples = samples_of(trace, scene)
    open_s = trace.open_s or 0.0
    layouts = [sending] if sending.timed else _layouts(scene, sending, known.period_s)
    before = np.array([scene.levels[change.before] for change in scene.changes])
    after = np.array([scene.levels[change.after] for change in scene.changes])
    fits: dict[Method, Fit] = {}
    searches: dict[Method, Search] = {}
    halves = [_halves(scene, layout, open_s) for layout in layouts]
    for method in METHODS:
        if method == "interpolate" and not counted:
            continue
        for n, layout in enumerate(layouts):
            search = Search(method, samples, layout, known)
            for length_s in _lengths(method, trace, scene, layout, known, open_s):
                first = first_guess(search, length_s, halves[n], open_s, before, after)
                found = fit(search, first, tries=FEW_TRIES if len(layouts) > 1 else MANY_TRIES)
                if method not in fits or found.deviance < fits[method].deviance:
                    fits[method], searches[method] = found, search
        if len(layouts) > 1:
            fits[method], searches[method] = _freed(fits[method], searches[method])
    return fits, searches


def _freed(found: Fit, search: Search) -> tuple[Fit, Search]:
    """The fit gone on with: few steps of a staircase come when packets do, not evenly, so each is freed."""
    loose = loosened(search.sending, found.start_s, found.span_s)
    if loose is search.sending:
        going_on = search.first(found.length_s, found.open_s, found.start_s, found.delay_s or 0.0)
        for n, e in enumerate(search.spans):
            going_on[len(going_on) - len(search.spans) + n] = found.span_s[e] * 1e3
        return fit(search, going_on, MANY_TRIES), search
    freed = Search(search.method, search.samples, loose, search.known)
    first = freed.first(found.length_s, found.open_s, loose.start_s, found.delay_s or 0.0)
    return fit(freed, first, MANY_TRIES), freed


def _layouts(scene: Scene, sending: Sending, period_s: float) -> list[Sending]:
    """The changes as single steps; and where some are far wider than others, these as several steps."""
    widths = np.array([max(change.width_s, 1e-3) for change in scene.changes])
    span = float(np.ptp(scene.levels))
    heights = np.array([abs(scene.levels[c.after] - scene.levels[c.before]) / span for c in scene.changes])
    narrow = int(np.argmin(widths))
    # A limit makes higher changes wider; more than that, or wider than one of its own height, is steps.
    allowed = widths[narrow] * np.maximum(heights / heights[narrow], 1.0)
    alike = np.array([widths[np.abs(heights - height) < 0.1].min() for height in heights])
    wide = np.flatnonzero(
        np.where(alike < widths, widths > WIDE_OF_ONE_HEIGHT * alike, widths > WIDE * allowed)
    )
    made: list[Sending] = [sending]
    if not len(wide):
        return made
    longest = float(np.max(widths[wide]))
    for steps in (*STAIRS, max(round(longest / period_s), 2)):
        layout = sending
        for e in wide:
            layout = with_stairs(layout, int(e), steps, max(float(widths[e] - min(alike[e], allowed[e])), 1e-3))
        made.append(layout)
    return made


def _lengths(
    method: Method, trace: Trace, scene: Scene, sending: Sending, known: Known, open_s: float
) -> list[float]:
    """Lengths to begin with."""
    widths = np.array([change.width_s for change in scene.changes])
    narrow = float(np.percentile(widths, 25))
    seen = float(np.sqrt(max(narrow**2 - (0.8 * open_s) ** 2, (0.2 * trace.step_s) ** 2)))
    if method == "none":
        return [0.0]
    if method == "interpolate":
        if not sending.timed:
            return [known.period_s]
        late = _halves(scene, sending, open_s) - sending.start_s
        return [max(float(np.median(late)) - known.delay_s + 0.5 * known.period_s, known.period_s)]
    if method == "lag":
        seen = seen * 0.8 / 2.197
    if method == "limit":
        span = float(np.ptp(scene.levels))
        heights = np.array(
            [abs(scene.levels[c.after] - scene.levels[c.before]) / span for c in scene.changes]
        )
        seen = max(float(np.median(widths / np.maximum(heights, 0.05))), seen)
    few = seen < 4.0 * trace.step_s
    return [seen, 0.5 * seen, 1.6 * seen] if few else [seen]


def _judged(
    trace: Trace,
    setup: Setup,
    cleaned: Trace,
    scene: Scene,
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
    for method, one in fits.items():
        interval = None
        held = method != "none" and searches[method].free_length
        if held and (worse[method] < WORSE or method == "average"):
            reach = interval_of(searches[method], one, scale)
            interval = (reach.from_s / period_s, reach.to_s / period_s)
        delay = None if one.delay_s is None else (one.delay_s - setup.delay_s) / period_s
        candidates[method] = Candidate(method, worse[method], one.length_s / period_s, interval, delay)
    judgement = judge(
        candidates,
        timed=sending.timed,
        misfit=misfit,
        fps=trace.fps or 1.0 / trace.step_s,
        refresh_hz=1.0 / period_s,
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
        trace, setup, judgement, fits, worse, named(scene), length_s, delay_s, refresh_hz,
        at.time_s, at.level, flicker, scale, tuple(notes),
    )
