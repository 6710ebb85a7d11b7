"""Units that must move together: how far apart their delays are under each joint choice."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from modebook.documents.shots import Cue
from modebook.shots.judging import NEAR

Spans = NDArray[np.float64]
"""Least and greatest delay in s of each choice, [choices, 2]."""


@dataclass(frozen=True)
class Tie:
    """A cue that several groups must follow together; `axes` are rising places among all axes."""

    cue: Cue
    units: tuple[str, ...]
    """All that must move together, those without a choice among them."""
    axes: tuple[int, ...]
    spans: tuple[Spans, ...]
    limit_s: float
    known: bool = True
    """Whether the delay of all of them is known."""

    def apart_s(self, now: Sequence[int]) -> float:
        """How far apart they are, at most, with these choices (one for each of `axes`)."""
        low = min(float(spans[choice, 0]) for spans, choice in zip(self.spans, now, strict=True))
        high = max(float(spans[choice, 1]) for spans, choice in zip(self.spans, now, strict=True))
        return high - low

    def table(self) -> NDArray[np.bool_]:
        """Whether they are too far apart, over the joint choices of `axes`."""
        shape = tuple(len(spans) for spans in self.spans)
        low, high = np.full(shape, np.inf), np.full(shape, -np.inf)
        for place, spans in enumerate(self.spans):
            lie = [-1 if place == other else 1 for other in range(len(shape))]
            low = np.minimum(low, spans[:, 0].reshape(lie))
            high = np.maximum(high, spans[:, 1].reshape(lie))
        return np.asarray(high - low > self.limit_s * NEAR)

    def pairs(self) -> dict[tuple[int, int], NDArray[np.bool_]]:
        """The same as pairs: a joint choice is too far apart if a pair of it, or one alone, is."""
        found: dict[tuple[int, int], NDArray[np.bool_]] = {}
        for one in range(len(self.axes)):
            for other in range(one + 1, len(self.axes)):
                a, b = self.spans[one], self.spans[other]
                high = np.maximum(a[:, None, 1], b[None, :, 1])
                low = np.minimum(a[:, None, 0], b[None, :, 0])
                found[self.axes[one], self.axes[other]] = np.asarray(high - low > self.limit_s * NEAR)
        return found
