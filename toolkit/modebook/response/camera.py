"""A camera: which stretch of time each of its frames sees, and the light it gathers there, exactly."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import ArrayLike, NDArray

from .errors import ResponseError
from .signal import Array, Signal
from .transfer import Light

FPS_MAX = 100_000.0
ROUNDING = 1e-9
POINTS_MOST = 4  # pieces of a polygon that one shutter time may span and be summed point by point


@dataclass(frozen=True, slots=True)
class Camera:
    """A camera's rate and shutter.

    fps: frames a second. shutter_deg: 0 to 360, the share of the frame during which it gathers light
    (180 unless said), or shutter_s in s, at most one frame. phase: where in its frame the camera stands
    at the cue's packet 0, from 0 to below 1: frame n opens at (phase + n) / fps. None: the worst phase is
    searched. readout_s: the time in s from the first row's opening to the last's (rolling readout); at
    the worst phase every row is covered already. Raises ResponseError.
    """

    fps: float
    shutter_deg: float | None = None
    shutter_s: float | None = None
    phase: float | None = None
    readout_s: float = 0.0

    def __post_init__(self) -> None:
        if not 0.0 < self.fps <= FPS_MAX:
            raise ResponseError(f"a camera of {self.fps:g} fps cannot be: give a rate above 0")
        if self.shutter_deg is not None and self.shutter_s is not None:
            raise ResponseError("a shutter is given by its angle or by its time, not both")
        if self.shutter_deg is not None and not 0.0 < self.shutter_deg <= 360.0:
            raise ResponseError(f"a shutter of {self.shutter_deg:g} degrees cannot be: give above 0 to 360")
        if self.shutter_s is not None and not 0.0 < self.shutter_s <= self.frame_s * (1 + ROUNDING):
            raise ResponseError(
                f"a shutter of {self.shutter_s:g} s cannot be at {self.fps:g} fps: "
                f"give above 0 to the frame's {self.frame_s:.6g} s"
            )
        if self.phase is not None and not 0.0 <= self.phase < 1.0:
            raise ResponseError(f"a camera phase of {self.phase:g} cannot be: give 0 to below 1")
        if not (math.isfinite(self.readout_s) and 0.0 <= self.readout_s <= self.frame_s * (1 + ROUNDING)):
            raise ResponseError(
                f"a readout of {self.readout_s:g} s cannot be: give 0 to the frame's {self.frame_s:.6g} s"
            )

    @property
    def frame_s(self) -> float:
        """The time from one frame's opening to the next."""
        return 1.0 / self.fps

    @property
    def open_s(self) -> float:
        """The time for which the shutter is open."""
        if self.shutter_s is not None:
            return self.shutter_s
        return (180.0 if self.shutter_deg is None else self.shutter_deg) / 360.0 * self.frame_s

    def openings_s(self, from_s: float, to_s: float, row: float = 0.0) -> Array:
        """Give when the frames open whose exposures touch from_s to to_s, one more on each side, [F], in s.

        row: 0 for the picture's first row to 1 for the last, which opens readout_s later. Needs a phase.
        """
        if self.phase is None:
            raise ResponseError("a camera without a phase has no frame times: give its phase")
        lead_s = self.phase * self.frame_s + row * self.readout_s
        first = math.floor((from_s - self.open_s - lead_s) * self.fps + ROUNDING) - 1
        last = math.ceil((to_s - lead_s) * self.fps - ROUNDING) + 1
        return np.asarray(np.arange(first, last + 1) * self.frame_s + lead_s, dtype=np.float64)


def exposures(light: Light, openings_s: ArrayLike, open_s: float) -> Array:
    """Give the mean light over each open shutter, [B, F], by exact integration.

    openings_s: [F] for all signals alike, or [B, F], in s; open_s: the shutter time in s, above 0.
    """
    opens = np.asarray(openings_s, dtype=np.float64)
    if isinstance(light, Signal) and light.joined and opens.ndim == 1:
        shares = _shares(light.times_s.tobytes(), opens.tobytes(), open_s)
        if shares is not None:
            return _by_points(light.start, *shares)
    gathered = light.area(opens + open_s)
    gathered -= light.area(opens)
    gathered /= open_s
    return gathered


def partly_exposed(moving_s: float, camera: Camera) -> tuple[int, int]:
    """Give the fewest and the most frames that see a change which takes moving_s (s) only in part.

    A frame is partly exposed when the change neither ends before it opens nor starts after it closes:
    its opening lies within an open stretch of moving_s + open_s (+ readout_s, for any of its rows), and
    the openings are one frame apart.
    """
    stretch = (moving_s + camera.open_s + camera.readout_s) * camera.fps
    most = math.ceil(stretch - ROUNDING)
    return max(most - 1, 0), most


@lru_cache(maxsize=16)
def _shares(times_s: bytes, openings_s: bytes, open_s: float) -> tuple[NDArray[np.intp], Array] | None:
    """Give which points of a polygon each shutter time sees, and with what shares, [N, F] each.

    times_s, openings_s: arrays of float64 as bytes, by which the blocks of one computation find what the
    first of them worked out. None where a shutter spans so many points that sums are not faster.
    """
    times, opens = np.frombuffer(times_s), np.frombuffer(openings_s)
    closes = opens + open_s
    first = np.maximum(np.searchsorted(times, opens, side="right") - 1, 0)
    last = np.maximum(np.searchsorted(times, closes, side="left") - 1, first)
    pieces = int((last - first).max(initial=0)) + 1
    if pieces > POINTS_MOST:
        return None
    ends = np.append(times[1:], np.inf)
    points = np.minimum(first + np.arange(pieces + 1)[:, None], len(times) - 1)
    shares = np.zeros(points.shape)
    for n in range(pieces):
        piece = np.minimum(first + n, len(times) - 1)
        begin = np.where(piece == 0, opens, np.maximum(opens, times[piece]))
        seen_s = np.where(first + n <= last, np.minimum(closes, ends[piece]) - begin, 0.0)
        # Light that runs straight counts as at the middle of what is seen of it: so far along its piece.
        along = (begin + 0.5 * seen_s - times[piece]) / (ends[piece] - times[piece])
        along = np.where(piece == 0, 0.0, along) * seen_s
        shares[n] += (seen_s - along) / open_s
        shares[n + 1] += along / open_s
    return points, shares


def _by_points(values: Array, points: NDArray[np.intp], shares: Array) -> Array:
    """Give the sums of values, [B, K], at points with shares, [N, F] each."""
    total: Array = values.take(points[0], axis=1)
    total *= shares[0]
    for point, share in zip(points[1:], shares[1:], strict=True):
        if share.any():
            part = values.take(point, axis=1)
            part *= share
            total += part
    return total
