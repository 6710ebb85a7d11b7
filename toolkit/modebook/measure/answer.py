"""From a trace to an answer: events recognised, flicker out, every model fitted, and what that can tell."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from modebook.measure.events import Scene, named, recognise
from modebook.measure.fit import Fit, Known, Samples, Search, first_guess, fit
from modebook.measure.flicker import Flicker, without_flicker
from modebook.measure.interval import interval_of
from modebook.measure.judgement import WORSE, Candidate, Judgement, judge
from modebook.measure.models import METHODS, Method
from modebook.measure.prepare import gathered, samples_of
from modebook.measure.reference import from_reference
from modebook.measure.sending import Sending, from_changes, from_wire, loosened, part_of, with_stairs
from modebook.measure.setup import Setup
from modebook.measure.trace import Floats, Trace

USUAL_HZ = 44.0
WIDE = 1.8  # a change this much wider than its height explains may be several steps
WIDE_OF_ONE_HEIGHT = 1.3
STAIRS = (2, 3, 4, 5, 6)
FEW_TRIES = 6
HOPELESS = 300.0  # deviance above the best, by the narrow changes alone, in units of the deviance per sample
GOOD = 1.4  # deviance per sample at which no other count of steps is tried


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
    sending = _known_sending(trace, guess_s, period_s)
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


def _known_sending(trace: Trace, open_s: float, period_s: float) -> Sending | None:
    if trace.sent is not None:
        return from_wire(trace)
    reference = trace.reference_trace
    if reference is None:
        return None
    cleaned, scene, _ = _cleaned(reference)
    return from_reference(cleaned, scene, open_s, period_s)


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
    before = np.array([scene.levels[change.before] for change in scene.changes])
    after = np.array([scene.levels[change.after] for change in scene.changes])
    wide = np.zeros(0, dtype=np.intp) if sending.timed else _wide(scene)
    halves = _halves(scene, sending, open_s)
    fits: dict[Method, Fit] = {}
    searches: dict[Method, Search] = {}
    tried = [method for method in METHODS if counted or method != "interpolate"]
    layouts = {method: sending for method in tried}
    if len(wide):
        narrow = _narrow_fits(tried, samples, scene, sending, known, wide, trace, open_s)
        least = min(one.deviance / max(len(one.left), 1) for one, _ in narrow.values())
        first_in = min(narrow, key=lambda method: narrow[method][0].deviance)
        hopeless = {
            method
            for method, (one, _) in narrow.items()
            if one.deviance > narrow[first_in][0].deviance + HOPELESS * max(least, 1.0)
        }
        for method in tried:
            if method not in hopeless:
                one, places = narrow[method]
                layouts[method] = _in_steps(method, samples, scene, sending, known, wide, one, places, open_s)
        for method in hopeless:
            layouts[method] = layouts[first_in]
    for method in tried:
        search = Search(method, samples, layouts[method], known)
        for length_s in _lengths(method, trace, scene, sending, known, open_s):
            if len(wide):
                first = search.first(length_s, open_s, layouts[method].start_s, 0.0)
            else:
                first = first_guess(search, length_s, halves, open_s, before, after)
            found = fit(search, first)
            if method not in fits or found.deviance < fits[method].deviance:
                fits[method], searches[method] = found, search
    return fits, searches


def _narrow_fits(
    tried: list[Method],
    samples: Samples,
    scene: Scene,
    sending: Sending,
    known: Known,
    wide: NDArray[np.intp],
    trace: Trace,
    open_s: float,
) -> dict[Method, tuple[Fit, NDArray[np.intp]]]:
    """Each model's fit to the narrow changes alone, and the place of each of them among its events."""
    before = np.array([scene.levels[change.before] for change in scene.changes])
    after = np.array([scene.levels[change.after] for change in scene.changes])
    narrow = np.setdiff1d(np.arange(len(scene.changes)), wide)
    halves = _halves(scene, sending, open_s)
    plain, places = part_of(sending, narrow)
    inside = _between(samples, scene, narrow)
    some_halves = plain.start_s.copy()
    some_before, some_after = np.zeros(len(some_halves)), np.zeros(len(some_halves))
    some_halves[places], some_before[places], some_after[places] = halves[narrow], before[narrow], after[narrow]
    found: dict[Method, tuple[Fit, NDArray[np.intp]]] = {}
    for method in tried:
        search = Search(method, inside, plain, known)
        for length_s in _lengths(method, trace, scene, sending, known, open_s):
            first = first_guess(search, length_s, some_halves, open_s, some_before, some_after)
            one = fit(search, first, FEW_TRIES)
            if method not in found or one.deviance < found[method][0].deviance:
                found[method] = one, places
    return found


def _wide(scene: Scene) -> NDArray[np.intp]:
    """The changes that are far wider than others: they may be several steps."""
    widths = np.array([max(change.width_s, 1e-3) for change in scene.changes])
    span = float(np.ptp(scene.levels))
    heights = np.array([abs(scene.levels[c.after] - scene.levels[c.before]) / span for c in scene.changes])
    narrow = int(np.argmin(widths))
    # A limit makes higher changes wider; more than that, or wider than one of its own height, is steps.
    allowed = widths[narrow] * np.maximum(heights / heights[narrow], 1.0)
    alike = np.array([widths[np.abs(heights - height) < 0.1].min() for height in heights])
    return np.flatnonzero(
        np.where(alike < widths, widths > WIDE_OF_ONE_HEIGHT * alike, widths > WIDE * allowed)
    )


def _in_steps(
    method: Method,
    samples: Samples,
    scene: Scene,
    sending: Sending,
    known: Known,
    wide: NDArray[np.intp],
    best: Fit,
    places: NDArray[np.intp],
    open_s: float,
) -> Sending:
    """The changes with each wide one as the staircase or fade that this method explains it best by.

    best: the fit to the narrow changes, which gives the length; with that, each wide one is tried alone
    with several step counts. places: of the narrow changes among its events.
    """
    before = np.array([scene.levels[change.before] for change in scene.changes])
    after = np.array([scene.levels[change.after] for change in scene.changes])
    narrow = np.setdiff1d(np.arange(len(scene.changes)), wide)
    halves = _halves(scene, sending, open_s)
    layout, starts = sending, sending.start_s.copy()
    starts[narrow] = best.start_s[places]
    held = replace(known, length_s=best.length_s, open_s=best.open_s)
    usual_s = float(np.median([scene.changes[e].width_s for e in narrow]))
    chosen: dict[int, tuple[int, float, float]] = {}
    for e in (int(number) for number in wide):
        alone, _ = part_of(sending, np.array([e]))
        part = _between(samples, scene, np.array([e]))
        span_s = max(scene.changes[e].width_s - usual_s, 1e-3)
        lowest = np.inf
        for steps in (1, max(round(span_s / known.period_s) + 1, 2), *STAIRS):
            if lowest < GOOD * len(part.time_s):
                break
            tried = alone if steps == 1 else with_stairs(alone, 0, steps, span_s)
            one = Search(method, part, tried, held)
            lead = np.array([halves[e] - (0.5 * span_s if steps > 1 else 0.0)])
            first = first_guess(one, best.length_s, lead, open_s, before[[e]], after[[e]])
            found = fit(one, first, FEW_TRIES)
            if found.deviance < lowest - 2.0:
                lowest = found.deviance
                chosen[e] = (steps, float(found.start_s[0]), float(found.span_s[0]))
    for e, (steps, start_s, span_s) in chosen.items():
        starts[e] = start_s
        if steps > 1:
            layout = with_stairs(layout, e, steps, span_s)
    return loosened(replace(layout, start_s=starts), starts, layout.span_s)


def _between(samples: Samples, scene: Scene, events: NDArray[np.intp]) -> Samples:
    """The samples that lie nearest to these changes."""
    middles = np.array([0.5 * (change.from_s + change.to_s) for change in scene.changes])
    borders = np.array(
        [0.5 * (a.to_s + b.from_s) for a, b in zip(scene.changes[:-1], scene.changes[1:], strict=True)]
    )
    keep = np.isin(np.searchsorted(borders, samples.time_s), events) if len(middles) > 1 else slice(None)
    return replace(
        samples,
        time_s=samples.time_s[keep],
        level=samples.level[keep],
        sigma=samples.sigma[keep],
        clipped=samples.clipped[keep],
    )


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


def _left_over(best: Fit, samples: Samples) -> float:
    seen = ~samples.clipped
    left = (best.modeled - samples.level)[seen]
    return float(np.sqrt(np.mean(left**2)) / max(np.ptp(samples.level), 1e-12))


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
        short = method == "average" and (worse["none"] < WORSE or one.length_s < period_s)
        if held and (one is best or short or (worse[method] < WORSE and method != "none")):
            reach = interval_of(searches[method], one, scale)
            interval = (reach.from_s / period_s, reach.to_s / period_s)
        delay = None if one.delay_s is None else (one.delay_s - setup.delay_s) / period_s
        candidates[method] = Candidate(method, worse[method], one.length_s / period_s, interval, delay)
    judgement = judge(
        candidates,
        timed=sending.timed,
        misfit=misfit,
        left_over=_left_over(best, samples_of(cleaned, scene)),
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
