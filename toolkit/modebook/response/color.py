"""Chromaticity: CIE xy to u'v' and back, delta u'v', color temperature to xy and back, BT.2020.

CIE xy and u'v' (CIE 1976 UCS) are as in CIE 15. Color temperature is computed by its definition:
Planck's law (second radiation constant 0.01438776877 m K, SI 2019) summed against the CIE 1931 observer
from 360 to 830 nm every 5 nm, which is within 3e-6 in u' and v' of the sum over every nanometer (measured).
Delta u'v' is a distance between two colors in u'v'; it is not the signed distance from the Planckian
locus in CIE 1960 uv that is written Duv.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from functools import lru_cache
from typing import TYPE_CHECKING, TypeVar

from .errors import ResponseError
from .observer import CIE_1931_2_DEG

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import ArrayLike, NDArray

Num = TypeVar("Num", float, "NDArray[np.float64]")

# CIE TN 001:2014: a circle of this radius in u'v' is one step of chromaticity difference near whites.
ONE_STEP_DELTA_UV_PRIME = 0.0011

# ITU-R BT.2020, primaries and white (D65) in CIE xy.
BT2020_RED = (0.708, 0.292)
BT2020_GREEN = (0.170, 0.797)
BT2020_BLUE = (0.131, 0.046)
BT2020_WHITE = (0.3127, 0.3290)

CCT_MIN_K = 1000.0
CCT_MAX_K = 100_000.0
# CIE 15: beyond this distance from the locus in CIE 1960 uv a correlated color temperature means nothing.
CCT_DISTANCE_MAX = 0.05
_PLANCK_C2_M_K = 1.438776877e-2
_SEARCH_POINTS = 64


def xy_to_uv_prime(x: Num, y: Num) -> tuple[Num, Num]:
    """Give CIE 1976 u' and v' of CIE xy; floats or arrays of one shape. Source: CIE 15."""
    under = -2.0 * x + 12.0 * y + 3.0
    return 4.0 * x / under, 9.0 * y / under


def uv_prime_to_xy(u_prime: Num, v_prime: Num) -> tuple[Num, Num]:
    """Give CIE xy of CIE 1976 u' and v'; floats or arrays of one shape. Source: CIE 15."""
    under = 6.0 * u_prime - 16.0 * v_prime + 12.0
    return 9.0 * u_prime / under, 4.0 * v_prime / under


def delta_uv_prime(x_a: Num, y_a: Num, x_b: Num, y_b: Num) -> Num:
    """Give the distance in u'v' between two colors given in CIE xy; floats or arrays of one shape."""
    u_a, v_a = xy_to_uv_prime(x_a, y_a)
    u_b, v_b = xy_to_uv_prime(x_b, y_b)
    du, dv = u_b - u_a, v_b - v_a
    distance: Num = (du * du + dv * dv) ** 0.5
    return distance


@lru_cache(maxsize=8192)
def cct_to_uv_prime(cct_k: float) -> tuple[float, float]:
    """Give u' and v' of a black body at `cct_k` kelvin (1000 to 100,000); floats, without numpy, cached.

    Source: Planck's law and the CIE 1931 observer (see the module). Raises ResponseError outside.
    """
    if not CCT_MIN_K <= cct_k <= CCT_MAX_K:
        raise ResponseError(
            f"a color temperature of {cct_k:g} K is outside {CCT_MIN_K:.0f} to {CCT_MAX_K:.0f} K"
        )
    big_x = big_y = big_z = 0.0
    for at_m, x_bar, y_bar, z_bar, at_m_to_minus_5 in _weights():
        power = at_m_to_minus_5 / math.expm1(_PLANCK_C2_M_K / (at_m * cct_k))
        big_x += x_bar * power
        big_y += y_bar * power
        big_z += z_bar * power
    under = big_x + 15.0 * big_y + 3.0 * big_z
    return 4.0 * big_x / under, 9.0 * big_y / under


def cct_to_xy(cct_k: float) -> tuple[float, float]:
    """Give CIE xy of a black body at `cct_k` kelvin (see cct_to_uv_prime). Raises ResponseError."""
    return uv_prime_to_xy(*cct_to_uv_prime(cct_k))


def ccts_to_uv_prime(cct_k: ArrayLike) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Give u' and v' (each of the shape given) of black bodies at many kelvin, as cct_to_uv_prime does.

    Raises ResponseError if any is outside 1000 to 100,000 K.
    """
    import numpy as np

    kelvin = np.asarray(cct_k, dtype=np.float64)
    outside = ~((kelvin >= CCT_MIN_K) & (kelvin <= CCT_MAX_K))
    if outside.any():
        raise ResponseError(
            f"a color temperature of {kelvin[outside].flat[0]:g} K is outside "
            f"{CCT_MIN_K:.0f} to {CCT_MAX_K:.0f} K"
        )
    big_x, big_y, big_z = (np.zeros_like(kelvin) for _ in range(3))
    for at_m, x_bar, y_bar, z_bar, at_m_to_minus_5 in _weights():
        power = at_m_to_minus_5 / np.expm1(_PLANCK_C2_M_K / (at_m * kelvin))
        big_x += x_bar * power
        big_y += y_bar * power
        big_z += z_bar * power
    under = big_x + 15.0 * big_y + 3.0 * big_z
    return 4.0 * big_x / under, 9.0 * big_y / under


@lru_cache(maxsize=1024)
def xy_to_cct(x: float, y: float) -> float:
    """Give the correlated color temperature in kelvin of one CIE xy.

    By its definition (CIE 15): the black body nearest to the color in CIE 1960 uv (u = u', v = 2/3 v'),
    searched in reciprocal temperature between 1000 and 100,000 K. Raises ResponseError for a color
    farther than 0.05 from the locus, where CIE 15 gives it no meaning, or beyond either end.
    """
    u, v_prime = xy_to_uv_prime(x, y)
    v = v_prime / 1.5

    def distance(mired: float) -> float:
        locus_u, locus_v_prime = cct_to_uv_prime(min(max(1e6 / mired, CCT_MIN_K), CCT_MAX_K))
        return math.hypot(locus_u - u, locus_v_prime / 1.5 - v)

    first, last = 1e6 / CCT_MAX_K, 1e6 / CCT_MIN_K
    grid = [first + (last - first) * i / _SEARCH_POINTS for i in range(_SEARCH_POINTS + 1)]
    nearest = min(range(len(grid)), key=lambda i: distance(grid[i]))
    mired = _golden(distance, grid[max(nearest - 1, 0)], grid[min(nearest + 1, _SEARCH_POINTS)])
    if not distance(mired) <= CCT_DISTANCE_MAX:
        raise ResponseError(f"x {x:g}, y {y:g} is too far from white light to have a color temperature")
    if min(mired - first, last - mired) < 1e-6 * last and distance(mired) > 1e-6:
        raise ResponseError(
            f"x {x:g}, y {y:g} has a color temperature outside {CCT_MIN_K:.0f} to {CCT_MAX_K:.0f} K"
        )
    return 1e6 / mired


@lru_cache(maxsize=1)
def _weights() -> tuple[tuple[float, float, float, float, float], ...]:
    """Give the observer with its wavelengths in m, and wavelength**-5 scaled to stay near 1."""
    return tuple(
        (nm * 1e-9, x_bar, y_bar, z_bar, (nm / 560.0) ** -5) for nm, x_bar, y_bar, z_bar in CIE_1931_2_DEG
    )


def _golden(distance: Callable[[float], float], left: float, right: float) -> float:
    """Give where a function with one valley between left and right is least, by golden section."""
    ratio = (math.sqrt(5.0) - 1.0) / 2.0
    a, b = right - ratio * (right - left), left + ratio * (right - left)
    at_a, at_b = distance(a), distance(b)
    while right - left > 1e-7 * right:
        if at_a < at_b:
            right, b, at_b = b, a, at_a
            a = right - ratio * (right - left)
            at_a = distance(a)
        else:
            left, a, at_a = a, b, at_b
            b = left + ratio * (right - left)
            at_b = distance(b)
    return (left + right) / 2.0
