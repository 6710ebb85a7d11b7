"""A camera: which stretch of time each of its frames sees, and the light it gathers there, exactly."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from .errors import ResponseError
from .signal import Array
from .transfer import Light

FPS_MAX = 100_000.0
ROUNDING = 1e-9


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
