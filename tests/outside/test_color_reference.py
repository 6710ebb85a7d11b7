"""Chromaticity and color temperature against colour-science, published approximations and CIE 15."""

from __future__ import annotations

import warnings
from typing import Any

import numpy as np
import pytest

from modebook.response import color, resolution


@pytest.fixture(scope="module")
def colour() -> Any:
    """Load colour-science, whose import warns of plotting parts that are not installed."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        import colour

        return colour


def test_uv_prime_and_back(colour: Any) -> None:
    """colour-science, xy_to_Luv_uv and Luv_uv_to_xy (CIE 1976 UCS)."""
    xy = np.array([[0.3127, 0.3290], [0.708, 0.292], [0.17, 0.797], [0.131, 0.046], [0.5267, 0.4133]])
    reference = colour.xy_to_Luv_uv(xy)
    u_prime, v_prime = color.xy_to_uv_prime(xy[:, 0], xy[:, 1])
    assert np.column_stack([u_prime, v_prime]) == pytest.approx(reference, abs=1e-14)
    back = np.column_stack(color.uv_prime_to_xy(u_prime, v_prime))
    assert back == pytest.approx(colour.Luv_uv_to_xy(reference), abs=1e-14)


def test_distance_in_uv_prime(colour: Any) -> None:
    """colour-science's u'v', and the distance between two points in a plane."""
    a, b = (0.3127, 0.3290), (0.3457, 0.3585)
    expected = float(np.linalg.norm(colour.xy_to_Luv_uv(a) - colour.xy_to_Luv_uv(b)))
    assert color.delta_uv_prime(*a, *b) == pytest.approx(expected, abs=1e-14)


def test_bt2020_primaries_and_white(colour: Any) -> None:
    """colour-science's ITU-R BT.2020 color space."""
    space = colour.RGB_COLOURSPACES["ITU-R BT.2020"]
    ours = [color.BT2020_RED, color.BT2020_GREEN, color.BT2020_BLUE]
    assert np.array(ours) == pytest.approx(space.primaries, abs=1e-12)
    assert pytest.approx(tuple(space.whitepoint), abs=1e-12) == color.BT2020_WHITE


@pytest.mark.parametrize("cct_k", [1000, 1667, 2000, 2700, 4000, 6500, 10_000, 25_000, 100_000])
def test_black_bodies_are_those_of_plancks_law_at_every_nanometer(colour: Any, cct_k: float) -> None:
    """colour-science's planck_law and CIE 1931 observer, 360 to 830 nm by 1 nm; ours sums every 5 nm."""
    cmfs = colour.MSDS_CMFS["CIE 1931 2 Degree Standard Observer"]
    power = colour.colorimetry.planck_law(cmfs.wavelengths * 1e-9, cct_k)
    big_x, big_y, big_z = (np.asarray(cmfs.values) * power[:, None]).sum(axis=0)
    expected = colour.xy_to_Luv_uv([big_x / (big_x + big_y + big_z), big_y / (big_x + big_y + big_z)])
    assert color.cct_to_uv_prime(cct_k) == pytest.approx(tuple(expected), abs=4e-6)


@pytest.mark.parametrize("cct_k", [1000, 1500, 2700, 4000, 5000, 6500, 10_000, 15_000])
def test_black_bodies_lie_within_the_stated_error_of_krystek_1985(colour: Any, cct_k: float) -> None:
    """Krystek 1985 (in colour-science): rational approximation, stated within 8e-5 in u and 9e-5 in v."""
    u, v = colour.temperature.CCT_to_uv_Krystek1985(cct_k)
    u_prime, v_prime = color.cct_to_uv_prime(cct_k)
    assert u_prime == pytest.approx(u, abs=1e-4)
    assert v_prime / 1.5 == pytest.approx(v, abs=1.1e-4)


def test_illuminant_a_and_d65_of_cie_15() -> None:
    """CIE 15, from memory: A is (0.44758, 0.40745) at 2855.5 K on today's scale; D65 is about 6504 K."""
    assert color.cct_to_xy(2855.5) == pytest.approx((0.44758, 0.40745), abs=2e-5)
    assert color.xy_to_cct(0.44758, 0.40745) == pytest.approx(2855.5, abs=0.5)
    assert color.xy_to_cct(0.3127, 0.3290) == pytest.approx(6504, abs=2)


@pytest.mark.parametrize("cct_k", [2000, 2700, 4000, 6500, 10_000])
@pytest.mark.parametrize("duv", [-0.01, -0.003, 0.0, 0.003, 0.01])
def test_color_temperatures_off_the_locus(colour: Any, cct_k: float, duv: float) -> None:
    """Ohno 2013 (in colour-science), up to 0.01 off the locus in CIE 1960 uv to either side."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        uv = colour.temperature.CCT_to_uv_Ohno2013([cct_k, duv])
        expected_k = float(colour.temperature.uv_to_CCT_Ohno2013(uv)[0])
    xy = color.uv_prime_to_xy(float(uv[0]), float(uv[1]) * 1.5)
    assert color.xy_to_cct(*xy) == pytest.approx(expected_k, rel=3e-4)


def test_a_step_of_8_bits_from_a_white_of_6500_k(colour: Any) -> None:
    """colour-science's u'v' of 6500 K (by Kang et al. 2002) and of its neighbor one step of x higher."""
    x, y = colour.temperature.CCT_to_xy_Kang2002(6500)
    step = 0.8 / 255
    expected = float(np.linalg.norm(colour.xy_to_Luv_uv([x, y]) - colour.xy_to_Luv_uv([x + step, y])))
    found = resolution.chromaticity_step(0.8, 0.8, 8, 8)
    assert found.at_k == 6500
    assert found.step_delta_uv_prime == pytest.approx(expected, rel=5e-3)
    assert found.steps == pytest.approx(expected / 0.0011, rel=5e-3)


def test_the_largest_step_over_bt2020_is_at_a_corner(colour: Any) -> None:
    """colour-science's u'v' of a grid over the ITU-R BT.2020 triangle: no step is larger than ours."""
    red, green, blue = colour.RGB_COLOURSPACES["ITU-R BT.2020"].primaries
    shares = np.array([(a, b, 60 - a - b) for a in range(61) for b in range(61 - a)]) / 60
    points = shares @ np.array([red, green, blue])
    step = 0.8 / 255
    largest = max(
        float(np.linalg.norm(colour.xy_to_Luv_uv(points) - colour.xy_to_Luv_uv(points + move), axis=1).max())
        for move in ([step, 0.0], [-step, 0.0], [0.0, step], [0.0, -step])
    )
    assert resolution.chromaticity_step(0.8, 0.8, 8, 8).bt2020_delta_uv_prime == pytest.approx(
        largest, rel=1e-9
    )


def test_a_color_temperature_step(colour: Any) -> None:
    """Krystek 1985 (in colour-science): 2700 K and one of 255 steps of 2000 to 10,000 K above it."""
    step_k = 8000 / 255
    a, b = (colour.temperature.CCT_to_uv_Krystek1985(k) * [1, 1.5] for k in (2700, 2700 + step_k))
    found = resolution.color_temperature_step(2000, 10_000, 8)
    assert found is not None
    assert found.at_k == 2700
    assert found.step_delta_uv_prime == pytest.approx(float(np.linalg.norm(a - b)), rel=0.01)
