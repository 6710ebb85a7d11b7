"""Smoothing against scipy.signal on fine grids: a moving average and a first-order lag of the same stairs.

Source: scipy.signal.lfilter, whose output at the grid's points is exact for stairs that change on the grid.
"""

import numpy as np
import pytest
from scipy.signal import lfilter

from modebook.response.smoothers import smooth
from modebook.response.smoothing import Smoothing, lag

FINE = 300  # grid points a packet


def _stairs(period_s: float, seed: int) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Give packet times, their values (with repeats), and the stairs on the fine grid from packet 0 on."""
    rng = np.random.default_rng(seed)
    values = np.repeat(rng.random(15), rng.integers(1, 4, 15))
    return np.arange(len(values)) * period_s, values, np.repeat(values, FINE)


@pytest.mark.parametrize("refresh_hz", [30.0, 44.0])
@pytest.mark.parametrize("packets", [1, 2, 5, 7])
def test_an_average_over_packets_is_the_moving_average_of_the_stairs(refresh_hz: float, packets: int) -> None:
    """A box of N packets on the fine grid gives the same light at every grid point, to 1e-9."""
    period_s = 1 / refresh_hz
    times_s, values, fine = _stairs(period_s, packets)
    light = smooth(Smoothing("average", packets=packets), times_s, values[None], 0.25, period_s)
    taps = np.full(packets * FINE, 1 / (packets * FINE))
    state = np.full(len(taps) - 1, 0.0)
    expected = 0.25 + lfilter(taps, 1.0, fine - 0.25, zi=state)[0]
    # The filter's output after a sample is the light at the end of that sample.
    ends_s = (np.arange(len(fine)) + 1) * period_s / FINE
    assert light.at(ends_s)[0] == pytest.approx(expected, abs=1e-9)


@pytest.mark.parametrize("length_s", [0.01, 0.0633333333333333, 0.15])
def test_an_average_over_seconds_need_not_be_whole_packets(length_s: float) -> None:
    """A window that is no whole number of packets is averaged exactly too (its grid is 1/30 s over 300)."""
    period_s = 1 / 30
    times_s, values, fine = _stairs(period_s, 9)
    light = smooth(Smoothing("average", length_s=length_s), times_s, values[None], 0.25, period_s)
    taps = np.full(round(length_s / period_s * FINE), period_s / FINE / length_s)
    expected = 0.25 + lfilter(taps, 1.0, fine - 0.25)
    ends_s = (np.arange(len(fine)) + 1) * period_s / FINE
    assert light.at(ends_s)[0] == pytest.approx(expected, abs=1e-9)


@pytest.mark.parametrize("constant_s", [0.005, 0.05, 0.5])
def test_a_lag_is_the_first_order_filter_of_the_stairs(constant_s: float) -> None:
    """The one-pole filter with the same time constant gives the same light at every grid point, to 1e-9."""
    period_s = 1 / 44
    times_s, values, fine = _stairs(period_s, 3)
    light = smooth(lag(time_constant_s=constant_s), times_s, values[None], 0.25, period_s)
    keep = np.exp(-period_s / FINE / constant_s)
    expected = lfilter([1 - keep], [1, -keep], fine, zi=[0.25 * keep])[0]
    ends_s = (np.arange(len(fine)) + 1) * period_s / FINE
    assert light.at(ends_s)[0] == pytest.approx(expected, abs=1e-9)


def test_the_light_of_an_average_has_the_mean_of_its_input() -> None:
    """From rest to rest a moving average moves light in time and adds or takes none (closed form)."""
    period_s = 1 / 30
    times_s, values, _ = _stairs(period_s, 5)
    values[-8:] = 0.25
    light = smooth(Smoothing("average", packets=4), times_s, values[None], 0.25, period_s)
    end_s = times_s[-1] + 10 * period_s
    sent = (values * period_s).sum() + 0.25 * (end_s - times_s[-1] - period_s)
    assert light.area([end_s])[0, 0] - light.area([0.0])[0, 0] == pytest.approx(sent, abs=1e-9)
