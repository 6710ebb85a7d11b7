"""Which methods make exactly the same light of the steps that were sent: no fit tells them apart."""

from __future__ import annotations

import numpy as np

from modebook.measure.fit import Fit, Search
from modebook.measure.models import Method

SPARE_PACKETS = 0.03  # a step that comes so little before the last one's line ends changes nothing to be seen
MOST = 0.1  # of a packet
FULL = 0.98  # of the range: a step as high as that is a full one
CHANGES = 1e-6
DOUBT_TIMES = 3.5  # a time of sending is that many times its standard deviation off at most, if spread evenly


def same_light(best: Fit, search: Search) -> tuple[Method, ...]:
    """Give the methods, the best one among them, that make its light of its steps with its length.

    Where each line ends before the next step comes, an average and a restarted line are one; where all steps
    are full ones, a limit is the same as well.
    """
    if best.method not in ("average", "restart", "limit"):
        return (best.method,)
    sent = search.sending
    _, values = sent.heights(best.span_s, best.lead_s)
    new = np.abs(np.diff(values)) > CHANGES
    heights, steps_s = np.abs(np.diff(values))[new], np.sort(sent.steps_s(best.start_s, best.span_s)[new])
    spare_s = SPARE_PACKETS * search.known.period_s
    if sent.doubt_s is not None:
        doubt_s = DOUBT_TIMES * float(np.median(sent.doubt_s))
        spare_s = max(spare_s, min(doubt_s, MOST * search.known.period_s))
    ended = bool((np.diff(steps_s) >= best.length_s - spare_s).all())
    full = bool((heights >= FULL).all())
    if best.method == "limit":
        return ("average", "limit", "restart") if ended and full else ("limit",)
    if not ended:
        return (best.method,)
    return ("average", "limit", "restart") if full else ("average", "restart")
