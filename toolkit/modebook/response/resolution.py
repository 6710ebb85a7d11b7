"""What a parameter's bits resolve: the step of an angle, hue, color or dimmer, and the bits that would do.

A span lies on a number of intervals: 2**bits - 1 when it fills the parameter, fewer when it has only a
range of the values (`share`, the range's count of values over 2**bits). One step is the span over the
intervals. Plain floats throughout, without numpy, and cached, since a linter asks the same many times.
Spans may be inverted. Impossible figures raise ResponseError.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache

from .color import (
    BT2020_BLUE,
    BT2020_GREEN,
    BT2020_RED,
    ONE_STEP_DELTA_UV_PRIME,
    cct_to_uv_prime,
    cct_to_xy,
    delta_uv_prime,
)
from .dimming import DimmerStep, dimmer_step
from .errors import ResponseError
from .quantize import ALLOWED_BITS, intervals

__all__ = [
    "CHROMATICITY_STEP_MAX",
    "NEAR_WHITES_K",
    "ChromaticityStep",
    "ColorTemperatureStep",
    "DimmerStep",
    "angle_step",
    "bits_for",
    "bits_needed",
    "chromaticity_step",
    "color_temperature_step",
    "dimmer_step",
    "displacement_m",
    "hue_step",
    "intervals",
    "least_bits",
    "longest_fade_without_repeats_s",
    "mired_step",
    "span_step",
]

# The whites that CIE TN 001:2014's step is asked about here, in kelvin.
NEAR_WHITES_K = (2700.0, 6500.0)
_WHITES_K = (2700.0, 3000.0, 3500.0, 4000.0, 5000.0, 5700.0, 6500.0)
# Beyond this a step from a color of the triangle may leave the diagram, where u'v' means nothing.
CHROMATICITY_STEP_MAX = 0.04
_STARTS = 8  # places in a span at which a color temperature step is tried
_EPS = 1e-9  # a step is not refused for the last digit of a float


@dataclass(frozen=True, slots=True)
class ChromaticityStep:
    """The steps of CIE x and y: in x and y, in u'v' near whites, and in u'v' over the BT.2020 triangle.

    step_delta_uv_prime is the larger of one step of x and one step of y, the other held, from a black
    body of 2700 to 6500 K (the white at_k); steps is that over 0.0011; both_delta_uv_prime is a step of
    both at once, in the worse direction. bt2020_delta_uv_prime is the largest single step from anywhere
    in the BT.2020 triangle, a plain distance.
    """

    step_x: float
    step_y: float
    step_delta_uv_prime: float
    steps: float
    at_k: float
    x_delta_uv_prime: float
    y_delta_uv_prime: float
    both_delta_uv_prime: float
    bt2020_delta_uv_prime: float


@dataclass(frozen=True, slots=True)
class ColorTemperatureStep:
    """A step of color temperature where it is largest in u'v' (steps: over 0.0011), in kelvin and mired."""

    step_k: float
    step_delta_uv_prime: float
    steps: float
    step_mired: float
    at_k: float


def span_step(span: float, bits: int, share: float = 1.0) -> float:
    """Give one step of a span, in the span's unit: |span| / intervals. A span of 0 has a step of 0."""
    if not math.isfinite(span):
        raise ResponseError(f"a span of {span:g} is not a number: give the distance between its ends")
    count = intervals(bits, share)
    if span == 0.0:
        return 0.0
    if count <= 0.0:
        raise ResponseError("a span from one figure to another needs at least two values")
    return abs(span) / count


def angle_step(span_deg: float, bits: int, share: float = 1.0) -> float:
    """Give one step in degrees of an angle (pan, tilt, zoom, an index) over `span_deg`."""
    return span_step(span_deg, bits, share)


def hue_step(span_deg: float, bits: int, share: float = 1.0) -> float:
    """Give one step in degrees of a hue over `span_deg` (360 for the whole circle)."""
    return span_step(span_deg, bits, share)


def displacement_m(step_deg: float, throw_m: float) -> float:
    """Give how far in m a beam's spot moves, at most, at `throw_m` when its axis turns by `step_deg`.

    The chord 2 throw sin(step / 2) between two places both `throw_m` away; a beam that is not square to
    the axis it turns on moves less, hence at most. On a surface struck at an angle the spot moves
    farther, by 1 / cos of that angle about, which this does not know of.
    """
    if not (math.isfinite(throw_m) and throw_m >= 0.0):
        raise ResponseError(f"a throw of {throw_m:g} m cannot be: give 0 or more")
    if not math.isfinite(step_deg):
        raise ResponseError(f"a step of {step_deg:g} degrees is not a number: give degrees")
    return 2.0 * throw_m * math.sin(math.radians(min(abs(step_deg), 180.0)) / 2.0)


def bits_for(step_at: Callable[[int], float], threshold: float) -> int | None:
    """Give the least of 8, 16, 24, 32 bits at which `step_at(bits)` is within the threshold, or None.

    Whole bytes only, since a fixture's parameter takes whole slots. None: no resolution cures it.
    """
    if not threshold > 0.0:
        raise ResponseError(f"a threshold of {threshold:g} asks for no step at all: give one above 0")
    for bits in ALLOWED_BITS:
        if step_at(bits) <= threshold * (1.0 + _EPS):
            return bits
    return None


def bits_needed(span: float, threshold: float, share: float = 1.0) -> int | None:
    """Give the least of 8, 16, 24, 32 bits whose step of `span` is within `threshold`, or None.

    Both in one unit. `share` is kept: a range that has half of the values at 8 bits has half of them at
    16. Where it holds no two values, more bits are tried.
    """
    return bits_for(
        lambda bits: (
            span_step(span, bits, share) if span == 0.0 or intervals(bits, share) > 0.0 else math.inf
        ),
        threshold,
    )


def least_bits(span: float, threshold: float) -> int:
    """Give the least whole number of bits whose step is within `threshold`, without rounding to bytes.

    0.8 of CIE x in steps of 0.0001 are 8000 intervals: 13 bits.
    """
    if not (threshold > 0.0 and math.isfinite(span)):
        raise ResponseError("give a span and a threshold above 0")
    count = math.ceil(abs(span) / threshold * (1.0 - _EPS))
    return max(count.bit_length(), 1)


@lru_cache(maxsize=4096)
def chromaticity_step(
    span_x: float,
    span_y: float,
    bits_x: int,
    bits_y: int,
    share_x: float = 1.0,
    share_y: float = 1.0,
    near_whites_k: tuple[float, float] = NEAR_WHITES_K,
) -> ChromaticityStep:
    """Give the largest u'v' distance that one step of CIE x or y makes; the spans are of 0 to 1.

    Near whites: from the black bodies of `near_whites_k`, either way, in multiples of the 0.0011 of
    CIE TN 001:2014. Over the ITU-R BT.2020 triangle: from its corners, where the u'v' plane is stretched
    most, as a plain distance. Where the grid of settable points lies is not known, so a step is taken
    from the white itself: the answer is that of the worst grid.
    """
    for name, span in (("x", span_x), ("y", span_y)):
        if not abs(span) <= 1.0:
            raise ResponseError(f"CIE {name} cannot span {span:g}: it lies within 0 to 1")
    step_x, step_y = span_step(span_x, bits_x, share_x), span_step(span_y, bits_y, share_y)
    if max(step_x, step_y) > CHROMATICITY_STEP_MAX:
        raise ResponseError("CIE x and y in so few values have no neighbors to speak of: give more bits")
    low_k, high_k = min(near_whites_k), max(near_whites_k)
    whites_k = (low_k, *(cct_k for cct_k in _WHITES_K if low_k < cct_k < high_k), high_k)
    rows = [(*_moves(cct_to_xy(cct_k), step_x, step_y), cct_k) for cct_k in whites_k]
    worst_x, worst_y, worst_both = (max(row[i] for row in rows) for i in range(3))
    worst = max(worst_x, worst_y)
    at_k = next(row[3] for row in rows if max(row[0], row[1]) == worst)
    corners = (_moves(corner, step_x, step_y) for corner in (BT2020_RED, BT2020_GREEN, BT2020_BLUE))
    return ChromaticityStep(
        step_x=step_x,
        step_y=step_y,
        step_delta_uv_prime=worst,
        steps=worst / ONE_STEP_DELTA_UV_PRIME,
        at_k=at_k,
        x_delta_uv_prime=worst_x,
        y_delta_uv_prime=worst_y,
        both_delta_uv_prime=worst_both,
        bt2020_delta_uv_prime=max(max(in_x, in_y) for in_x, in_y, _ in corners),
    )


@lru_cache(maxsize=4096)
def color_temperature_step(
    from_k: float,
    to_k: float,
    bits: int,
    *,
    raw: bool = False,
    share: float = 1.0,
    near_whites_k: tuple[float, float] = NEAR_WHITES_K,
) -> ColorTemperatureStep | None:
    """Give the largest u'v' distance of one step within the overlap of the span and `near_whites_k`.

    The value is taken as linear in kelvin between from_k and to_k; `raw` means that the number sent is
    the kelvin itself, so a step is 1 K. None where the span has no overlap with these whites. Along
    the black bodies a kelvin counts most where the temperature is lowest.
    """
    if not (math.isfinite(from_k) and math.isfinite(to_k) and min(from_k, to_k) >= 0.0):
        raise ResponseError(f"a color temperature from {from_k:g} to {to_k:g} K cannot be")
    low_k, high_k = min(from_k, to_k), max(from_k, to_k)
    step_k = 1.0 if raw else span_step(high_k - low_k, bits, share)
    low_k, high_k = max(low_k, min(near_whites_k)), min(high_k, max(near_whites_k))
    if low_k > high_k:
        return None
    last_k = max(low_k, high_k - step_k)
    best = (-1.0, low_k)
    for i in range(_STARTS + 1):
        start_k = low_k + (last_k - low_k) * i / _STARTS
        u_a, v_a = cct_to_uv_prime(start_k)
        u_b, v_b = cct_to_uv_prime(start_k + step_k)
        best = max(best, (math.hypot(u_b - u_a, v_b - v_a), start_k))
    distance, at_k = best
    return ColorTemperatureStep(
        step_k=step_k,
        step_delta_uv_prime=distance,
        steps=distance / ONE_STEP_DELTA_UV_PRIME,
        step_mired=1e6 / at_k - 1e6 / (at_k + step_k),
        at_k=at_k,
    )


@lru_cache(maxsize=4096)
def mired_step(
    from_mired: float,
    to_mired: float,
    bits: int,
    *,
    raw: bool = False,
    share: float = 1.0,
    near_whites_k: tuple[float, float] = NEAR_WHITES_K,
) -> ColorTemperatureStep | None:
    """Give what color_temperature_step gives, for a value that is linear in mired (1e6 / K) instead.

    `raw` means that the number sent is the mired itself. The ends are above 0.
    """
    low, high = min(from_mired, to_mired), max(from_mired, to_mired)
    if not (low > 0.0 and math.isfinite(high)):
        raise ResponseError(f"a color temperature from {from_mired:g} to {to_mired:g} mired cannot be")
    step_mired = 1.0 if raw else span_step(high - low, bits, share)
    low, high = max(low, 1e6 / max(near_whites_k)), min(high, 1e6 / min(near_whites_k))
    if low > high:
        return None
    last = max(low, high - step_mired)
    best = (-1.0, low)
    for i in range(_STARTS + 1):
        start = low + (last - low) * i / _STARTS
        u_a, v_a = cct_to_uv_prime(1e6 / start)
        u_b, v_b = cct_to_uv_prime(1e6 / (start + step_mired))
        best = max(best, (math.hypot(u_b - u_a, v_b - v_a), start))
    distance, at = best
    return ColorTemperatureStep(
        step_k=1e6 / at - 1e6 / (at + step_mired),
        step_delta_uv_prime=distance,
        steps=distance / ONE_STEP_DELTA_UV_PRIME,
        step_mired=step_mired,
        at_k=1e6 / at,
    )


def longest_fade_without_repeats_s(bits: int, refresh_hz: float, share: float = 1.0) -> float:
    """Give how long in s a fade over the full scale can last before packets must repeat values.

    (2**bits - 1) / refresh_hz: 8.5 s for 8 bits at 30 packets a second.
    """
    if not (math.isfinite(refresh_hz) and refresh_hz > 0.0):
        raise ResponseError(f"a rate of {refresh_hz:g} Hz sends no packets: give a rate above 0")
    return intervals(bits, share) / refresh_hz


def _moves(at: tuple[float, float], step_x: float, step_y: float) -> tuple[float, float, float]:
    """Give the largest u'v' distance from a point by a step of x, of y, and of both, either way."""
    x, y = at
    in_x = max(delta_uv_prime(x, y, x + dx, y) for dx in (step_x, -step_x))
    in_y = max(delta_uv_prime(x, y, x, y + dy) for dy in (step_y, -step_y))
    both = max(delta_uv_prime(x, y, x + dx, y + dy) for dx in (step_x, -step_x) for dy in (step_y, -step_y))
    return in_x, in_y, both
