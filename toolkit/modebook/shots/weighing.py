"""What each choice costs a group in a setup: cues that it fails, then leaving what would be preferred."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from modebook.documents.policy import Policy
from modebook.shots.plan import Candidate

FINE = 1e-3
"""What a place further from the preferred one costs, so that of equals the nearer is taken."""
LATE = 1.25
"""What a snap that comes late weighs against a fade that is seen to step: of the two, the snap is kept."""
SAME = 1.01
"""Modulation frequencies whose differences between frames are this near to each other are alike."""


def target_packets(candidates: Sequence[Candidate], policy: Policy) -> float | None:
    """The length that a setup's cues would like best: None for the longest, 0 for snaps and pixels.

    What fails a cue never comes first, whatever its length (see ranked).
    """
    intents = {one.cue.intent for one in candidates[0].verdicts}
    if "unseen" in intents:
        return None
    sharp = bool(intents & {"snap", "pixels"}) and not intents & {"smooth", "match"}
    return 0.0 if sharp else policy["shot-preferred-smoothing"].value


def weighed(
    candidates: Sequence[Candidate], units: int, policy: Policy, failing: float
) -> NDArray[np.float64]:
    """What each candidate costs, [candidates]: `failing` for each cue that it fails, less for the rest."""
    order = ranked(candidates, policy)
    leaving = policy["shot-not-preferred"].value
    costs = np.zeros(len(candidates))
    for place, index in enumerate(order):
        one = candidates[index]
        failed = one.violations + (LATE - 1.0) * one.late
        costs[index] = failing * failed + units * ((place > 0) * leaving + FINE * place)
    return costs


def ranked(candidates: Sequence[Candidate], policy: Policy) -> list[int]:
    """The candidates' places, the preferred one first: fewest cues failed, then nearest to what they like."""
    if candidates[0].difference_percent is not None or any(
        one.difference_percent is not None for one in candidates
    ):
        return _by_difference(candidates)
    target = target_packets(candidates, policy)
    known = [one.length_packets for one in candidates if one.length_packets is not None]
    far = max([*known, target or 0.0]) + 1.0 if known else 1.0

    def distance(index: int) -> tuple[float, ...]:
        one = candidates[index]
        if one.length_packets is None:
            # Of unknown length: behind every known one, for nobody can say what it does.
            return (one.violations, one.late, 1, far, index)
        away = -one.length_packets if target is None else abs(one.length_packets - target)
        # Of two as near the shorter: less lateness for the same wish.
        return (one.violations, one.late, 0, away, one.length_packets)

    return sorted(range(len(candidates)), key=distance)


def _by_difference(candidates: Sequence[Candidate]) -> list[int]:
    def key(index: int) -> tuple[float, ...]:
        one = candidates[index]
        return (one.violations, np.inf if one.difference_percent is None else one.difference_percent, index)

    return sorted(range(len(candidates)), key=key)
