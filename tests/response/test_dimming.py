"""A dimmer's largest step in JND."""

from __future__ import annotations

import math

import numpy as np
import pytest

from modebook.response import curves, visibility
from modebook.response.dimming import dimmer_step
from modebook.response.errors import ResponseError

TABLE = curves.table([(0, 0), (0.3, 0.02), (0.302, 0.05), (0.7, 0.5), (1, 1)])
CURVES = [curves.LINEAR, curves.SQUARE, curves.S, curves.INVERSE_SQUARE, TABLE]


def every_step(bits: int, curve: curves.Curve, white_cd_m2: float, from_light: float) -> float:
    """Try every step there is, on arrays."""
    last = 2**bits - 1
    light = np.maximum(curve.to_light(np.arange(last + 1) / last), from_light)
    return float(np.diff(visibility.jnd_index(light * white_cd_m2)).max())


@pytest.mark.parametrize("bits", [8, 16])
@pytest.mark.parametrize("curve", CURVES, ids=lambda curve: curve.name)
@pytest.mark.parametrize(("white_cd_m2", "from_light"), [(100, 0.01), (500, 0.001), (10, 0.0), (4000, 0.2)])
def test_the_step_is_the_largest_of_all(
    bits: int, curve: curves.Curve, white_cd_m2: float, from_light: float
) -> None:
    found = dimmer_step(bits, curve, white_cd_m2, from_light)
    assert found.step_jnd == pytest.approx(every_step(bits, curve, white_cd_m2, from_light), rel=1e-3)


def test_the_bottom_step_of_8_linear_bits() -> None:
    """Values 3 and 4 of 255 at 100 cd/m2: the function of NEMA PS3.14 between 1.176 and 1.569 cd/m2."""
    found = dimmer_step(8)
    expected = float(np.diff(visibility.jnd_index([300 / 255, 400 / 255]))[0])
    assert found.step_jnd == pytest.approx(expected)
    assert found.at_light == pytest.approx(3 / 255)
    assert found.step_percent == pytest.approx(100 / 255)


@pytest.mark.parametrize("curve", CURVES[:4], ids=lambda curve: curve.name)
def test_more_bits_make_smaller_steps(curve: curves.Curve) -> None:
    steps = [dimmer_step(bits, curve).step_jnd for bits in (8, 16, 24, 32)]
    assert steps == sorted(steps, reverse=True)
    assert steps[-1] > 0


def test_half_of_the_values_make_about_twice_the_step() -> None:
    assert dimmer_step(16, share=0.5).step_jnd == pytest.approx(2 * dimmer_step(16).step_jnd, rel=0.01)


def test_impossible_figures_are_refused() -> None:
    for white_cd_m2 in (0.0, -1.0, math.nan, math.inf):
        with pytest.raises(ResponseError, match="white"):
            dimmer_step(8, white_cd_m2=white_cd_m2)
    for from_light in (-0.1, 1.0, math.nan):
        with pytest.raises(ResponseError, match="start"):
            dimmer_step(8, from_light=from_light)
    with pytest.raises(ResponseError, match="two values"):
        dimmer_step(8, share=1 / 256)
