"""Dimmer curves: formulas, round trips, tables."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from modebook.response import curves
from modebook.response.curves import Curve
from modebook.response.errors import ResponseError

LEVELS = st.floats(0, 1)
NAMED = st.sampled_from([curves.LINEAR, curves.SQUARE, curves.S, curves.INVERSE_SQUARE])


@st.composite
def tables(draw: st.DrawFn) -> Curve:
    inner = draw(st.lists(st.integers(1, 999), unique=True, max_size=6))
    levels = [0.0, *sorted(n / 1000 for n in inner), 1.0]
    lights = sorted(draw(st.lists(st.integers(0, 1000), min_size=len(levels), max_size=len(levels))))
    return curves.table(zip(levels, (n / 1000 for n in lights), strict=True))


ANY = st.one_of(NAMED, tables())


@pytest.mark.parametrize(
    ("curve", "quarter", "half"),
    [
        (curves.LINEAR, 0.25, 0.5),
        (curves.SQUARE, 0.0625, 0.25),
        (curves.S, 0.15625, 0.5),
        (curves.INVERSE_SQUARE, 0.5, math.sqrt(0.5)),
    ],
)
def test_formulas_at_a_quarter_and_a_half(curve: Curve, quarter: float, half: float) -> None:
    """Closed forms: l, l^2, 3l^2 - 2l^3, sqrt(l)."""
    assert curve.to_light([0, 0.25, 0.5, 1]) == pytest.approx([0, quarter, half, 1], abs=1e-15)


@given(ANY, st.lists(LEVELS, min_size=1, max_size=9))
def test_arrays_and_single_levels_agree(curve: Curve, levels: list[float]) -> None:
    assert curve.to_light(levels) == pytest.approx([curve.light_at(level) for level in levels], abs=1e-12)


@given(ANY, LEVELS, LEVELS)
def test_more_level_never_gives_less_light(curve: Curve, a: float, b: float) -> None:
    low, high = sorted((a, b))
    assert curve.light_at(low) <= curve.light_at(high) + 1e-12
    assert 0 <= curve.light_at(low) <= 1


@given(ANY, LEVELS)
def test_the_level_of_a_light_gives_that_light_back(curve: Curve, level: float) -> None:
    light = curve.to_light(level)
    again = curve.to_level(light)
    assert curve.to_light(again) == pytest.approx(float(light), abs=1e-7)
    assert again <= level + 1e-6 or curve.name == "s"


@given(NAMED, LEVELS)
def test_named_curves_return_the_level_itself(curve: Curve, level: float) -> None:
    assert curve.to_level(curve.to_light(level)) == pytest.approx(level, abs=2e-7)


def test_along_a_flat_stretch_the_lowest_level_is_given() -> None:
    curve = curves.table([(0, 0), (0.2, 0.3), (0.6, 0.3), (1, 1)])
    assert curve.to_level(0.3) == pytest.approx(0.2)
    assert curve.to_light(0.4) == pytest.approx(0.3)


def test_light_that_a_table_does_not_reach_is_given_its_end() -> None:
    curve = curves.table([(0, 0.1), (1, 0.9)])
    assert curve.to_level([0, 0.5, 1]) == pytest.approx([0, 0.5, 1])
    assert curve.light_at(-1) == 0.1
    assert curve.light_at(2) == 0.9


@given(st.floats(-3, 4), NAMED)
def test_levels_outside_are_clipped(level: float, curve: Curve) -> None:
    assert curve.to_light(level) == pytest.approx(curve.light_at(min(max(level, 0), 1)))


def test_a_curve_is_hashable_and_its_arrays_keep_their_shape() -> None:
    assert len({curves.S, Curve("s"), curves.table([(0, 0), (1, 1)])}) == 2
    for curve in (
        curves.LINEAR,
        curves.SQUARE,
        curves.S,
        curves.INVERSE_SQUARE,
        curves.table([(0, 0), (1, 1)]),
    ):
        assert curve.to_light(np.zeros((2, 3))).shape == (2, 3)
        assert curve.to_level(np.zeros((2, 3))).shape == (2, 3)
        assert curve.to_level(0.5).shape == ()


@pytest.mark.parametrize(
    "points",
    [
        [],
        [(0, 0)],
        [(0.1, 0), (1, 1)],
        [(0, 0), (0.9, 1)],
        [(0, 0), (0.5, 0.5), (0.5, 0.6), (1, 1)],
        [(0, 0.5), (1, 0.4)],
        [(0, 0), (1, 1.1)],
        [(0, -0.1), (1, 1)],
        [(0, math.nan), (1, 1)],
    ],
)
def test_a_table_that_is_no_curve_is_refused(points: list[tuple[float, float]]) -> None:
    with pytest.raises(ResponseError):
        curves.table(points)


def test_an_unknown_name_or_points_without_a_table_are_refused() -> None:
    with pytest.raises(ResponseError, match="inverse-square"):
        Curve("round")
    with pytest.raises(ResponseError):
        Curve("linear", ((0, 0), (1, 1)))
