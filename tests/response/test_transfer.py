"""Light through curves and lowest outputs: values, closed areas, and the time at which light goes out."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from modebook.response.curves import INVERSE_SQUARE, LINEAR, SQUARE, Curve, S, table
from modebook.response.signal import polygon
from modebook.response.transfer import Shaped, Transfer, through

CURVES = [LINEAR, SQUARE, S, INVERSE_SQUARE, table([(0, 0), (0.3, 0.1), (0.7, 0.1), (1, 1)])]


@pytest.mark.parametrize("curve", CURVES, ids=lambda curve: curve.name)
@pytest.mark.parametrize("lowest", [0.0, 0.05])
@pytest.mark.parametrize("on_below", [False, True])
def test_the_area_of_a_curve_is_its_sum(curve: Curve, lowest: float, on_below: bool) -> None:
    """The closed area agrees with the midpoint sum over 200,000 levels."""
    transfer = Transfer(curve, lowest, on_below)
    middles = (np.arange(200_000) + 0.5) / 200_000
    sums = np.cumsum(transfer.light(middles)) / 200_000
    for level in (0.1, 0.25, 0.5, 0.75, 1.0):
        assert transfer.area(level) == pytest.approx(sums[round(level * 200_000) - 1], abs=2e-6)


@given(st.sampled_from(CURVES), st.floats(0, 1), st.floats(0, 1), st.floats(0.01, 10))
def test_the_mean_light_along_a_straight_level_lies_between_its_ends(
    curve: Curve, low: float, high: float, seconds_s: float
) -> None:
    """However short or flat the ramp, its area is between those of its two ends held."""
    light = through(polygon([0.0, seconds_s], [low, high]), Transfer(curve))
    mean = np.diff(light.area([0.0, seconds_s])[0])[0] / seconds_s
    least, most = sorted(Transfer(curve).light([low, high]))
    assert least - 1e-9 <= mean <= most + 1e-9


def test_a_linear_curve_without_a_lowest_output_changes_nothing() -> None:
    """The level is the light, and no time is lost on it."""
    level = polygon([0.0, 1.0], [0.0, 1.0])
    assert through(level, Transfer()) is level


def test_light_goes_out_where_its_level_meets_the_lowest_output() -> None:
    """A 1 s ramp down with a lowest output of a quarter goes out at 0.75 s, which is a breakpoint."""
    light = through(polygon([0.0, 1.0], [1.0, 0.0]), Transfer(lowest=0.25))
    assert isinstance(light, Shaped)
    assert light.at([0.7499, 0.7501])[0] == pytest.approx([0.2501, 0.0])
    assert np.isclose(light.breaks_s(), 0.75).any()
    assert np.diff(light.area([0.0, 1.0])[0])[0] == pytest.approx(0.75 * (1 + 0.25) / 2)
    stays = through(polygon([0.0, 1.0], [1.0, 0.0]), Transfer(lowest=0.25, on_below=True))
    assert stays.at([2.0])[0, 0] == 0.25
