"""Code values of a picture to light: the curves of sRGB and BT.709, or one fitted from a gray scale.

sRGB: IEC 61966-2-1. BT.709: ITU-R BT.709-6, the inverse of its camera curve (OETF). A player's curve
(BT.1886) is another thing: here the light in front of the camera is asked for. Phones and cameras bend
these curves to their taste, so a gray scale shot with the same camera is better than either.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import ArrayLike, NDArray

from modebook.measure.errors import MeasureError
from modebook.measure.setup import Tone

# IEC 61966-2-1: V = 12.92 L below L = 0.0031308, 1.055 L^(1/2.4) - 0.055 above.
_SRGB_KNEE = 0.04045
# ITU-R BT.709-6: V = 4.5 L below L = 0.018, 1.099 L^0.45 - 0.099 above.
_BT709_KNEE = 1.099 * 0.018**0.45 - 0.099  # where its upper branch reaches 0.018 of light


def to_light(code: ArrayLike, tone: Tone) -> NDArray[np.float64]:
    """Give the light (0 to 1, same shape) of code values (0 to 1; beyond is clamped) by a curve's name."""
    value = np.clip(np.asarray(code, dtype=np.float64), 0.0, 1.0)
    if tone == "linear":
        return value
    if tone == "srgb":
        return np.asarray(np.where(value <= _SRGB_KNEE, value / 12.92, ((value + 0.055) / 1.055) ** 2.4))
    return np.asarray(np.where(value < _BT709_KNEE, value / 4.5, ((value + 0.099) / 1.099) ** (1.0 / 0.45)))


def from_light(light: ArrayLike, tone: Tone) -> NDArray[np.float64]:
    """Give the code values (0 to 1, same shape) of light (0 to 1; beyond is clamped)."""
    value = np.clip(np.asarray(light, dtype=np.float64), 0.0, 1.0)
    if tone == "linear":
        return value
    if tone == "srgb":
        return np.where(value <= 0.0031308, value * 12.92, 1.055 * value ** (1 / 2.4) - 0.055)
    return np.where(value < 0.018, value * 4.5, 1.099 * value**0.45 - 0.099)


def fitted(pairs: Sequence[tuple[float, float]], code: ArrayLike) -> NDArray[np.float64]:
    """Give the light of code values by a gray scale: pairs of code value and light, each 0 to 1.

    Between the patches it runs straight in the cube root of light, which is nearly what such curves are;
    beyond the ends the last two patches go on. Raises MeasureError for fewer than three patches or light
    that does not rise with the code value.
    """
    scale = sorted(pairs)
    codes = np.array([pair[0] for pair in scale])
    roots = np.cbrt(np.array([pair[1] for pair in scale]))
    if len(scale) < 3 or (np.diff(codes) <= 0).any() or (np.diff(roots) <= 0).any():
        raise MeasureError(
            "gray scale",
            "light must rise with the code value over at least 3 patches",
            remedy="give a table with the columns code and light, darkest first",
        )
    value = np.asarray(code, dtype=np.float64)
    inside = np.interp(value, codes, roots)
    low = roots[0] + (value - codes[0]) * (roots[1] - roots[0]) / (codes[1] - codes[0])
    high = roots[-1] + (value - codes[-1]) * (roots[-1] - roots[-2]) / (codes[-1] - codes[-2])
    root = np.where(value < codes[0], low, np.where(value > codes[-1], high, inside))
    return np.asarray(np.maximum(root, 0.0) ** 3)


def table(
    tone: Tone, gray: Sequence[tuple[float, float]] | None, full_range: bool, bits: int = 8
) -> NDArray[np.float64]:
    """Give the light of each luma code of so many bits, [2^bits]; in the limited range of 8 bits 16 is black
    and 235 white, in that of more bits as many times that (ITU-R BT.709-6, item 4.6).

    Codes beyond white (236 to 254) keep rising: cameras record there what is brighter than white.
    """
    codes = np.arange(2.0**bits)
    value = codes / codes[-1] if full_range else (codes / 2.0 ** (bits - 8) - 16.0) / 219.0
    if gray is not None:
        return fitted(gray, value)
    light = to_light(value, tone)
    above = value > 1.0
    if above.any():
        slope = (to_light(1.0, tone) - to_light(0.99, tone)) / 0.01
        light[above] = 1.0 + (value[above] - 1.0) * slope
    return np.asarray(light)
