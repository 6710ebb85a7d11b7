"""Signals: values, integrals and largest changes of pieces, one or many at once."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from modebook.response.errors import ResponseError
from modebook.response.signal import Signal, held, largest_change, merged_times, polygon

LEVELS = st.lists(st.floats(0, 1), min_size=1, max_size=12)


def test_stairs_hold_each_value_from_its_time_on() -> None:
    """At a jump at() gives the value after it and before() the value before; both extend without end."""
    stairs = held([0.0, 1.0, 2.0], [[0.5, 0.25, 1.0]], 0.0)
    assert stairs.at([-5, -0.1, 0, 0.9, 1, 2, 50])[0].tolist() == [0, 0, 0.5, 0.5, 0.25, 1, 1]
    assert stairs.before([0, 1, 2])[0].tolist() == [0, 0.5, 0.25]


def test_area_of_stairs_and_of_a_polygon_by_hand() -> None:
    """Rectangles and triangles: the integral from the first breakpoint, before it negative."""
    stairs = held([0.0, 1.0, 2.0], [[0.5, 0.25, 1.0]], 0.0)
    assert np.diff(stairs.area([0.0, 1.5, 4.0])[0]) == pytest.approx([0.625, 0.125 + 2.0])
    ramp = polygon([0.0, 2.0], [0.0, 1.0])
    assert np.diff(ramp.area([-3.0, 0.0, 1.0, 2.0, 3.0])[0]) == pytest.approx([0.0, 0.25, 0.75, 1.0])


def test_a_ramp_that_stops_within_its_piece() -> None:
    """A slope with ramp_s runs for that long and then holds."""
    signal = Signal(
        np.array([0.0, 1.0]), np.array([[0.0, 0.0]]), np.array([[0.0, 2.0]]), np.array([[0.0, 0.25]])
    )
    assert signal.at([1.1, 1.25, 3.0])[0] == pytest.approx([0.2, 0.5, 0.5])
    assert np.diff(signal.area([1.0, 1.25, 2.25])[0]) == pytest.approx([0.0625, 0.5])
    assert 1.25 in signal.breaks_s()


def test_each_signal_may_be_asked_at_its_own_times() -> None:
    """Times of shape [B, Q] give to each signal its own."""
    two = held([0.0, 1.0], [[0.1, 0.2], [0.3, 0.4]], 0.0)
    assert two.at(np.array([[0.5, 1.5], [1.5, 0.5]])).tolist() == [[0.1, 0.2], [0.4, 0.3]]
    assert two.rows(slice(1, 2)).at([0.5, 1.5]).tolist() == [[0.3, 0.4]]


@given(LEVELS, st.floats(0.01, 3.0))
def test_the_area_is_additive_and_its_slope_is_the_value(levels: list[float], at_s: float) -> None:
    """Integrals over neighboring stretches add up, and a short stretch has the mean of its ends."""
    signal = polygon(np.arange(len(levels) + 1) * 0.3, [0.5, *levels])
    whole = signal.area([0.0, at_s, 4.0])[0]
    assert whole[2] - whole[0] == pytest.approx((whole[1] - whole[0]) + (whole[2] - whole[1]))
    short = 1e-4
    mean = (signal.area([at_s + short]) - signal.area([at_s]))[0, 0] / short
    assert mean == pytest.approx(float(signal.at([at_s, at_s + short])[0].mean()), abs=1e-3)


@given(LEVELS)
def test_the_largest_change_over_one_step_of_stairs_is_the_largest_stair(levels: list[float]) -> None:
    """However rounding places the stretch's ends, a stair is never counted with its neighbor."""
    times_s = np.arange(len(levels)) / 30.0
    stairs = held(times_s, [levels], 0.5)
    expected = np.abs(np.diff([0.5, *levels])).max()
    assert largest_change(stairs, 1 / 30.0)[0] == pytest.approx(expected)


def test_times_that_rounding_parted_are_one() -> None:
    """Breakpoints within 1e-11 s of each other are merged; others stay."""
    assert len(merged_times(np.array([0.0, 0.1 + 0.2]), np.array([0.3, 0.31]))) == 3


def test_a_signal_needs_a_time_for_each_piece() -> None:
    """Shapes that do not fit are refused."""
    with pytest.raises(ResponseError, match=r"^a signal needs one time and one value for each piece$"):
        Signal(np.array([0.0]), np.array([[0.0, 1.0]]))
