"""What a person knows of a measurement: the desk's rate, the camera's shutter and readout, the curves."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal, TypeAlias

from modebook.measure.errors import MeasureError

Tone: TypeAlias = Literal["srgb", "bt709", "linear"]
TONES: tuple[Tone, ...] = ("srgb", "bt709", "linear")


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle of a picture in pixels: left, top, width, height."""

    x: int
    y: int
    width: int
    height: int

    def __str__(self) -> str:
        return f"{self.x},{self.y},{self.width},{self.height}"


@dataclass(frozen=True, slots=True)
class Setup:
    """The circumstances of a measurement; see the command's options of the same names.

    refresh_hz: packets a second from the desk; None where nobody knows. gateway_hz: packets a second on
    the fixture's line behind a gateway. shutter_deg or shutter_s: for how long the camera (or a meter)
    gathers light; neither: fitted for a clip, nothing for a trace. readout_s: first to last row, in s.
    delay_s: what the link is known to wait between the time of sending and the fixture. shutter_s may be
    more than a frame never. Raises MeasureError for figures that cannot be.
    """

    refresh_hz: float | None = None
    gateway_hz: float | None = None
    shutter_deg: float | None = None
    shutter_s: float | None = None
    readout_s: float = 0.0
    delay_s: float = 0.0
    box: Box | None = None
    reference: Box | None = None
    tone: Tone | None = None
    gray: tuple[tuple[float, float], ...] | None = None
    start_s: float = 0.0
    end_s: float | None = None

    def __post_init__(self) -> None:
        for name, rate in (("--refresh", self.refresh_hz), ("--gateway-hz", self.gateway_hz)):
            if rate is not None and not 0.0 < rate <= 1000.0:
                raise MeasureError(name, f"{rate:g} packets a second cannot be", remedy="give such as 44")
        if self.shutter_deg is not None and self.shutter_s is not None:
            raise MeasureError("--shutter", "a shutter is an angle or a time, not both", remedy="give one")
        if self.shutter_deg is not None and not 0.0 < self.shutter_deg <= 360.0:
            raise MeasureError(
                "--shutter", f"{self.shutter_deg:g} degrees cannot be", remedy="give above 0 to 360"
            )
        for name, time_s in (
            ("--shutter-s", self.shutter_s),
            ("--readout-s", self.readout_s),
            ("--delay-s", self.delay_s),
        ):
            if time_s is not None and not (math.isfinite(time_s) and 0.0 <= time_s <= 1.0):
                raise MeasureError(name, f"{time_s:g} s cannot be", remedy="give 0 to 1")

    @property
    def line_hz(self) -> float | None:
        """The rate of the packets that the fixture hears, where known."""
        return self.gateway_hz if self.gateway_hz is not None else self.refresh_hz

    @property
    def made_s(self) -> float:
        """The desk's packet time, in s, where a gateway sends on at another rate; else 0."""
        if self.refresh_hz is None or self.gateway_hz in (None, self.refresh_hz):
            return 0.0
        return 1.0 / self.refresh_hz

    def open_s(self, fps: float | None) -> float | None:
        """For how long each frame gathers light, in s, where known."""
        if self.shutter_s is not None:
            return self.shutter_s
        if self.shutter_deg is not None and fps is not None:
            return self.shutter_deg / 360.0 / fps
        return None
