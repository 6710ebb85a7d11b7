"""A universe as a graph: every way to fill its 512 slots is a path from the first slot to the end.

A path's steps keep a unit where it sits, place a moved block, leave a hole for a spare, or skip free slots
up to the next place where something could be kept. Placed blocks are pushed left against what comes before
them, which loses no arrangement that matters.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from modebook.documents.address import SLOTS_PER_UNIVERSE

SKIP, HOLE = -1, -2
"""Labels of steps that fill nothing; labels from 0 on are what is kept or placed."""

END = SLOTS_PER_UNIVERSE
_LEVEL = END + 1
_NEVER = -1e30


@dataclass(frozen=True, slots=True)
class Keep:
    """A block that may stay where it is: its label, its first slot from 0, and its footprint."""

    label: int
    start: int
    footprint: int


@dataclass(frozen=True, slots=True)
class Place:
    """A size of moved block that may be placed anywhere: its label and its footprint."""

    label: int
    footprint: int


@dataclass(slots=True)
class Graph:
    """The steps of one universe, by where they begin; a node is a slot from 0, plus 513 after the hole."""

    tails: list[int] = field(default_factory=list)
    heads: list[int] = field(default_factory=list)
    labels: list[int] = field(default_factory=list)
    last: int = END
    """The node at which every path ends."""

    def through(self, gains: Mapping[int, float]) -> list[float]:
        """For each step the greatest gain of any path that takes it."""
        ahead, behind = [_NEVER] * (self.last + 1), [_NEVER] * (self.last + 1)
        ahead[0] = behind[self.last] = 0.0
        steps = list(
            zip(self.tails, self.heads, (gains.get(label, 0.0) for label in self.labels), strict=True)
        )
        for tail, head, gain in steps:
            ahead[head] = max(ahead[head], ahead[tail] + gain)
        for tail, head, gain in reversed(steps):
            behind[tail] = max(behind[tail], behind[head] + gain)
        return [ahead[tail] + gain + behind[head] for tail, head, gain in steps]

    def filled(self, path: Sequence[int]) -> list[tuple[int, int]]:
        """What a path keeps and places: (first slot from 0, label)."""
        return [(self.tails[s] % _LEVEL, self.labels[s]) for s in path if self.labels[s] >= 0]


def graph_of(
    keeps: Sequence[Keep], places: Sequence[Place], fixed: Sequence[tuple[int, int]], hole: int
) -> Graph:
    """The graph of a universe. `fixed`: slots taken, (first, end) from 0; `hole`: slots to leave in a row."""
    taken = merged(fixed)
    begins = [first for first, _ in taken]
    by_start: dict[int, list[Keep]] = {}
    for keep in keeps:
        if _limit(keep.start, taken, begins) >= keep.start + keep.footprint:
            by_start.setdefault(keep.start, []).append(keep)
    anchors = sorted({*by_start, *begins, END})
    over = dict(taken)
    graph = Graph(last=END + (_LEVEL if hole else 0))
    reached = bytearray(graph.last + 1)
    reached[0] = 1

    def step(tail: int, head: int, label: int) -> None:
        graph.tails.append(tail)
        graph.heads.append(head)
        graph.labels.append(label)
        reached[head] = 1

    # A hole leads to a node further on, so that going through levels and slots in order is enough.
    for node in range(graph.last + 1):
        level, slot = divmod(node, _LEVEL)
        if not reached[node] or slot == END:
            continue
        base = level * _LEVEL
        if slot in over:
            step(node, base + over[slot], SKIP)
            continue
        step(node, base + anchors[bisect_right(anchors, slot)], SKIP)
        limit = _limit(slot, taken, begins)
        for keep in by_start.get(slot, ()):
            step(node, base + slot + keep.footprint, keep.label)
        for place in places:
            if slot + place.footprint <= limit:
                step(node, base + slot + place.footprint, place.label)
        if hole and not level and slot + hole <= limit:
            step(node, _LEVEL + slot + hole, HOLE)
    return graph


def _limit(slot: int, taken: Sequence[tuple[int, int]], begins: Sequence[int]) -> int:
    """Up to where slots from `slot` on are free."""
    after = bisect_right(begins, slot)
    if after and taken[after - 1][1] > slot:
        return slot
    return begins[after] if after < len(begins) else END


def merged(fixed: Sequence[tuple[int, int]]) -> list[tuple[int, int]]:
    """Stretches in order, those that touch or overlap drawn together."""
    found: list[tuple[int, int]] = []
    for first, end in sorted(fixed):
        if found and first <= found[-1][1]:
            found[-1] = (found[-1][0], max(found[-1][1], end))
        else:
            found.append((first, end))
    return found
