"""Changes that are far wider than others: taken apart into the steps of a staircase or a fade."""

from __future__ import annotations

from dataclasses import replace
from itertools import product

import numpy as np
from numpy.typing import NDArray

from modebook.measure.events import Scene
from modebook.measure.fit import Fit, Known, Samples, Search, deviance_of, fit
from modebook.measure.guesses import first_exposures, first_guess, half_way_s
from modebook.measure.models import Method
from modebook.measure.sending import LOOSE_STEPS, Sending, loosened, part_of, with_ramp, with_stairs
from modebook.measure.trace import Floats, Trace

WIDE = 1.8  # a change this much wider than its height explains may be several steps
WIDE_OF_ONE_HEIGHT = 1.3
FRAMES_WIDE = 1.5
STAIRS = (2, 3, 4, 5, 6)
FEW_TRIES = 6
RAMP_TRIES = 12
GATEWAY_PHASES, GATEWAY_ROUNDS = 8, 4  # of the desk's packets within a gateway's, then ever finer
GATEWAY_GAIN = 0.8  # of the deviance: what a first look must leave at most
PHASES = (-0.4, -0.2, 0.0, 0.2, 0.4)  # of a packet
SHIFTS = (-0.5, -0.25, -0.1, 0.0, 0.1, 0.25, 0.5)  # of the length
SPANS = (0.85, 1.0, 1.2)
MORE_SPANS = (1.4, 1.7)  # where the end is hidden by clipping
SURE_TOP = 0.1  # a top known to so large a share of it leaves a length alone
ALONE = 0.2  # of a top's doubt
ABOUT = (0.7, 1.7)  # times the length that snaps to a clipped top seem to have
TOPS = (0.85, 1.0, 1.2)  # times what a clipped top is taken for
PER_STEP = 2.0  # of deviance: what another step must gain
GOOD = 1.4  # deviance per sample at which no other count of steps is tried


def wide_changes(scene: Scene, step_s: float) -> NDArray[np.intp]:
    """The changes that are far wider than others: they may be several steps. step_s: between two samples."""
    widths = np.array([max(change.width_s, 1e-3) for change in scene.changes])
    span = float(np.ptp(scene.levels))
    heights = np.array(
        [max(abs(scene.levels[c.after] - scene.levels[c.before]) / span, 0.02) for c in scene.changes]
    )
    narrow = int(np.argmin(widths))
    # A limit makes higher changes wider; more than that, or wider than one of its own height, is steps.
    allowed = widths[narrow] * np.maximum(heights / heights[narrow], 1.0)
    alike = np.array([widths[np.abs(heights - height) < 0.1].min() for height in heights])
    far = np.where(alike < widths, widths > WIDE_OF_ONE_HEIGHT * alike, widths > WIDE * allowed)
    # What few samples show is as wide as they happen to fall.
    return np.flatnonzero(far & (widths - np.minimum(alike, allowed) > FRAMES_WIDE * step_s))


def halves_of(scene: Scene, sending: Sending, open_s: float) -> Floats:
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


def first_lengths(
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
        late = halves_of(scene, sending, open_s) - sending.start_s
        usual = float(np.median(late)) - known.delay_s + 0.5 * known.period_s
        # A line from packet to packet has corners: the slopes do not lead across them.
        return [max(usual + packets * known.period_s, known.period_s) for packets in (0.0, -1.0, 1.0)]
    if method == "lag":
        seen = seen * 0.8 / 2.197
    if method == "limit":
        span = float(np.ptp(scene.levels))
        heights = np.array(
            [abs(scene.levels[c.after] - scene.levels[c.before]) / span for c in scene.changes]
        )
        full_s = widths / np.maximum(heights, 0.05)
        usual = max(float(np.median(full_s)), seen)
        seen = max(float(np.percentile(full_s, 25)), seen)
        # Staircases and fades may be among them.
        return [seen] if usual < 1.2 * seen else [seen, usual]
    few = seen < 4.0 * trace.step_s
    return [seen, 0.5 * seen, 1.6 * seen] if few else [seen]


def narrow_fits(
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
    halves = halves_of(scene, sending, open_s)
    plain, places = part_of(sending, narrow)
    inside = between(samples, scene, narrow)
    some_halves = plain.start_s.copy()
    some_before, some_after = np.zeros(len(some_halves)), np.zeros(len(some_halves))
    some_halves[places], some_before[places], some_after[places] = (
        halves[narrow],
        before[narrow],
        after[narrow],
    )
    found: dict[Method, tuple[Fit, NDArray[np.intp]]] = {}
    for method in tried:
        search = Search(method, inside, plain, known)
        lengths = first_lengths(method, trace, scene, sending, known, open_s)
        for length_s, opened_s in product(lengths, first_exposures(known, open_s)):
            first = first_guess(search, length_s, some_halves, opened_s, some_before, some_after)
            one = fit(search, first)
            if method not in found or one.deviance < found[method][0].deviance:
                found[method] = one, places
    return found


def in_steps(
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
    halves = halves_of(scene, sending, open_s)
    layout, starts = sending, sending.start_s.copy()
    starts[narrow] = best.start_s[places]
    held = replace(known, length_s=best.length_s, open_s=best.open_s)
    if known.top is not None and known.top[1] <= SURE_TOP * known.top[0]:
        # One change alone says little of the top: a longer fade to a higher one looks the same.
        held = replace(held, top=(known.top[0], ALONE * known.top[1]))
    elif known.top is not None:
        # Where the top is clipped, a longer line to a higher level looks the same in one snap.
        near_s = (ABOUT[0] * best.length_s, ABOUT[1] * best.length_s)
        held = replace(held, length_s=None, lengths_s=near_s)
    usual_s = float(np.median([scene.changes[e].width_s for e in narrow]))
    chosen: dict[int, tuple[int, Floats, float, float, float]] = {}
    for e in (int(number) for number in wide):
        alone, _ = part_of(sending, np.array([e]))
        part = between(samples, scene, np.array([e]))
        span_s = max(scene.changes[e].width_s - usual_s, 1e-3)
        lowest = np.inf
        for steps in dict.fromkeys((1, max(round(span_s / known.period_s) + 1, 2), *STAIRS)):
            # Under a clipped top one step less to a lower top looks the same.
            if lowest < GOOD * len(part.time_s) and known.top is None:
                break
            ramp = steps > LOOSE_STEPS
            tried = alone if steps == 1 else with_stairs(alone, 0, steps, span_s)
            if ramp:
                tried = with_ramp(alone, 0, span_s, known.period_s, 0.5 * known.period_s)
            one = Search(method, part, tried, held)
            lead = np.array([halves[e] - (0.5 * span_s if steps > 1 else 0.0)])
            first = first_guess(one, best.length_s, lead, open_s, before[[e]], after[[e]])
            first = _moved(one, first, known.period_s, best.length_s, ramp)
            found = fit(one, first, RAMP_TRIES if ramp else FEW_TRIES)
            phase_s = 0.0
            if ramp and known.made_s > 0.0:
                found, phase_s = _by_gateway(one, found)
            start, spread, lead_s = found.start_s, found.span_s, found.lead_s
            if 2 <= steps <= LOOSE_STEPS:
                found = _each_step(one, found, _crossings(one, before[e], after[e], steps, open_s))
                spread = np.array([np.ptp(found.start_s)])
            if found.deviance < lowest - PER_STEP * steps:
                lowest = found.deviance
                times_s = np.maximum.accumulate(found.start_s) if 2 <= steps <= LOOSE_STEPS else start
                chosen[e] = (steps, times_s, float(spread[0]), float(lead_s[0]), phase_s)
    for e, (steps, times_s, lasts_s, along_s, phase_s) in chosen.items():
        starts[e] = times_s[0]
        if steps > LOOSE_STEPS:
            layout = with_ramp(layout, e, lasts_s, known.period_s, along_s, known.made_s, phase_s)
        elif steps > 1:
            layout = with_stairs(layout, e, steps, lasts_s)
    loose_of = loosened(replace(layout, start_s=starts), starts, layout.span_s)
    begin = loose_of.start_s.copy()
    for steps, times_s, _, _, _ in chosen.values():
        if 2 <= steps <= LOOSE_STEPS:
            at = int(np.argmin(np.abs(begin - times_s[0])))
            begin[at : at + steps] = times_s
    return replace(loose_of, start_s=begin)


def _by_gateway(search: Search, straight: Fit) -> tuple[Fit, float]:
    """The best fit of a fade whose packets a gateway sends on, and when one of the desk's packets came."""
    made_s = search.known.made_s
    best, best_share = straight, 0.0
    # What the gateway repeats is half a packet old.
    near = replace(straight, lead_s=straight.lead_s + 0.5 * made_s)
    shares = np.arange(GATEWAY_PHASES) / GATEWAY_PHASES
    for finer in range(1, GATEWAY_ROUNDS + 1):
        for share in shares:
            sending = replace(search.sending, made_s=made_s, phase_s=np.array([share % 1.0 * made_s]))
            other = Search(search.method, search.samples, sending, search.known)
            first = other.first(near.length_s, near.open_s, near.start_s, 0.0, near)
            found = fit(other, first, FEW_TRIES)
            if found.deviance < best.deviance:
                best, best_share = found, float(share)
        if best.deviance > GATEWAY_GAIN * straight.deviance:
            break
        near, step = best, 0.5**finer / GATEWAY_PHASES
        shares = best_share + np.array([-step, step])
    return best, best_share % 1.0 * made_s


def _each_step(search: Search, even: Fit, crossed_s: list[Floats]) -> Fit:
    """The best fit with each step's time free: from even steps, or from where the light crossed each."""
    layout = loosened(search.sending, even.start_s, even.span_s)
    loose = Search(search.method, search.samples, layout, search.known)
    count = len(layout.start_s)
    late_s = half_way_s(search.method, even.length_s)
    if search.method == "limit":
        late_s /= count  # a limit takes a low step in less time
    length_s, open_s = even.length_s, even.open_s
    longest_s = max(length_s, search.known.period_s)
    tried = [at - late_s + share * longest_s for at in crossed_s for share in (0.0, *SHIFTS)]
    tried.append(layout.start_s)
    firsts = [loose.first(length_s, open_s, starts, 0.0) for starts in tried]
    return fit(loose, firsts[int(np.argmin([deviance_of(loose.left(first)) for first in firsts]))])


def _crossings(search: Search, before: float, after: float, steps: int, open_s: float) -> list[Floats]:
    """When the light stood half way up each of so many equal steps, [steps]; for some tops if clipped."""
    samples = search.samples
    goals = (np.arange(steps) + 0.5) / steps
    found: list[Floats] = []
    for top in TOPS if search.top is not None else (1.0,):
        first, last = (
            (before, before + top * (after - before))
            if after > before
            else (
                after + top * (before - after),
                after,
            )
        )
        share = np.maximum.accumulate((samples.level - first) / (last - first))
        found.append(np.interp(goals, share, samples.time_s) + 0.5 * open_s)
    return found


def _moved(search: Search, first_ms: Floats, period_s: float, length_s: float, ramp: bool) -> Floats:
    """The best of first guesses around one: the slopes lead nowhere from a step's width away."""
    start = len(first_ms) - (3 if ramp else 2 if len(search.spans) else 1)  # start, span and lead come last
    guesses = []
    late_ms = 1e3 * max(length_s, period_s)
    for share in SHIFTS[1::2] if ramp else SHIFTS:
        spans = (*SPANS, *MORE_SPANS) if search.top is not None else SPANS
        for longer in spans if len(search.spans) else (1.0,):
            guess = first_ms.copy()
            guess[start] += share * late_ms
            if len(search.spans):
                # Around the same middle.
                guess[start] -= 0.5 * (longer - 1.0) * guess[start + 1]
                guess[start + 1] *= longer
            guesses.append(guess)
    if ramp:
        step_ms = 1e3 * period_s
        guesses = [
            np.concatenate([guess[:start], [guess[start] + late, guess[start + 1], late]])
            for guess in guesses
            for late in (phase * step_ms for phase in PHASES)
        ]
    return guesses[int(np.argmin([deviance_of(search.left(guess)) for guess in guesses]))]


def nearest_changes(samples: Samples, scene: Scene) -> NDArray[np.intp]:
    """Which change each sample lies nearest to, [N]."""
    borders = [0.5 * (a.to_s + b.from_s) for a, b in zip(scene.changes[:-1], scene.changes[1:], strict=True)]
    return np.searchsorted(np.array(borders), samples.time_s)


def between(samples: Samples, scene: Scene, events: NDArray[np.intp]) -> Samples:
    """The samples that lie nearest to these changes."""
    keep = np.isin(nearest_changes(samples, scene), events)
    return replace(
        samples,
        time_s=samples.time_s[keep],
        level=samples.level[keep],
        sigma=samples.sigma[keep],
        clipped=samples.clipped[keep],
    )
