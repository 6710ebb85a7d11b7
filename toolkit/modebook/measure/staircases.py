"""Changes that are far wider than others: taken apart into the steps of a staircase or a fade."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from modebook.measure.events import Scene
from modebook.measure.fit import Fit, Known, Samples, Search, first_guess, fit
from modebook.measure.models import Method
from modebook.measure.sending import Sending, loosened, part_of, with_stairs
from modebook.measure.trace import Floats, Trace

WIDE = 1.8  # a change this much wider than its height explains may be several steps
WIDE_OF_ONE_HEIGHT = 1.3
STAIRS = (2, 3, 4, 5, 6)
FEW_TRIES = 6
GOOD = 1.4  # deviance per sample at which no other count of steps is tried


def wide_changes(scene: Scene) -> NDArray[np.intp]:
    """The changes that are far wider than others: they may be several steps."""
    widths = np.array([max(change.width_s, 1e-3) for change in scene.changes])
    span = float(np.ptp(scene.levels))
    heights = np.array(
        [max(abs(scene.levels[c.after] - scene.levels[c.before]) / span, 0.02) for c in scene.changes]
    )
    narrow = int(np.argmin(widths))
    # A limit makes higher changes wider; more than that, or wider than one of its own height, is steps.
    allowed = widths[narrow] * np.maximum(heights / heights[narrow], 1.0)
    alike = np.array([widths[np.abs(heights - height) < 0.1].min() for height in heights])
    return np.flatnonzero(
        np.where(alike < widths, widths > WIDE_OF_ONE_HEIGHT * alike, widths > WIDE * allowed)
    )


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
        for length_s in first_lengths(method, trace, scene, sending, known, open_s):
            first = first_guess(search, length_s, some_halves, open_s, some_before, some_after)
            one = fit(search, first, FEW_TRIES)
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
    usual_s = float(np.median([scene.changes[e].width_s for e in narrow]))
    chosen: dict[int, tuple[int, float, float]] = {}
    for e in (int(number) for number in wide):
        alone, _ = part_of(sending, np.array([e]))
        part = between(samples, scene, np.array([e]))
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


def between(samples: Samples, scene: Scene, events: NDArray[np.intp]) -> Samples:
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
