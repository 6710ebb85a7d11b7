"""Intervals behave like the sets of numbers that they stand for."""

from __future__ import annotations

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from modebook.checks.rules._values import Intervals, count, merged, shared, told, without

PAIRS = st.lists(
    st.tuples(st.integers(0, 40), st.integers(0, 40)).map(lambda pair: (min(pair), max(pair))), max_size=6
)


def numbers(intervals: Intervals) -> set[int]:
    return {number for low, high in intervals for number in range(low, high + 1)}


@given(PAIRS)
def test_merged_intervals_are_in_order_and_never_touch(pairs: list[tuple[int, int]]) -> None:
    found = merged(pairs)
    assert numbers(found) == numbers(tuple(pairs))
    assert all(a[1] + 1 < b[0] for a, b in pairwise(found))
    assert count(found) == len(numbers(found))


@given(PAIRS, PAIRS)
def test_shared_and_without_are_intersection_and_difference(
    a: list[tuple[int, int]], b: list[tuple[int, int]]
) -> None:
    one, other = merged(a), merged(b)
    assert numbers(shared(one, other)) == numbers(one) & numbers(other)
    assert numbers(without(one, other)) == numbers(one) - numbers(other)


def test_many_intervals_are_told_short() -> None:
    assert told(((0, 9), (12, 12))) == "0-9, 12"
    assert told(tuple((n, n) for n in range(0, 20, 2)), most=3) == "0, 2, 4, and 7 more"
