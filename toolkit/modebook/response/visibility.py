"""Luminance to just-noticeable differences and back: the grayscale standard display function of NEMA PS3.14.

Source: NEMA PS3.14 (DICOM part 14), grayscale standard display function: luminance as a ratio of two
polynomials in ln j, and the index j as a polynomial of degree 8 in log10 L, with the coefficients of
the standard. One index is one just-noticeable difference (JND) of the standard's observer, for a
still grating of 4 cycles per degree on a uniform field; a step in time is another task, so what
follows from it is an estimate. It holds from 0.05 cd/m2 (index 1) to 3993 cd/m2 (index 1023): luminance
outside is clamped. The two polynomials agree with each other within 0.11 of an index (measured).
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from .errors import ResponseError

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import ArrayLike, NDArray

LUMINANCE_MIN_CD_M2 = 0.05
LUMINANCE_MAX_CD_M2 = 3993.0
JND_MIN = 1.0
JND_MAX = 1023.0

# PS3.14: j(L) = A + B lg L + C lg^2 L + ... + I lg^8 L, lg being log10.
_INDEX = (
    71.498068,
    94.593053,
    41.912053,
    9.8247004,
    0.28175407,
    -1.1878455,
    -0.18014349,
    0.14710899,
    -0.017046845,
)
# PS3.14: log10 L(j) = (a + c x + e x^2 + g x^3 + m x^4) / (1 + b x + d x^2 + f x^3 + h x^4 + k x^5),
# x being ln j.
_OVER = (-1.3011877, 8.0242636e-2, 1.3646699e-1, -2.5468404e-2, 1.3635334e-3)
_UNDER = (1.0, -2.5840191e-2, -1.0320229e-1, 2.8745620e-2, -3.1978977e-3, 1.2992634e-4)


def jnd_index_at(luminance_cd_m2: float) -> float:
    """Give the JND index of one luminance in cd/m2, clamped to 0.05..3993; plain floats, without numpy.

    Source: NEMA PS3.14. NaN raises ResponseError.
    """
    if math.isnan(luminance_cd_m2):
        raise ResponseError("a luminance is not a number: give cd/m2")
    lg = math.log10(min(max(luminance_cd_m2, LUMINANCE_MIN_CD_M2), LUMINANCE_MAX_CD_M2))
    index = 0.0
    for coefficient in reversed(_INDEX):
        index = index * lg + coefficient
    return index


def jnd_index(luminance_cd_m2: ArrayLike) -> NDArray[np.float64]:
    """Give the JND index (same shape) of luminance in cd/m2, clamped to 0.05..3993. Source: NEMA PS3.14.

    NaN stays NaN.
    """
    import numpy as np

    clamped = np.clip(np.asarray(luminance_cd_m2, dtype=np.float64), LUMINANCE_MIN_CD_M2, LUMINANCE_MAX_CD_M2)
    return _horner(np.log10(clamped), _INDEX)


def luminance(jnd: ArrayLike) -> NDArray[np.float64]:
    """Give the luminance in cd/m2 (same shape) of a JND index, clamped to 1..1023. Source: NEMA PS3.14.

    NaN stays NaN.
    """
    import numpy as np

    x = np.log(np.clip(np.asarray(jnd, dtype=np.float64), JND_MIN, JND_MAX))
    return np.asarray(10.0 ** (_horner(x, _OVER) / _horner(x, _UNDER)))


def _horner(x: NDArray[np.float64], coefficients: tuple[float, ...]) -> NDArray[np.float64]:
    import numpy as np

    total = np.full_like(x, coefficients[-1])
    for coefficient in reversed(coefficients[:-1]):
        total *= x
        total += coefficient
    return total
