"""Repeats of a measurement as one answer: methods by all the evidence, lengths weighed by their intervals."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from modebook.measure.answer import Answer
from modebook.measure.judgement import WORSE, Judgement
from modebook.measure.models import Method

Z_95 = 1.96  # of a normal distribution, two-sided
SPREAD_MOST = 9.0  # mean square of repeats' differences from their mean, in their own standard deviations


def combine(answers: Sequence[Answer]) -> Judgement:
    """Give what repeats tell together; each was filmed of the same choice at the same packet rate.

    A method is told if some repeats tell it and none contradicts it: evidence against a model adds up over
    the repeats. The length is the mean weighed by the intervals; where repeats differ by more than their
    intervals hold, the interval is widened by as much, and far beyond that nothing is told.
    """
    if len(answers) == 1:
        return answers[0].judgement
    against: dict[Method, float] = {}
    for answer in answers:
        for name, worse in answer.worse.items():
            against[name] = against.get(name, 0.0) + worse
    told = {answer.judgement.method for answer in answers if answer.judgement.can_tell}
    if len(told) > 1:
        names = " and ".join(sorted(str(name) for name in told))
        return Judgement(
            False, None, None, None, f"the repeats contradict each other: {names}", ("check the choice",)
        )
    if told == {"none"}:
        judged = [answer.judgement for answer in answers if answer.judgement.can_tell]
        most = min(one.interval_packets[1] for one in judged if one.interval_packets)
        return Judgement(True, "none", 0.0, (0.0, most), f"any smoothing is shorter than {most:.2f} packets")
    method: Method | None = next(iter(told)) if told else None
    if method is None:
        left = [name for name, worse in against.items() if worse < WORSE + min(against.values())]
        method = left[0] if len(left) == 1 and left[0] not in ("none", "interpolate") else None
    measured = [
        answer.judgement
        for answer in answers
        if answer.judgement.length_packets is not None
        and answer.judgement.interval_packets is not None
        and (method is None or answer.judgement.method in (method, None))
    ]
    if not measured:
        return replace(answers[0].judgement, can_tell=False)
    lengths = np.array([one.length_packets for one in measured], dtype=np.float64)
    halves = np.array([0.5 * np.ptp(one.interval_packets or (0.0, 0.0)) for one in measured])
    spread = np.maximum(halves / Z_95, 1e-3)
    weights = 1.0 / spread**2
    mean = float(np.average(lengths, weights=weights))
    differ = float(np.sum(weights * (lengths - mean) ** 2)) / max(len(lengths) - 1, 1)
    if differ > SPREAD_MOST and np.ptp(lengths) > 1.0:
        shown = ", ".join(f"{length:.2f}" for length in lengths)
        return Judgement(
            False,
            method,
            None,
            None,
            f"the repeats differ by more than they can: {shown} packets",
            ("check that the choice and the packet rate were the same",),
        )
    half = Z_95 * float(np.sqrt(max(differ, 1.0) / weights.sum()))
    why = f"{len(measured)} repeats agree" + ("" if method else "; the method cannot be told")
    return Judgement(
        method is not None, method, mean, (max(mean - half, 0.0), mean + half), why, answers[0].judgement.help
    )
