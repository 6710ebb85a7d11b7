"""Steps near other whites than 2700 to 6500 K, and color temperature that is linear in mired."""

from __future__ import annotations

import math

import pytest

from modebook.response.color import cct_to_uv_prime
from modebook.response.errors import ResponseError
from modebook.response.resolution import chromaticity_step, color_temperature_step, mired_step


def test_the_whites_of_a_chromaticity_step_are_those_asked_for() -> None:
    warm = chromaticity_step(0.8, 0.8, 8, 8, near_whites_k=(2000.0, 2500.0))
    assert 2000 <= warm.at_k <= 2500
    usual = chromaticity_step(0.8, 0.8, 8, 8)
    assert usual == chromaticity_step(0.8, 0.8, 8, 8, near_whites_k=(6500.0, 2700.0))
    assert warm.step_delta_uv_prime != usual.step_delta_uv_prime


def test_the_whites_of_a_color_temperature_step_are_those_asked_for() -> None:
    assert color_temperature_step(7000, 9000, 8) is None
    step = color_temperature_step(7000, 9000, 8, near_whites_k=(2700.0, 8000.0))
    assert step is not None
    assert 7000 <= step.at_k <= 8000


def test_a_step_in_mired_is_the_span_over_its_intervals_and_its_distance_is_on_the_locus() -> None:
    """100 to 355 mired in 255 intervals are 1 mired each: from the black bodies by their own function."""
    step = mired_step(100, 355, 8)
    assert step is not None
    assert step.step_mired == pytest.approx(1)
    start = 1e6 / step.at_k
    u_a, v_a = cct_to_uv_prime(1e6 / start)
    u_b, v_b = cct_to_uv_prime(1e6 / (start + 1))
    assert step.step_delta_uv_prime == pytest.approx(math.hypot(u_b - u_a, v_b - v_a))
    assert step.step_k == pytest.approx(1e6 / start - 1e6 / (start + 1))
    assert step == mired_step(355, 100, 8)


def test_kelvin_and_mired_agree_where_a_step_is_small() -> None:
    """Over a span so narrow that both are all but linear: 3000 to 3030 K."""
    in_k = color_temperature_step(3000, 3030, 8)
    in_mired = mired_step(1e6 / 3000, 1e6 / 3030, 8)
    assert in_k is not None
    assert in_mired is not None
    assert in_mired.step_delta_uv_prime == pytest.approx(in_k.step_delta_uv_prime, rel=0.03)


def test_raw_mired_step_by_one_and_a_span_beyond_the_whites_has_none() -> None:
    step = mired_step(1, 1000, 16, raw=True)
    assert step is not None
    assert step.step_mired == 1
    assert mired_step(50, 100, 8) is None


@pytest.mark.parametrize("ends", [(0, 100), (-5, 100), (100, math.inf)])
def test_impossible_ends_are_refused(ends: tuple[float, float]) -> None:
    with pytest.raises(ResponseError):
        mired_step(*ends, 8)
