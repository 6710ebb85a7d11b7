"""The cheapest path over setups: exact, for axes alone and for axes tied by units that must move together.

One axis is one setting of one group; a stage is one setup. Each stage costs what its choice costs there,
each step what the change costs, and a tie what its joint choice costs. For tied axes the state is their joint
choice; a step's cost is a sum over axes, so the cheapest predecessor is found axis by axis (min-plus), which
is exact.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

Array: TypeAlias = NDArray[np.float64]

MOST_TIED = 6
"""Axes whose joint choices are searched exactly; beyond, the flow program takes over."""
MOST_JOINT = 300_000
"""Joint choices beyond which even fewer axes go to the flow program."""


@dataclass(frozen=True)
class Chain:
    """Axes that are decided together.

    first: for each axis what each choice costs to have in the first stage, [choices]. change: for each axis
    from each choice to each, [choices, choices]. stages: for each stage and axis what each choice costs
    there. ties: for each stage the costs of joint choices, by the rising places of
    the axes that they are over.
    """

    first: Sequence[Array]
    change: Sequence[Array]
    stages: Sequence[Sequence[Array]]
    ties: Sequence[Mapping[tuple[int, ...], Array]] = field(default_factory=tuple)

    @property
    def sizes(self) -> tuple[int, ...]:
        """How many choices each axis has."""
        return tuple(len(one) for one in self.first)

    @property
    def is_small(self) -> bool:
        """Whether the joint choices can be searched exactly."""
        return len(self.sizes) <= MOST_TIED and math.prod(self.sizes) <= MOST_JOINT


@dataclass(frozen=True)
class Path:
    """For each stage the choice of each axis. gap: how far from proved, a share."""

    choices: tuple[tuple[int, ...], ...]
    cost: float
    gap: float = 0.0


def cheapest(chain: Chain) -> Path:
    """The cheapest path of a chain, proved; of equals the one with the lower choices. For small chains only.

    Raises ValueError where every path costs infinitely much.
    """
    axes = len(chain.sizes)
    total = _spread([np.asarray(one, dtype=float) for one in chain.first]) + _stage(chain, 0)
    back: list[list[NDArray[np.uint8]]] = []
    for stage in range(1, len(chain.stages)):
        came: list[NDArray[np.uint8]] = []
        for axis in range(axes):
            # moved[..., j, ...] = min over i of total[..., i, ...] + change[i, j], the other axes unmoved.
            lifted = np.moveaxis(total, axis, -1)
            sums = lifted[..., :, None] + chain.change[axis]
            best = sums.argmin(axis=-2)
            came.append(np.moveaxis(best, -1, axis).astype(np.uint8))
            total = np.moveaxis(np.take_along_axis(sums, best[..., None, :], axis=-2)[..., 0, :], -1, axis)
        back.append(came)
        total = total + _stage(chain, stage)
    end = np.unravel_index(int(total.argmin()), total.shape)
    cost = float(total[end])
    if not math.isfinite(cost):
        raise ValueError("no choice can be had in every setup")
    at = [int(one) for one in end]
    told = [tuple(at)]
    for came in reversed(back):
        for axis in reversed(range(axes)):
            at[axis] = int(came[axis][tuple(at)])
        told.append(tuple(at))
    return Path(tuple(reversed(told)), cost)


def _spread(costs: Sequence[Array]) -> Array:
    """The sum over axes as an array over their joint choices."""
    axes = len(costs)
    total = np.zeros(tuple(len(one) for one in costs))
    for axis, one in enumerate(costs):
        total = total + one.reshape([-1 if place == axis else 1 for place in range(axes)])
    return total


def _stage(chain: Chain, stage: int) -> Array:
    total = _spread(chain.stages[stage])
    for axes, costs in (chain.ties[stage] if chain.ties else {}).items():
        shape = [chain.sizes[place] if place in axes else 1 for place in range(len(chain.sizes))]
        total = total + costs.reshape(shape)
    return total


def cost_of(chain: Chain, choices: Sequence[Sequence[int]]) -> float:
    """What a path costs, added up step by step."""
    total = 0.0
    for stage, now in enumerate(choices):
        for axis, choice in enumerate(now):
            before = chain.first[axis] if stage == 0 else chain.change[axis][choices[stage - 1][axis]]
            total += float(before[choice]) + float(chain.stages[stage][axis][choice])
        for axes, costs in (chain.ties[stage] if chain.ties else {}).items():
            total += float(costs[tuple(now[axis] for axis in axes)])
    return total
