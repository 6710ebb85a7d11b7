"""What of a change of light is seen: steps in percent of full, in stops and in JNDs. An estimate.

Light (0 to 1 of full) falls on a subject whose white then has `white_cd_m2`; the share `fill` of that
comes from other lights, which do not move: L = white_cd_m2 * (fill + (1 - fill) * light). JNDs are
indexes of the NEMA PS3.14 grayscale function, from 0.05 to 3993 cd/m2; luminance below 0.05 is clamped
for JNDs and for stops alike, since a step from 0 has no size in stops.

The function was made for still gratings looked at long. A step in time is another task: a single small
step is seen a little worse than its figure says, an uneven run of them about as well, and a camera's
own noise hides some. Take a figure between half and twice the threshold as undecided.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import ArrayLike

from .errors import ResponseError
from .signal import Array
from .visibility import LUMINANCE_MAX_CD_M2, LUMINANCE_MIN_CD_M2, jnd_index

THRESHOLD_JND = 1.0  # a stepping of more than one just-noticeable difference counts as seen
MARGIN_FACTOR = (
    2.0  # an estimate within this factor of the threshold is undecided: common practice, no source
)

CELLS = 8192
ROOT_MIN, ROOT_MAX = LUMINANCE_MIN_CD_M2**0.25, LUMINANCE_MAX_CD_M2**0.25


@dataclass(frozen=True, slots=True)
class Viewing:
    """White luminance in cd/m2 (0.05 to 3993) and the share of it (0 to below 1) that other lights give."""

    white_cd_m2: float = 100.0
    fill: float = 0.0

    def __post_init__(self) -> None:
        if not LUMINANCE_MIN_CD_M2 < self.white_cd_m2 <= LUMINANCE_MAX_CD_M2:
            raise ResponseError(
                f"a white of {self.white_cd_m2:g} cd/m2 is outside what the JND function holds for: "
                f"give above {LUMINANCE_MIN_CD_M2:g} to {LUMINANCE_MAX_CD_M2:g}"
            )
        if not 0.0 <= self.fill < 1.0:
            raise ResponseError(f"a share of other light of {self.fill:g} cannot be: give 0 to below 1")

    def luminance_cd_m2(self, light: ArrayLike) -> Array:
        """Give the luminance in cd/m2 of light (0 to 1), same shape, at least 0.05 and at most 3993."""
        lit = np.asarray(light, dtype=np.float64) * (self.white_cd_m2 * (1.0 - self.fill))
        lit += self.white_cd_m2 * self.fill
        return np.asarray(np.clip(lit, LUMINANCE_MIN_CD_M2, LUMINANCE_MAX_CD_M2, out=lit))

    def jnd(self, light: ArrayLike) -> Array:
        """Give the JND index (NEMA PS3.14) of light (0 to 1), same shape."""
        return jnd_of(self.luminance_cd_m2(light))


def jnd_of(luminance_cd_m2: Array) -> Array:
    """Give the JND index (same shape) of luminances of 0.05 to 3993 cd/m2, within 1e-4 of jnd_index.

    From straight lines between CELLS values that are even in the fourth root of luminance, along which the
    index is nearly straight: a third of the polynomial's time.
    """
    base, rise = _lines()
    at = np.sqrt(luminance_cd_m2)
    np.sqrt(at, out=at)
    at -= ROOT_MIN
    at *= CELLS / (ROOT_MAX - ROOT_MIN)
    cell = at.astype(np.intp)
    at *= rise.take(cell)
    at += base.take(cell)
    return at


@lru_cache(maxsize=1)
def _lines() -> tuple[Array, Array]:
    """Give the index's lines over each cell, as value at cell 0 and rise a cell, [CELLS + 1] each."""
    roots = np.linspace(ROOT_MIN, ROOT_MAX, CELLS + 1)
    index = jnd_index(roots**4)
    rise = np.append(np.diff(index), 0.0)
    return index - rise * np.arange(CELLS + 1), rise


def is_seen(stepping_jnd: float) -> bool:
    """Say whether a stepping is seen, by the estimate."""
    return stepping_jnd > THRESHOLD_JND


def is_undecided(stepping_jnd: float) -> bool:
    """Say whether an estimate lies too near the threshold to be relied on."""
    return THRESHOLD_JND / MARGIN_FACTOR < stepping_jnd <= THRESHOLD_JND * MARGIN_FACTOR
