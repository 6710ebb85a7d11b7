"""Exposures against scipy.integrate.quad: the mean light over a shutter, for each smoothing and curve."""

from itertools import pairwise

import numpy as np
import pytest
from scipy.integrate import quad

from modebook.response.camera import exposures
from modebook.response.curves import INVERSE_SQUARE, LINEAR, SQUARE, Curve, S, table
from modebook.response.smoothers import smooth
from modebook.response.smoothing import METHODS, Smoothing
from modebook.response.transfer import Light, Transfer, through

PERIOD_S = 1 / 30
TABLE = table([(0.0, 0.0), (0.2, 0.05), (0.6, 0.4), (1.0, 1.0)])
# Kinks inside a decaying piece are summed, not solved: see transfer.NODES.
KINK = 2e-4


def _light(method: str, curve: Curve, lowest: float = 0.0, after_curve: bool = False) -> Light:
    values = np.array([1.0, 0.9, 0.7, 0.7, 0.4, 0.15, 0.1, 0.0, 0.0, 0.3])
    times_s = np.arange(len(values)) * PERIOD_S
    choice = (
        Smoothing("none") if method == "none" else Smoothing(method, packets=2.5, after_curve=after_curve)
    )  # type: ignore[arg-type]
    return through(smooth(choice, times_s, values[None], 1.0, PERIOD_S), Transfer(curve, lowest))


def _by_quad(light: Light, open_s: float, shutter_s: float) -> float:
    corners = np.unique(np.asarray(light.breaks_s()).ravel())
    inside = [float(at) for at in corners if open_s < at < open_s + shutter_s]
    edges = [open_s, *inside, open_s + shutter_s]
    parts = (
        quad(lambda t: float(light.at([t])[0, 0]), a, b, epsabs=1e-12, limit=200)[0]
        for a, b in pairwise(edges)
    )
    return sum(parts) / shutter_s


@pytest.mark.parametrize("curve", [LINEAR, SQUARE, S, INVERSE_SQUARE, TABLE], ids=lambda curve: curve.name)
@pytest.mark.parametrize("method", METHODS)
def test_an_exposure_is_the_integral_of_the_light(method: str, curve: Curve) -> None:
    """The mean over the shutter agrees with adaptive quadrature of the same light."""
    light = _light(method, curve)
    opens_s = np.array([-0.05, 0.011, 0.1, 0.2031, 0.31, 0.5])
    shutter_s = 1 / 48
    got = exposures(light, opens_s, shutter_s)[0]
    kinked = method == "lag" and curve.name in ("table", "inverse-square")
    for place, at_s in enumerate(opens_s):
        expected = _by_quad(light, float(at_s), shutter_s)
        assert got[place] == pytest.approx(expected, abs=KINK if kinked else 1e-9)


@pytest.mark.parametrize("method", ["average", "interpolate", "limit", "restart"])
def test_an_exposure_holds_across_a_lowest_output(method: str) -> None:
    """Light that goes out below a lowest output is integrated up to the moment it goes out."""
    light = _light(method, SQUARE, lowest=0.04)
    opens_s = np.array([0.1, 0.1517, 0.18, 0.2031])
    got = exposures(light, opens_s, 1 / 48)[0]
    for place, at_s in enumerate(opens_s):
        assert got[place] == pytest.approx(_by_quad(light, float(at_s), 1 / 48), abs=1e-9)
