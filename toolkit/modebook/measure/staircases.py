"""Changes that are far wider than others: taken apart into the steps of a staircase or a fade."""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import product

import numpy as np
from numpy.typing import NDArray

from modebook.measure.clipping import OVER
from modebook.measure.events import Scene
from modebook.measure.fit import Fit, Known, Samples, Search, fit
from modebook.measure.guesses import first_exposures, first_guess
from modebook.measure.models import Method
from modebook.measure.sending import LOOSE_STEPS, Sending, loosened, part_of, with_ramp, with_stairs
from modebook.measure.trace import Floats, Trace
from modebook.measure.wide_change import Way, best_way

WIDE = 1.8  # a change this much wider than its height explains may be several steps
WIDE_OF_ONE_HEIGHT = 1.3
FRAMES_WIDE = 1.5
SURE_TOP = 0.1  # a top known to so large a share of it leaves a length alone
ALONE = 0.2  # of a top's doubt
ABOUT = (0.7, 1.7)  # times the length that snaps to a clipped top seem to have
OVER_CLIP, OVER_TRIES = (1.04, 1.7), 6  # times the level of clipping: tops that are tried
STEEP = 0.03  # of a top: how well snaps tell it for a length


@dataclass(frozen=True, slots=True)
class Stairs:
    """The changes with wide ones taken apart, and the length that it was done for, in s (None: no one)."""

    sending: Sending
    length_s: float | None


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
) -> list[Stairs]:
    """The changes with each wide one as the staircase or fade that this method explains it best by.

    best: the fit to the narrow changes, which gives the length; with that, each wide one is tried alone
    with several step counts. places: of the narrow changes among its events. Several, the best first, where
    a clipped top leaves the length open.
    """
    before = np.array([scene.levels[change.before] for change in scene.changes])
    after = np.array([scene.levels[change.after] for change in scene.changes])
    narrow = np.setdiff1d(np.arange(len(scene.changes)), wide)
    halves = halves_of(scene, sending, open_s)
    usual_s = float(np.median([scene.changes[e].width_s for e in narrow]))
    found: list[tuple[float, Stairs]] = []
    for held in lengths_held(method, known, best):
        ways: list[Way] = []
        length_s = best.length_s if held.length_s is None else held.length_s
        for e in wide:
            alone, _ = part_of(sending, np.array([e]))
            part = between(samples, scene, np.array([e]))
            span_s = max(scene.changes[e].width_s - usual_s, 1e-3)
            at = before[[e]], after[[e]]
            ways.append(best_way(method, part, alone, held, known, span_s, halves[e], at, length_s, open_s))
        starts = sending.start_s.copy()
        starts[narrow] = best.start_s[places]
        made = _laid_out(sending, starts, dict(zip(wide.tolist(), ways, strict=True)), known)
        found.append((sum(way.deviance for way in ways), Stairs(made, held.length_s)))
    return [stairs for _, stairs in sorted(found, key=lambda one: one[0])]


def _laid_out(sending: Sending, starts: Floats, ways: dict[int, Way], known: Known) -> Sending:
    layout = sending
    for e, way in ways.items():
        starts[e] = way.times_s[0]
        if way.ramp:
            layout = with_ramp(layout, e, way.lasts_s, known.period_s, way.along_s, known.made_s, way.phase_s)
        elif way.steps > 1:
            layout = with_stairs(layout, e, way.steps, way.lasts_s)
    loose_of = loosened(replace(layout, start_s=starts), starts, layout.span_s)
    begin = loose_of.start_s.copy()
    for way in ways.values():
        if 2 <= way.steps <= LOOSE_STEPS:
            at = int(np.argmin(np.abs(begin - way.times_s[0])))
            begin[at : at + way.steps] = way.times_s
    return replace(loose_of, start_s=begin)


def lengths_held(method: Method, known: Known, best: Fit) -> list[Known]:
    """What is held while a wide change is tried alone: length, exposure, and a top that snaps tell of."""
    held = replace(known, length_s=best.length_s, open_s=best.open_s)
    if known.top is None:
        return [held]
    if known.top[1] <= SURE_TOP * known.top[0]:
        # One change alone says little of the top: a longer fade to a higher one looks the same.
        return [replace(held, top=(known.top[0], ALONE * known.top[1]))]
    if method not in ("average", "limit", "restart"):
        return [replace(held, length_s=None, lengths_s=(ABOUT[0] * best.length_s, ABOUT[1] * best.length_s))]
    # Snaps show how steep a line is, and a longer one to a higher top is as steep.
    low, high = float(best.levels[0]), float(best.levels[-1])
    shares = (known.top[0] - low) / OVER / (high - low) * np.geomspace(*OVER_CLIP, OVER_TRIES)
    return [
        replace(held, length_s=share * best.length_s, top=(low + share * (high - low), STEEP * share * high))
        for share in shares.tolist()
    ]


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
