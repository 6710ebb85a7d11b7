"""Measuring against things from outside: scipy's least squares, colour-science's curves, a textbook."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.optimize import least_squares

from modebook.measure.fit import ROBUST_AT, Known, Samples, Search, fit
from modebook.measure.models import Method, answered
from modebook.measure.sending import Sending
from modebook.measure.transfer import from_light, to_light

CODES = np.linspace(0.0, 1.0, 1001)


def test_the_srgb_curve_is_colour_sciences() -> None:
    """Source: colour-science, eotf_sRGB (IEC 61966-2-1)."""
    import colour

    assert to_light(CODES, "srgb") == pytest.approx(colour.models.eotf_sRGB(CODES), abs=1e-12)


def test_the_bt709_curve_is_colour_sciences() -> None:
    """Source: colour-science, oetf_inverse_BT709 and oetf_BT709 (ITU-R BT.709-6)."""
    import colour

    assert to_light(CODES, "bt709") == pytest.approx(colour.models.oetf_inverse_BT709(CODES), abs=1e-12)
    assert from_light(CODES, "bt709") == pytest.approx(colour.models.oetf_BT709(CODES), abs=1e-12)


def test_a_lag_goes_from_10_to_90_percent_in_2_197_time_constants() -> None:
    """Source: any textbook of control: the rise time of a first-order lag is ln 9 = 2.197 time constants."""
    at_s = np.linspace(0.0, 1.0, 200_001)
    light = answered("lag", at_s, 0.0, 0.0, np.array([0.0]), np.array([[0.0], [1.0]]), 0.1, 1 / 44)[:, 0]
    took_s = at_s[np.searchsorted(light, 0.9)] - at_s[np.searchsorted(light, 0.1)]
    assert took_s / 0.1 == pytest.approx(2.197, abs=1e-3)


@pytest.mark.parametrize("method", ["average", "lag", "limit", "restart"])
def test_the_fit_finds_the_minimum_that_scipy_finds(method: Method) -> None:
    """Source: scipy.optimize.least_squares, trf, loss soft_l1, on the same residuals, its own slopes."""
    rng = np.random.default_rng(4)
    at_s = np.arange(0.0, 3.0, 1 / 240)
    steps_s, period_s = np.array([0.503, 1.211, 2.107]), 1 / 44
    weights = np.array([[1.0, 0.0], [0.0, 1.0], [0.5, 0.5], [1.0, 0.0]])
    values = np.array([0.0, 1.0, 0.5, 0.0])
    level = 0.05 + 0.8 * answered(method, at_s, 0.002, 0.0, steps_s, values[:, None], 0.1, period_s)[:, 0]
    level = level + 0.004 * rng.standard_normal(len(at_s))
    level[::50] += 0.05  # outliers, for the robust loss
    samples = Samples(at_s, level, np.full(len(at_s), 0.004), np.zeros(len(at_s), dtype=bool))
    sending = Sending(
        np.arange(3), np.zeros(3), steps_s, np.zeros(3), np.zeros(3, dtype=bool), weights, values
    )
    search = Search(method, samples, sending, Known(period_s, 0.002, 1 / 240))
    first = search.first(0.085, 0.002, steps_s + 0.004, 0.0)
    ours = fit(search, first)
    theirs = least_squares(
        search.left,
        first,
        bounds=search.bounds_ms,
        loss="soft_l1",
        f_scale=ROBUST_AT,
        diff_step=1e-5,
        xtol=1e-10,
        ftol=1e-10,
        gtol=1e-10,
    )
    assert ours.deviance == pytest.approx(2.0 * theirs.cost, rel=2e-4)
    assert ours.length_s * 1e3 == pytest.approx(theirs.x[0], abs=0.05)
