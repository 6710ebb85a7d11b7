"""Robust least squares of one smoothing model to a trace: times and length searched, levels solved for."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

import numpy as np
from numpy.typing import NDArray

from modebook.measure.models import LINEAR_METHODS, Method, answered
from modebook.measure.sending import Sending
from modebook.measure.trace import Floats

MS = 1e-3  # searched figures are in milliseconds
STEP_MS = 0.02  # for the slopes of the residuals
ROBUST_AT = 4.0  # standard deviations: beyond them a sample counts less and less
LONGEST_S = 8.0
DELAY_MOST_S = 1.0
DELAY_EARLY_S = 0.003
CENSOR_ROUNDS = 3


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
            method != "none"
            and known.length_s is None
            and not (method == "interpolate" and not timed)
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

    def basis(self, figures_ms: Floats) -> Floats:
        """The light that each level adds, [N, P]."""
        length, open_s, delay, starts, spans = self.told(figures_ms)
        steps_s = self.sending.steps_s(starts, spans) + delay
        if (np.diff(steps_s) < 0).any():
            steps_s = np.maximum.accumulate(steps_s)
        sent = self.sending
        values = sent.weights if self.method != "limit" else sent.values[:, None]
        made = answered(
            self.method,
            self.samples.time_s,
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
        use = weights.copy()
        hidden = samples.clipped
        levels = _least(basis, samples.level, use)
        for _ in range(CENSOR_ROUNDS):
            left = (basis @ levels - samples.level) * weights
            beyond = hidden & (left > 0)
            softer = weights / np.sqrt(np.maximum(np.abs(left) / ROBUST_AT, 1.0))
            softer[beyond] = 0.0
            if np.allclose(softer, use, rtol=0.05, atol=1e-9):
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
        count = len(left)
        weights = 1.0 / self.samples.sigma
        weights = np.where(self.samples.clipped & (left == 0.0), 0.0, weights)
        made = (basis @ levels) * weights
        made_doubts = self.doubts(figures_ms)
        found = np.empty((count + len(made_doubts), len(figures_ms)))
        for n in range(len(figures_ms)):
            moved = figures_ms.copy()
            step = STEP_MS if moved[n] + STEP_MS < self.bounds_ms[1][n] else -STEP_MS
            moved[n] += step
            found[:count, n] = ((self.basis(moved) @ levels) * weights - made) / step
            found[count:, n] = (self.doubts(moved) - made_doubts) / step
        shape, _ = np.linalg.qr(basis * weights[:, None])
        found[:count] -= shape @ (shape.T @ found[:count])
        return found


def _least(basis: Floats, level: Floats, weights: Floats) -> Floats:
    square = basis * weights[:, None]
    left = square.T @ square
    left[np.diag_indices(len(left))] += 1e-10 * max(float(np.trace(left)), 1e-30)
    return np.asarray(np.linalg.solve(left, square.T @ (level * weights)))


def fit(search: Search, first_ms: Floats, tries: int = 60) -> Fit:
    """Give the model's best fit from a first guess. Robust: samples far off count as soft_l1 does."""
    from scipy.optimize import least_squares

    if len(first_ms):
        found = least_squares(
            search.left,
            first_ms,
            jac=search.slopes,
            bounds=search.bounds_ms,
            x_scale=1.0,
            loss="soft_l1",
            f_scale=ROBUST_AT,
            xtol=1e-7,
            ftol=1e-7,
            gtol=1e-9,
            max_nfev=tries,
        )
        figures = np.asarray(found.x)
    else:
        figures = first_ms
    basis = search.basis(figures)
    levels, left = search.solve(basis)
    everything = np.concatenate([left, search.doubts(figures)])
    length, open_s, delay, starts, spans = search.told(figures)
    return Fit(
        search.method,
        length,
        open_s,
        delay if search.sending.timed else None,
        starts,
        spans,
        levels,
        deviance_of(everything),
        len(figures) + basis.shape[1],
        basis @ levels,
        left,
    )


def deviance_of(left: Floats) -> float:
    """Twice the robust cost of what is left, in standard deviations (soft_l1, as scipy counts it)."""
    share = (left / ROBUST_AT) ** 2
    return float(np.sum(2.0 * (np.sqrt(1.0 + share) - 1.0)) * ROBUST_AT**2)


def at_length(search: Search, best: Fit, length_s: float, tries: int = 25) -> Fit:
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


def first_guess(search: Search, length_s: float, half_s: Floats, open_s: float) -> Floats:
    """Where to begin: each event half done when it was seen to be, for this length."""
    lead = _lead(search.method, length_s)
    if search.method == "interpolate":
        lead = 0.5 * search.known.period_s + (
            max(length_s - search.known.period_s, 0.0) if search.free_length else 0.0
        )
    if search.sending.timed:
        starts = search.sending.start_s
        offset = float(np.median(half_s - starts)) - lead if len(half_s) == len(starts) else 0.0
        return search.first(length_s, open_s, starts, max(offset, 0.0))
    return search.first(length_s, open_s, half_s - lead, 0.0)


__all__ = [
    "LINEAR_METHODS",
    "Fit",
    "Known",
    "Samples",
    "Search",
    "at_length",
    "deviance_of",
    "first_guess",
    "fit",
]
