"""One wide change alone: the staircase or the fade that a method explains it best by."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from modebook.measure.fit import Fit, Known, Samples, Search, deviance_of, fit
from modebook.measure.guesses import first_guess, half_way_s
from modebook.measure.models import Method
from modebook.measure.sending import LOOSE_STEPS, Sending, loosened, with_ramp, with_stairs
from modebook.measure.trace import Floats

STAIRS = (2, 3, 4, 5, 6)
FEW_TRIES = 10
RAMP_TRIES = 12
GATEWAY_PHASES, GATEWAY_ROUNDS = 8, 4  # of the desk's packets within a gateway's, then ever finer
GATEWAY_GAIN = 0.8  # of the deviance: what a first look must leave at most
PHASES = (-0.4, -0.2, 0.0, 0.2, 0.4)  # of a packet
SHIFTS = (-0.5, -0.25, -0.1, 0.0, 0.1, 0.25, 0.5)  # of the length
SPANS = (0.85, 1.0, 1.2)
MORE_SPANS = (1.4, 1.7)  # where the end is hidden by clipping
TOPS = (0.85, 1.0, 1.2)  # times what a clipped top is taken for
PER_STEP = 2.0  # of deviance: what another step must gain
GOOD = 1.4  # deviance per sample at which no other count of steps is tried
FAR_TOP = 5.0  # times the doubt about a clipped top: farther from it a count of steps is out


@dataclass(frozen=True, slots=True)
class Way:
    """A change in so many steps: when each comes (the first one's time alone for a fade), s.

    lasts_s: from the first to the last, or how long a fade's line is; along_s: how far along it its first
    packet is; phase_s: when one of the desk's packets came, behind a gateway.
    """

    steps: int
    times_s: Floats
    lasts_s: float
    along_s: float
    phase_s: float
    deviance: float

    @property
    def ramp(self) -> bool:
        """Whether it is a fade."""
        return self.steps > LOOSE_STEPS


def best_way(
    method: Method,
    part: Samples,
    alone: Sending,
    held: Known,
    known: Known,
    span_s: float,
    half_s: float,
    levels: tuple[Floats, Floats],
    length_s: float,
    open_s: float,
) -> Way:
    """Give how a method explains one change best. part, alone: its samples and its one step.

    held: what is known once the narrow changes are; span_s: how long the change lasts beyond a snap; half_s:
    when it is half done; levels: before and after it, [1] each; length_s: to begin with.
    """
    before, after = levels
    chosen: Way | None = None
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
        lead = np.array([half_s - (0.5 * span_s if steps > 1 else 0.0)])
        first = first_guess(one, length_s, lead, open_s, before, after)
        first = _moved(one, first, known.period_s, length_s, ramp)
        found = fit(one, first, RAMP_TRIES if ramp else FEW_TRIES)
        phase_s = 0.0
        if ramp and known.made_s > 0.0:
            found, phase_s = _by_gateway(one, found)
        spread = found.span_s
        times_s, lead_s = found.start_s, found.lead_s
        if 2 <= steps <= LOOSE_STEPS:
            found = _each_step(one, found, _crossings(one, before[0], after[0], steps, open_s))
            spread = np.array([np.ptp(found.start_s)])
            times_s, lead_s = np.maximum.accumulate(found.start_s), found.lead_s
        far = known.top is not None and abs(found.levels[-1] - known.top[0]) > FAR_TOP * known.top[1]
        if chosen is None or (found.deviance < lowest - PER_STEP * steps and not far):
            lowest = found.deviance if not far else np.inf
            chosen = Way(steps, times_s, float(spread[0]), float(lead_s[0]), phase_s, found.deviance)
    assert chosen is not None
    return chosen


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
