"""Robust least squares of one smoothing model to a trace: times and length searched, levels solved for."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from modebook.measure.models import Method, answered
from modebook.measure.sending import RAMP_SPARE, Sending
from modebook.measure.trace import Floats

MS = 1e-3  # searched figures are in milliseconds
STEP_MS = 0.02  # for the slopes of the residuals
ROBUST_AT = 4.0  # standard deviations: beyond them a sample counts less and less
LONGEST_S = 8.0
ASTRAY_S = 1.5  # no step comes farther from where it was seen to
SPAN_TIMES, SPAN_MORE_S = 3.0, 0.3  # nor does a staircase or a fade last so many times what it was seen to
DELAY_MOST_S = 1.0
DELAY_EARLY_S = 0.003
EDGE_S = 5e-4  # how sharply two frames bracket a time: their time stamps are about that good
CENSOR_ROUNDS = 4
LEAST_STEP_MS = 1e-4
CLOSE_ENOUGH = 0.02  # of deviance per sample: what another step would gain
OUT = 20.0  # times the best one's deviance: a method that bad is out whatever the steps
LOOKS = 3  # steps before a fit is given up


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
    """What is not searched. None: it is. delay_s: what the link waits, for interpolate the whole of it.

    top: about what the highest level is, and the doubt, where it is clipped; lengths_s: from and to what
    length is searched; made_s: the desk's packet time, where a gateway sends at a rate of its own.
    """

    period_s: float
    open_s: float | None
    frame_s: float
    delay_s: float = 0.0
    length_s: float | None = None
    top: tuple[float, float] | None = None
    lengths_s: tuple[float, float] = (0.0, LONGEST_S)
    made_s: float = 0.0


@dataclass(frozen=True, slots=True)
class Fit:
    """One model's best figures; deviance is twice the robust cost, in units of the noise's variance."""

    method: Method
    length_s: float
    open_s: float
    delay_s: float | None
    start_s: Floats
    span_s: Floats
    lead_s: Floats
    levels: Floats
    deviance: float
    searched: int
    modeled: Floats
    left: Floats = field(repr=False)
    """What is left, in standard deviations, [N]."""
    others: tuple[tuple[float, float], ...] = ()
    """Length (s) and deviance of this model with the steps of staircases found otherwise."""


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
        self.spans = np.flatnonzero(sending.free_span)
        self.ramps = sending.ramps
        lows: list[float] = []
        highs: list[float] = []
        if self.free_length:
            shortest_s, longest_s = known.lengths_s
            # Interpolation waits for the next packet.
            lows.append(max(known.period_s if method == "interpolate" else 0.0, shortest_s))
            highs.append(max(longest_s, lows[-1]))
        if self.free_open:
            lows.append(0.01 * known.frame_s)
            highs.append(known.frame_s)
        if self.free_delay:
            lows.append(-DELAY_EARLY_S)
            highs.append(DELAY_MOST_S)
        period_s = known.period_s
        longest = [min(SPAN_TIMES * float(sending.span_s[e]) + SPAN_MORE_S, LONGEST_S) for e in self.spans]
        lows += (
            [float(at) - ASTRAY_S for at in sending.start_s]
            + [0.0] * len(self.spans)
            + [-2.0 * period_s] * len(self.ramps)
        )
        highs += (
            [float(at) + ASTRAY_S for at in sending.start_s] + longest + [2.0 * period_s] * len(self.ramps)
        )
        self.bounds_ms = (np.array(lows) / MS, np.array(highs) / MS)
        # Where the top is clipped a longer change to a higher top looks the same.
        self.top = known.top if samples.clipped.any() else None

    def first(
        self, length_s: float, open_s: float, start_s: Floats, delay_s: float, near: Fit | None = None
    ) -> Floats:
        """The searched figures, in ms, to begin with; near: a fit whose spans are taken over."""
        span_s = self.sending.span_s if near is None else near.span_s
        lead_s = self.sending.lead_s if near is None else near.lead_s
        figures: list[float] = []
        if self.free_length:
            figures.append(length_s)
        if self.free_open:
            figures.append(open_s)
        if self.free_delay:
            figures.append(delay_s)
        figures += [float(at) for at in start_s]
        figures += [float(span_s[e]) for e in self.spans]
        if lead_s is not None:
            figures += [float(lead_s[e]) for e in self.ramps]
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
            span_s[self.spans] = values[at + events : at + events + len(self.spans)]
        return length, open_s, delay, starts, span_s

    def leads(self, figures_ms: Floats) -> Floats:
        """How far along its line each fade's first packet is, in s, [E]."""
        lead_s = np.zeros(len(self.sending.start_s))
        if len(self.ramps):
            lead_s[self.ramps] = figures_ms[len(figures_ms) - len(self.ramps) :] * MS
        return lead_s

    def basis(self, figures_ms: Floats, near: slice = slice(None)) -> Floats:
        """The light that each level adds, [N, P]; near: for these samples only."""
        length, open_s, delay, starts, spans = self.told(figures_ms)
        steps_s = self.sending.steps_s(starts, spans) + delay
        if (np.diff(steps_s) < 0).any():
            steps_s = np.maximum.accumulate(steps_s)
        weights, shares = self.sending.heights(spans, self.leads(figures_ms))
        values = weights if self.method != "limit" else shares[:, None]
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
        levels = _least(basis, samples.level, use, self.top)
        for _ in range(CENSOR_ROUNDS):
            left = (basis @ levels - samples.level) * weights
            softer = weights / np.sqrt(np.maximum(np.abs(left) / ROBUST_AT, 1.0))
            softer[hidden & (left > 0)] = 0.0
            if float(np.abs(softer - use).max()) < 0.05 * float(weights.min()):
                break
            use = softer
            levels = _least(basis, samples.level, use, self.top)
        left = (basis @ levels - samples.level) * weights
        left[hidden & (left > 0)] = 0.0
        return levels, left

    def doubts(self, figures_ms: Floats) -> Floats:
        """How far the starts are from what is known of them, in standard deviations, [E], [2 E] or none.

        Anywhere between two frames is as good for one start, but all of them at the same edge is not likely.
        """
        if self.sending.doubt_s is None:
            return np.zeros(0)
        _, _, _, starts, _ = self.told(figures_ms)
        off_s = starts - self.sending.start_s
        known = off_s / self.sending.doubt_s
        slack_s = self.sending.slack_s
        if slack_s is None or not slack_s.any():
            return np.asarray(known)
        beyond_s = np.sign(off_s) * np.maximum(np.abs(off_s) - slack_s, 0.0)
        return np.concatenate([known, np.where(slack_s > 0.0, beyond_s / EDGE_S, 0.0)])

    def over(self, levels: Floats) -> Floats:
        """How far a clipped top is from what it is about, in standard deviations, [1] or none."""
        return np.zeros(0) if self.top is None else np.array([(levels[-1] - self.top[0]) / self.top[1]])

    def left(self, figures_ms: Floats) -> Floats:
        """Everything that is squared and summed."""
        levels, left = self.solve(self.basis(figures_ms))
        return np.concatenate([left, self.doubts(figures_ms), self.over(levels)])

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
        # At the best levels a clipped top's own doubt has no slope.
        found = np.zeros((count + len(made_doubts) + len(self.over(levels)), len(figures_ms)))
        events = len(self.sending.start_s)
        own = np.concatenate([np.arange(events), self.spans, self.ramps])  # the event of each figure
        shared = len(figures_ms) - len(own)
        for n in range(len(figures_ms)):
            moved = figures_ms.copy()
            step = STEP_MS if moved[n] + STEP_MS < self.bounds_ms[1][n] else -STEP_MS
            moved[n] += step
            near = slice(0, count)
            if n >= shared:
                near = self._near(figures_ms, int(own[n - shared]))
            change = self.basis(moved, near) @ levels - made[near]
            found[near, n] = change * weights[near] / step
            found[count : count + len(made_doubts), n] = (self.doubts(moved) - made_doubts) / step
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
        spare = RAMP_SPARE * self.known.period_s if event in self.ramps else 0.0
        last = starts[event] + delay + spans[event] + spare + reach + 1e-3
        begin, end = np.searchsorted(self.samples.time_s, [first, last])
        return slice(int(begin), int(end))


def _least(basis: Floats, level: Floats, weights: Floats, top: tuple[float, float] | None) -> Floats:
    """Levels by weighted least squares; top: about what the last is, and the doubt, where it is not seen."""
    square = basis * weights[:, None]
    left, right = square.T @ square, square.T @ (level * weights)
    left[np.diag_indices(len(left))] += 1e-10 * max(float(np.trace(left)), 1e-30)
    if top is not None:
        left[-1, -1] += 1.0 / top[1] ** 2
        right[-1] += top[0] / top[1] ** 2
    return np.asarray(np.linalg.solve(left, right))


def out_of(rival: float, count: int) -> float:
    """The deviance from which a method is out, beside the least deviance known, of so many samples."""
    return OUT * (rival + count)


def fit(search: Search, first_ms: Floats, tries: int = 40, rival: float = np.inf) -> Fit:
    """Give the model's best fit from a first guess, by damped Gauss-Newton steps within the bounds.

    rival: the deviance of a better model: where the steps gain too little to come near it, they end early.

    Robust: samples far off count as in the loss soft_l1, 2 f^2 (sqrt(1 + (r / f)^2) - 1), with f 4
    standard deviations. scipy.optimize.least_squares finds the same minimum (the tests compare them), but
    takes an SVD of all samples at each step.
    """
    figures = first_ms
    low, high = search.bounds_ms
    basis = search.basis(figures)
    levels, left = search.solve(basis)
    everything = np.concatenate([left, search.doubts(figures), search.over(levels)])
    deviance = deviance_of(everything)
    damping = 1e-3
    out = out_of(rival, len(left))
    for turn in range(tries if len(figures) else 0):
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
            trial_all = np.concatenate([trial_left, search.doubts(trial), search.over(trial_levels)])
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
        if turn >= LOOKS and gained * (tries - turn) < deviance - out:
            break
    length, open_s, delay, starts, spans = search.told(figures)
    return Fit(
        search.method,
        length,
        open_s,
        delay if search.sending.timed else None,
        starts,
        spans,
        search.leads(figures),
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
