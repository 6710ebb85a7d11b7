"""Chromaticity: round trips, shapes, refusals."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from modebook.response import color
from modebook.response.errors import ResponseError
from modebook.response.observer import CIE_1931_2_DEG

XY = st.floats(0.01, 0.8)


@given(XY, XY)
def test_xy_comes_back_from_uv_prime(x: float, y: float) -> None:
    assert color.uv_prime_to_xy(*color.xy_to_uv_prime(x, y)) == pytest.approx((x, y), abs=1e-12)


@given(XY, XY, XY, XY)
def test_the_distance_is_the_same_both_ways_and_none_to_itself(
    xa: float, ya: float, xb: float, yb: float
) -> None:
    assert color.delta_uv_prime(xa, ya, xb, yb) == color.delta_uv_prime(xb, yb, xa, ya)
    assert color.delta_uv_prime(xa, ya, xa, ya) == 0


def test_arrays_give_what_single_colors_give() -> None:
    a, b = np.array([0.3, 0.4]), np.array([0.35, 0.38])
    distances = color.delta_uv_prime(a, b, b, a)
    singles = [
        color.delta_uv_prime(float(x), float(y), float(y), float(x)) for x, y in zip(a, b, strict=True)
    ]
    assert distances == pytest.approx(singles, abs=1e-15)


@given(st.floats(1000, 90_000))
def test_color_temperature_comes_back(cct_k: float) -> None:
    assert color.xy_to_cct(*color.cct_to_xy(cct_k)) == pytest.approx(cct_k, rel=1e-5)


@given(st.lists(st.floats(1000, 100_000), min_size=1, max_size=5))
def test_arrays_of_color_temperatures_give_what_single_ones_give(ccts_k: list[float]) -> None:
    u_prime, v_prime = color.ccts_to_uv_prime(ccts_k)
    singles = np.array([color.cct_to_uv_prime(cct_k) for cct_k in ccts_k])
    assert np.column_stack([u_prime, v_prime]) == pytest.approx(singles, abs=1e-13)


@pytest.mark.parametrize("bad", [0, -5, 999, 100_001, math.nan, math.inf])
def test_a_color_temperature_outside_is_refused(bad: float) -> None:
    with pytest.raises(ResponseError, match="outside 1000 to 100000 K"):
        color.cct_to_uv_prime(bad)
    with pytest.raises(ResponseError, match="outside 1000 to 100000 K"):
        color.ccts_to_uv_prime([3000, bad])


def test_a_color_that_is_no_white_has_no_color_temperature() -> None:
    for x, y in ((0.17, 0.797), (0.131, 0.046), (math.nan, 0.3)):
        with pytest.raises(ResponseError, match="too far from white"):
            color.xy_to_cct(x, y)
    with pytest.raises(ResponseError, match="outside 1000 to 100000 K"):
        color.xy_to_cct(0.24, 0.231)


def test_the_observers_table_is_whole() -> None:
    """CIE 15: 360 to 830 nm by 5 nm; y-bar is 1 at 555 nm and greatest there."""
    assert [row[0] for row in CIE_1931_2_DEG] == list(range(360, 831, 5))
    top = max(CIE_1931_2_DEG, key=lambda row: row[2])
    assert top[0] == 555
    assert top[2] == pytest.approx(1, abs=1e-6)
    sums = [sum(row[i] for row in CIE_1931_2_DEG) for i in (1, 2, 3)]
    assert sums == pytest.approx([sums[1]] * 3, rel=5e-4)  # the equal-energy white has x = y = 1/3
