"""Robust least squares of one smoothing model to a trace: times and length searched, levels solved for."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

import numpy as np
from numpy.typing import NDArray

from modebook.measure.models import Method, answered, unit_answer
from modebook.measure.sending import Sending
from modebook.measure.trace import Floats

MS = 1e-3  # searched figures are in milliseconds
STEP_MS = 0.02  # for the slopes of the residuals
ROBUST_AT = 4.0  # standard deviations: beyond them a sample counts less and less
LONGEST_S = 8.0
DELAY_MOST_S = 1.0
DELAY_EARLY_S = 0.003
CENSOR_ROUNDS = 4
LEAST_STEP_MS = 1e-4
CLOSE_ENOUGH = 0.02  # of deviance per sample: what another step would gain


@dataclass(frozen=True, slots=True)
class Samples:
    """What is fitted: [N] each. clipped: where level is only a lower bound."""

    time_s: Floats
    level: Floats
    sigma: Floats
    clipped: NDArray[np.bool_]
    spread_s: float = 0.0


@dataclass(frozen=True, slots=True)
class Known:
    """What is not searched. None: it is. delay_s: what the link waits, for interpolate the whole of it."""

    period_s: float
    open_s: float | None
    frame_s: float
    delay_s: float = 0.0
    length_s: float | None = None


@dataclass(frozen=True, slots=True)
class Fit:
    """One model's best figures; deviance is twice the robust cost, in units of the noise's variance."""

    method: Method
    length_s: float
    open_s: float
    delay_s: float | None
    start_s: Floats
    span_s: Floats
    levels: Floats
    deviance: float
    searched: int
    modeled: Floats
    left: Floats = field(repr=False)
    """What is left, in standard deviations, [N]."""


class Search:
    """The figures that one model leaves open, and what is left for any choice of them."""

    def __init__(self, method: Method, samples: Samples, sending: Sending, known: Known) -> None:
        self.method, self.samples, self.sending, self.known = method, samples, sending, known
        timed = sending.timed
        self.free_length = (
            method != "none" and known.length_s is None and not (method == "interpolate" and not timed)
        )
        self.free_open = known.open_s is None
        self.free_delay = timed and method != "interpolate"
        events = len(sending.start_s)
        self.spans = np.flatnonzero(sending.free_span)
        lows: list[float] = []
        highs: list[float] = []
        if self.free_length:
            lows.append(0.0)
            highs.append(LONGEST_S)
        if self.free_open:
            lows.append(0.01 * known.frame_s)
            highs.append(known.frame_s)
        if self.free_delay:
            lows.append(-DELAY_EARLY_S)
            highs.append(DELAY_MOST_S)
        lows += [-np.inf] * events + [0.0] * len(self.spans)
        highs += [np.inf] * events + [LONGEST_S] * len(self.spans)
        self.bounds_ms = (np.array(lows) / MS, np.array(highs) / MS)

    def first(self, length_s: float, open_s: float, start_s: Floats, delay_s: float) -> Floats:
        """The searched figures, in ms, to begin with."""
        figures: list[float] = []
        if self.free_length:
            figures.append(length_s)
        if self.free_open:
            figures.append(open_s)
        if self.free_delay:
            figures.append(delay_s)
        figures += [float(at) for at in start_s]
        figures += [float(self.sending.span_s[e]) for e in self.spans]
        low, high = self.bounds_ms
        return np.asarray(np.clip(np.array(figures) / MS, low + 1e-9, high - 1e-9))

    def told(self, figures_ms: Floats) -> tuple[float, float, float, Floats, Floats]:
        """Length, exposure, delay, starts and spans of searched figures, in s."""
        at, values = 0, figures_ms * MS
        length = self.known.length_s if self.known.length_s is not None else self.known.period_s
        if self.method == "none":
            length = 0.0
        if self.free_length:
            length, at = float(values[at]), at + 1
        open_s = self.known.open_s or 0.0
        if self.free_open:
            open_s, at = float(values[at]), at + 1
        delay = self.known.delay_s if self.sending.timed else 0.0
        if self.free_delay:
            delay, at = float(values[at]), at + 1
        events = len(self.sending.start_s)
        starts = values[at : at + events]
        span_s = self.sending.span_s
        if len(self.spans):
            span_s = span_s.copy()
            span_s[self.spans] = values[at + events :]
        return length, open_s, delay, starts, span_s

    def basis(self, figures_ms: Floats, near: slice = slice(None)) -> Floats:
        """The light that each level adds, [N, P]; near: for these samples only."""
        length, open_s, delay, starts, spans = self.told(figures_ms)
        steps_s = self.sending.steps_s(starts, spans) + delay
        if (np.diff(steps_s) < 0).any():
            steps_s = np.maximum.accumulate(steps_s)
        sent = self.sending
        values = sent.weights if self.method != "limit" else sent.values[:, None]
        made = answered(
            self.method,
            self.samples.time_s[near],
            open_s,
            self.samples.spread_s,
            steps_s,
            values,
            length,
            self.known.period_s,
        )
        if self.method == "limit":
            return np.stack([1.0 - made[:, 0], made[:, 0]], axis=1)
        return made

    def solve(self, basis: Floats) -> tuple[Floats, Floats]:
        """The levels for a basis, and what is left in standard deviations; clipped samples count one way."""
        samples = self.samples
        weights = 1.0 / samples.sigma
        hidden = samples.clipped
        # At first as if clipped samples were not there; then those count that the light falls short of.
        use = np.where(hidden, 0.0, weights)
        levels = _least(basis, samples.level, use)
        for _ in range(CENSOR_ROUNDS):
            left = (basis @ levels - samples.level) * weights
            softer = weights / np.sqrt(np.maximum(np.abs(left) / ROBUST_AT, 1.0))
            softer[hidden & (left > 0)] = 0.0
            if float(np.abs(softer - use).max()) < 0.05 * float(weights.min()):
                break
            use = softer
            levels = _least(basis, samples.level, use)
        left = (basis @ levels - samples.level) * weights
        left[hidden & (left > 0)] = 0.0
        return levels, left

    def doubts(self, figures_ms: Floats) -> Floats:
        """How far the starts are from what is known of them, in standard deviations, [E] or none."""
        if self.sending.doubt_s is None:
            return np.zeros(0)
        _, _, _, starts, _ = self.told(figures_ms)
        return np.asarray((starts - self.sending.start_s) / self.sending.doubt_s)

    def left(self, figures_ms: Floats) -> Floats:
        """Everything that is squared and summed."""
        _, left = self.solve(self.basis(figures_ms))
        return np.concatenate([left, self.doubts(figures_ms)])

    def slopes(self, figures_ms: Floats) -> Floats:
        """How `left` changes with each figure: by differences at fixed levels, less what levels take up."""
        basis = self.basis(figures_ms)
        levels, left = self.solve(basis)
        return self.slopes_at(figures_ms, basis, levels, left)

    def slopes_at(self, figures_ms: Floats, basis: Floats, levels: Floats, left: Floats) -> Floats:
        """As slopes, where basis, levels and what is left are at hand."""
        count = len(left)
        weights = 1.0 / self.samples.sigma
        weights = np.where(self.samples.clipped & (left == 0.0), 0.0, weights)
        made = basis @ levels
        made_doubts = self.doubts(figures_ms)
        found = np.zeros((count + len(made_doubts), len(figures_ms)))
        events = len(self.sending.start_s)
        shared = len(figures_ms) - events - len(self.spans)
        for n in range(len(figures_ms)):
            moved = figures_ms.copy()
            step = STEP_MS if moved[n] + STEP_MS < self.bounds_ms[1][n] else -STEP_MS
            moved[n] += step
            near = slice(0, count)
            if n >= shared:
                near = self._near(
                    figures_ms, n - shared if n < shared + events else self.spans[n - shared - events]
                )
            change = self.basis(moved, near) @ levels - made[near]
            found[near, n] = change * weights[near] / step
            found[count:, n] = (self.doubts(moved) - made_doubts) / step
        square = basis * weights[:, None]
        inner = square.T @ square
        inner[np.diag_indices(len(inner))] += 1e-10 * max(float(np.trace(inner)), 1e-30)
        found[:count] -= square @ np.linalg.solve(inner, square.T @ found[:count])
        return found

    def _near(self, figures_ms: Floats, event: int) -> slice:
        """The samples that an event's start moves: from its first step until its answer is over."""
        length, open_s, delay, starts, spans = self.told(figures_ms)
        reach = length * (14.0 if self.method == "lag" else 2.0) + self.known.period_s + length
        first = starts[event] + delay - open_s - self.samples.spread_s - 1e-3
        last = starts[event] + delay + spans[event] + reach + 1e-3
        begin, end = np.searchsorted(self.samples.time_s, [first, last])
        return slice(int(begin), int(end))


def _least(basis: Floats, level: Floats, weights: Floats) -> Floats:
    square = basis * weights[:, None]
    left = square.T @ square
    left[np.diag_indices(len(left))] += 1e-10 * max(float(np.trace(left)), 1e-30)
    return np.asarray(np.linalg.solve(left, square.T @ (level * weights)))


def fit(search: Search, first_ms: Floats, tries: int = 40) -> Fit:
    """Give the model's best fit from a first guess, by damped Gauss-Newton steps within the bounds.

    Robust: samples far off count as in the loss soft_l1, 2 f^2 (sqrt(1 + (r / f)^2) - 1), with f 4
    standard deviations. scipy.optimize.least_squares finds the same minimum (the tests compare them), but
    takes an SVD of all samples at each step.
    """
    figures = first_ms
    low, high = search.bounds_ms
    basis = search.basis(figures)
    levels, left = search.solve(basis)
    everything = np.concatenate([left, search.doubts(figures)])
    deviance = deviance_of(everything)
    damping = 1e-3
    for _ in range(tries if len(figures) else 0):
        slopes = search.slopes_at(figures, basis, levels, left)
        soft = 1.0 / np.sqrt(1.0 + (everything / ROBUST_AT) ** 2)
        square = slopes.T @ (slopes * soft[:, None])
        down = slopes.T @ (soft * everything)
        scale = np.maximum(np.diag(square), 1e-12)
        # A figure at its bound that would go beyond stays there.
        stuck = ((figures <= low + 1e-6) & (down > 0)) | ((figures >= high - 1e-6) & (down < 0))
        moving = np.flatnonzero(~stuck)
        gained = 0.0
        while damping < 1e8 and len(moving):
            damped = square[np.ix_(moving, moving)] + damping * np.diag(scale[moving])
            step = np.zeros(len(figures))
            step[moving] = -np.linalg.solve(damped, down[moving])
            trial = np.clip(figures + step, low + 1e-9, high - 1e-9)
            trial_basis = search.basis(trial)
            trial_levels, trial_left = search.solve(trial_basis)
            trial_all = np.concatenate([trial_left, search.doubts(trial)])
            trial_deviance = deviance_of(trial_all)
            if trial_deviance < deviance:
                gained = deviance - trial_deviance
                figures, basis, levels, left = trial, trial_basis, trial_levels, trial_left
                everything, deviance = trial_all, trial_deviance
                damping = max(damping / 10.0, 1e-9)
                break
            damping *= 10.0
            if float(np.abs(step).max()) < LEAST_STEP_MS:
                damping = 1e9
        if gained < CLOSE_ENOUGH * max(deviance / len(left), 1.0) or damping >= 1e8:
            break
    length, open_s, delay, starts, spans = search.told(figures)
    return Fit(
        search.method,
        length,
        open_s,
        delay if search.sending.timed else None,
        starts,
        spans,
        levels,
        deviance,
        len(figures) + basis.shape[1],
        basis @ levels,
        left,
    )


def deviance_of(left: Floats) -> float:
    """Twice the robust cost of what is left, in standard deviations (soft_l1, as scipy counts it)."""
    share = (left / ROBUST_AT) ** 2
    return float(np.sum(2.0 * (np.sqrt(1.0 + share) - 1.0)) * ROBUST_AT**2)


def at_length(search: Search, best: Fit, length_s: float, tries: int = 10) -> Fit:
    """Give the best fit with the length held, from a fit nearby."""
    held = Search(search.method, search.samples, search.sending, replace(search.known, length_s=length_s))
    shift = _lead(search.method, best.length_s) - _lead(search.method, length_s)
    timed = search.sending.timed
    starts = best.start_s if timed else best.start_s + shift
    delay = (best.delay_s or 0.0) + (shift if timed else 0.0)
    first = held.first(length_s, best.open_s, starts, delay)
    return fit(held, first, tries)


def _lead(method: Method, length_s: float) -> float:
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
    lead = _lead(search.method, length_s)
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
    begin = half_s - lead
    samples = search.samples
    shape_s = period_s if search.method == "interpolate" else length_s
    kind: Method = "average" if search.method not in ("lag", "none") else search.method
    for e, at in enumerate(begin):
        if search.sending.span_s[e] > 0.0 or shape_s > 3.0 * frame_s:
            continue
        tries = at + np.linspace(-1.0, 1.0, 25) * frame_s
        i, j = np.searchsorted(samples.time_s, [at - 3 * frame_s - open_s, at + 4 * frame_s + 3 * shape_s])
        if j - i < 2:
            continue
        seen = unit_answer(kind, samples.time_s[i:j, None] - tries[None, :], open_s, shape_s)
        left = before[e] + (after[e] - before[e]) * seen - samples.level[i:j, None]
        left[samples.clipped[i:j, None] & (left > 0)] = 0.0
        cost = ((left / samples.sigma[i:j, None]) ** 2).sum(axis=0)
        begin = begin.copy()
        # Several may be as good: the middle one of them.
        good = np.flatnonzero(cost <= cost.min() + 0.5)
        begin[e] = tries[good[len(good) // 2]]
    return search.first(length_s, open_s, begin, 0.0)
