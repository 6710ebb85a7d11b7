"""The best way to fill one universe under given gains: kept blocks as a path, moved ones in the gaps between.

From each block that may stay, the path leads to any that may stay after it; the gap between the two is worth
what the moved blocks are that fit into it, and of these only their sizes count.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from modebook.documents.address import SLOTS_PER_UNIVERSE
from modebook.rig.repatch.graph import Keep, Place, merged

END = SLOTS_PER_UNIVERSE
NEVER = -1e30
_LEAST_GAIN = 1e-9

Numbers = np.ndarray[Any, np.dtype[np.float64]]


@dataclass(frozen=True, slots=True)
class Gaps:
    """What a gap of each length is worth at best, and the place that is taken last to reach it."""

    worth: Numbers
    """By length, 0 to 512."""
    last: tuple[Place | None, ...]
    """None where the gap is worth no more than one that is a slot shorter."""

    def content(self, length: int) -> list[Place]:
        """The blocks that make a gap worth the most."""
        found: list[Place] = []
        while length:
            place = self.last[length]
            if place is not None:
                found.append(place)
            length -= place.footprint if place is not None else 1
        return found


def gaps_of(gains: Sequence[tuple[Place, float]]) -> Gaps:
    """The worth of gaps, from what each place gains; a place may be taken as often as it fits."""
    useful = [(place, place.footprint, gain) for place, gain in gains if gain > _LEAST_GAIN]
    worth = [0.0] * (END + 1)
    last: list[Place | None] = [None] * (END + 1)
    for length in range(1, END + 1):
        best, by = worth[length - 1], None
        for place, footprint, gain in useful:
            if footprint <= length and worth[length - footprint] + gain > best + _LEAST_GAIN:
                best, by = worth[length - footprint] + gain, place
        worth[length], last[length] = best, by
    return Gaps(np.array(worth), tuple(last))


class Filling:
    """One universe: what may stay in it, what is fixed, and the slots to leave in a row."""

    def __init__(self, keeps: Sequence[Keep], fixed: Sequence[tuple[int, int]], hole: int) -> None:
        self.hole = hole
        taken = merged(fixed)
        nodes = [(first, end, -1) for first, end in taken]
        for keep in keeps:
            end = keep.start + keep.footprint
            if end <= END and all(end <= first or keep.start >= last for first, last in taken):
                nodes.append((keep.start, end, keep.label))
        nodes.sort()
        nodes.append((END, END, -1))
        self.starts = [0, *(start for start, _, _ in nodes)]
        self.labels = [-1, *(label for _, _, label in nodes)]
        ends = np.array([0, *(end for _, end, _ in nodes)])
        self.ends = ends
        self.before: list[Any] = [np.zeros(0, dtype=int)]
        self.gaps: list[Any] = [np.zeros(0, dtype=int)]
        for at in range(1, len(self.starts)):
            start = self.starts[at]
            # What is fixed cannot be stepped over.
            least = max((end for first, end in taken if first < start and end <= start), default=0)
            before = np.array([i for i in range(at) if least <= ends[i] <= start], dtype=int)
            self.before.append(before)
            self.gaps.append(start - ends[before])

    def best(self, gains: Numbers, gaps: Gaps) -> tuple[float, list[tuple[int, int]]] | None:
        """The greatest gain and what it fills, as (first slot from 0, label); None if the hole does not fit.

        gains: what each node gains, in the order of `labels`.
        """
        levels = 2 if self.hole else 1
        value = np.full((levels, len(self.starts)), NEVER)
        value[0, 0] = 0.0
        came = [[(0, 0, False)] * len(self.starts) for _ in range(levels)]
        with_hole = np.full(END + 1, NEVER)
        if self.hole:
            with_hole[self.hole :] = gaps.worth[: END + 1 - self.hole]
        for at in range(1, len(self.starts)):
            before, lengths = self.before[at], self.gaps[at]
            if not len(before):
                continue
            worth = gaps.worth[lengths]
            for level in range(levels):
                reached = value[level, before] + worth
                best = int(reached.argmax())
                top, origin = reached[best], (level, int(before[best]), False)
                if level:
                    reached = value[0, before] + with_hole[lengths]
                    best = int(reached.argmax())
                    if reached[best] > top:
                        top, origin = reached[best], (0, int(before[best]), True)
                value[level, at] = top + gains[at]
                came[level][at] = origin
        total = float(value[levels - 1, -1])
        if total <= NEVER / 2:
            return None
        return total, self._filled(came, levels - 1, gaps)

    def _filled(
        self, came: Sequence[Sequence[tuple[int, int, bool]]], level: int, gaps: Gaps
    ) -> list[tuple[int, int]]:
        found: list[tuple[int, int]] = []
        at = len(self.starts) - 1
        while at:
            if self.labels[at] >= 0:
                found.append((self.starts[at], self.labels[at]))
            level, origin, holed = came[level][at]
            first = int(self.ends[origin])
            for place in gaps.content(self.starts[at] - first - (self.hole if holed else 0)):
                found.append((first, place.label))
                first += place.footprint
            at = origin
        return sorted(found)
