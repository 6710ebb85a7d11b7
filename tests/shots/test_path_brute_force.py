"""The cheapest path is the cheapest of all: against every path there is, with and without ties."""

from __future__ import annotations

import math
from itertools import combinations, product

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from modebook.shots.flow import flow
from modebook.shots.path import Chain, cheapest, cost_of

COSTS = st.integers(0, 9).map(float)
SOME_IMPOSSIBLE = st.one_of(COSTS, COSTS, COSTS, st.just(math.inf))


def _table(draw: st.DrawFn, shape: tuple[int, ...], of: st.SearchStrategy[float]) -> np.ndarray:
    flat = draw(st.lists(of, min_size=math.prod(shape), max_size=math.prod(shape)))
    return np.array(flat, dtype=float).reshape(shape)


@st.composite
def chains(draw: st.DrawFn, tied: bool) -> Chain:
    """Chains of one to three axes with up to three choices over up to four stages."""
    sizes = draw(st.lists(st.integers(1, 3), min_size=2 if tied else 1, max_size=3))
    stages = draw(st.integers(1, 4 if len(sizes) < 3 else 3))
    change = [_table(draw, (size, size), SOME_IMPOSSIBLE) for size in sizes]
    for table in change:
        np.fill_diagonal(table, 0.0)
    ties = []
    for _ in range(stages):
        pair = draw(st.sampled_from(list(combinations(range(len(sizes)), 2)))) if tied else ()
        ties.append({pair: _table(draw, tuple(sizes[axis] for axis in pair), COSTS)} if pair else {})
    return Chain(
        [_table(draw, (size,), SOME_IMPOSSIBLE) for size in sizes],
        change,
        [[_table(draw, (size,), COSTS) for size in sizes] for _ in range(stages)],
        ties,
    )


def _least(chain: Chain) -> float:
    """The cost of the cheapest of all paths, each added up by itself."""
    joint = list(product(*(range(size) for size in chain.sizes)))
    return min(cost_of(chain, path) for path in product(joint, repeat=len(chain.stages)))


def _check(chain: Chain) -> None:
    least = _least(chain)
    if math.isinf(least):
        with pytest.raises(ValueError, match="no choice can be had"):
            cheapest(chain)
        return
    path = cheapest(chain)
    assert path.cost == pytest.approx(least)
    assert cost_of(chain, path.choices) == pytest.approx(path.cost), "the path costs what it says"
    assert path.gap == 0.0


@given(chains(tied=False))
@settings(max_examples=150, deadline=None)
def test_without_ties_it_is_the_cheapest_of_all_paths(chain: Chain) -> None:
    """Every path is tried, each cost added up step by step."""
    _check(chain)


@given(chains(tied=True))
@settings(max_examples=150, deadline=None)
def test_with_ties_it_is_the_cheapest_of_all_paths(chain: Chain) -> None:
    """With costs of joint choices at every stage."""
    _check(chain)


@st.composite
def tied_pairs(draw: st.DrawFn) -> tuple[Chain, list[list[dict[tuple[int, int], np.ndarray]]], float]:
    """A chain with ties told as pairs that are apart, as the flow program takes them."""
    chain = draw(chains(tied=False).filter(lambda one: len(one.sizes) > 1))
    weight = float(draw(st.integers(1, 20)))
    apart = []
    for _ in chain.stages:
        ties = []
        for _ in range(draw(st.integers(0, 2))):
            axes = sorted(draw(st.sets(st.integers(0, len(chain.sizes) - 1), min_size=2)))
            told = {}
            for one, other in combinations(axes, 2):
                shape = (chain.sizes[one], chain.sizes[other])
                told[one, other] = _table(draw, shape, st.sampled_from([0.0, 1.0])).astype(bool)
            ties.append(told)
        apart.append(ties)
    return chain, apart, weight


def _tie_cost(ties: list[dict[tuple[int, int], np.ndarray]], now: tuple[int, ...]) -> int:
    return sum(any(table[now[a], now[b]] for (a, b), table in tie.items()) for tie in ties)


@given(tied_pairs())
@settings(max_examples=60, deadline=None)
def test_the_flow_program_finds_the_cheapest_of_all_paths(
    told: tuple[Chain, list[list[dict[tuple[int, int], np.ndarray]]], float],
) -> None:
    """Solved to the end, its path costs what the cheapest of all does, and its gap is 0."""
    chain, apart, weight = told
    joint = list(product(*(range(size) for size in chain.sizes)))
    least = min(
        cost_of(chain, path)
        + weight * sum(_tie_cost(ties, now) for ties, now in zip(apart, path, strict=True))
        for path in product(joint, repeat=len(chain.stages))
    )
    if math.isinf(least):
        with pytest.raises(ValueError, match="no choice can be had"):
            flow(chain, apart, weight)
        return
    path = flow(chain, apart, weight)
    assert path.cost == pytest.approx(least)
    assert path.gap == 0.0
