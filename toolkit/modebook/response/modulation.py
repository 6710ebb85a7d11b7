"""A modulated light under a camera's shutter: differences between frames, bands over a rolling readout.

Exact for the two waveforms here, by closed forms. A period has length 1 and the open shutter covers
w = frequency * exposure periods. The exposure as a function of the phase at which the shutter opens is
for PWM a trapezoid (the overlap of two boxes, slope depth), for a sine a sine. Phases are taken as
unknown: each answer is the greatest over all of them.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from .errors import ResponseError

Waveform = Literal["pwm", "sine"]


@dataclass(frozen=True, slots=True)
class Modulation:
    """A light's modulation: waveform, frequency in Hz, duty (PWM only) and depth, both 0 to 1.

    'pwm': light 1 for `duty` of the period, 1 - depth for the rest. 'sine': 1 + depth sin(2 pi t f),
    depth being (max - min) / (max + min). Raises ResponseError.
    """

    waveform: Waveform
    frequency_hz: float
    duty: float = 0.5
    depth: float = 1.0

    def __post_init__(self) -> None:
        if self.waveform not in ("pwm", "sine"):
            raise ResponseError(f"waveform {self.waveform!r} is unknown: give 'pwm' or 'sine'")
        _positive("a modulation frequency", "Hz", self.frequency_hz)
        if not 0.0 < self.duty <= 1.0:
            raise ResponseError(f"a duty of {self.duty:g} cannot be: give above 0, to 1")
        if not 0.0 <= self.depth <= 1.0:
            raise ResponseError(f"a depth of {self.depth:g} cannot be: give 0 to 1")

    @property
    def mean(self) -> float:
        """Give the mean light."""
        return 1.0 if self.waveform == "sine" else 1.0 - self.depth * (1.0 - self.duty)


@dataclass(frozen=True, slots=True)
class FrameDifference:
    """How far camera frames differ in exposure, each a share of the mean exposure (stops for `long_stops`).

    successive: the greatest between one frame and the next. long: the greatest between any two frames of
    a long take, in which every phase comes to pass since no two clocks keep step; long_stops the same as
    a ratio, infinite where a frame may get no light.
    """

    exposure_s: float
    successive: float
    long: float
    long_stops: float


@dataclass(frozen=True, slots=True)
class Bands:
    """Bands over a rolling readout: how many, each one's height as a share of the picture, their contrast.

    difference is the greatest between two rows of one frame, as a share of the mean exposure.
    drift_per_frame is how far the bands move from frame to frame, in bands (-0.5 to 0.5; 0 stands still).
    """

    count: float
    height: float
    difference: float
    drift_per_frame: float


def exposure_s(fps: float, shutter_deg: float) -> float:
    """Give the time in s that the shutter is open: shutter_deg / 360 / fps. Raises ResponseError."""
    _positive("a frame rate", "fps", fps)
    if not 0.0 < shutter_deg <= 360.0:
        raise ResponseError(f"a shutter of {shutter_deg:g} degrees cannot be: give above 0, to 360")
    return shutter_deg / 360.0 / fps


def exposure(light: Modulation, open_s: float, phase: float) -> float:
    """Give the light in s (mean light 1 for 1 s gives 1) through a shutter open for open_s from `phase`.

    phase is in periods, 0 where PWM switches on or the sine rises through its mean.
    """
    _positive("an exposure", "s", open_s)
    w = light.frequency_hz * open_s
    if light.waveform == "sine":
        swing = light.depth * math.sin(math.pi * w) / math.pi * math.sin(2.0 * math.pi * (phase + w / 2.0))
        return (w + swing) / light.frequency_hz
    on = math.floor(w) * light.duty + _overlap(phase, w - math.floor(w), light.duty)
    return ((1.0 - light.depth) * w + light.depth * on) / light.frequency_hz


def frame_difference(light: Modulation, fps: float, shutter_deg: float) -> FrameDifference:
    """Give the greatest difference in exposure between frames of a camera; see FrameDifference."""
    open_s = exposure_s(fps, shutter_deg)
    w = light.frequency_hz * open_s
    advance = _fraction(light.frequency_hz / fps)
    mean = light.mean * w
    swing = _swing(light, w)
    if light.waveform == "sine":
        successive = swing * math.sin(math.pi * advance)
        lowest = mean - swing / 2.0
    else:
        whole, rest = _split(w)
        successive = light.depth * _trapezoid_change(rest, light.duty, advance)
        lowest = (1.0 - light.depth) * w + light.depth * (
            whole * light.duty + max(0.0, rest + light.duty - 1.0)
        )
    # Sums of exact parts leave a residue of some 1e-16 of the mean, which is no light.
    dark = lowest <= 1e-12 * mean
    return FrameDifference(
        exposure_s=open_s,
        successive=successive / mean,
        long=swing / mean,
        long_stops=math.inf if dark else math.log2((lowest + swing) / lowest),
    )


def bands(light: Modulation, fps: float, shutter_deg: float, readout_s: float) -> Bands:
    """Give the bands that a rolling readout of readout_s (first to last row) shows; see Bands.

    readout_s is above 0, at most a frame. Raises ResponseError.
    """
    open_s = exposure_s(fps, shutter_deg)
    _positive("a readout", "s", readout_s)
    if readout_s > (1.0 + 1e-9) / fps:
        raise ResponseError(
            f"a readout of {readout_s:g} s is longer than the frame: give {1.0 / fps:g} s at most"
        )
    w = light.frequency_hz * open_s
    count = light.frequency_hz * readout_s
    swing = _swing(light, w)
    if light.waveform == "sine":
        difference = swing * math.sin(math.pi * min(count, 0.5))
    else:
        # The trapezoid's flanks have slope `depth` and height `swing`: rows `count` periods apart or
        # less differ by no more, and by that much on a flank.
        difference = min(swing, light.depth * count)
    advance = _fraction(light.frequency_hz / fps)
    return Bands(
        count=count,
        height=1.0 / count,
        difference=difference / (light.mean * w),
        drift_per_frame=advance - 1.0 if advance > 0.5 else advance,
    )


def shutter_without_flicker_deg(frequency_hz: float, fps: float) -> list[float]:
    """Give the shutter angles in degrees, rising to 360, open for whole periods: frames are alike."""
    _positive("a modulation frequency", "Hz", frequency_hz)
    _positive("a frame rate", "fps", fps)
    return [360.0 * n * fps / frequency_hz for n in range(1, math.floor(frequency_hz / fps * (1 + 1e-9)) + 1)]


def _swing(light: Modulation, w: float) -> float:
    """Give the greatest less the least exposure over all phases, in periods."""
    if light.waveform == "sine":
        return 2.0 * light.depth * abs(math.sin(math.pi * _fraction(w))) / math.pi
    rest = _fraction(w)
    return light.depth * min(rest, 1.0 - rest, light.duty, 1.0 - light.duty)


def _overlap(phase: float, w: float, duty: float) -> float:
    """Give how much of the window [phase, phase + w), w below 1, lies where PWM is on: [n, n + duty)."""
    start = phase - math.floor(phase)
    now = max(0.0, min(start + w, duty) - start)
    following = max(0.0, min(start + w - 1.0, duty))
    return now + following


def _trapezoid_change(w: float, duty: float, advance: float) -> float:
    """Give the greatest change of the overlap when its phase moves on by `advance`, over all phases.

    The change is piecewise linear in the phase: it is greatest at a corner of the one or the other.
    """
    corners = (0.0, duty, -w, duty - w)
    phases = (corner - shift for corner in corners for shift in (0.0, advance))
    return max(abs(_overlap(phase + advance, w, duty) - _overlap(phase, w, duty)) for phase in phases)


def _split(periods: float) -> tuple[int, float]:
    """Give the whole periods and the part beyond them; within 1e-9 of a whole number it is whole."""
    nearest = round(periods)
    if abs(periods - nearest) <= 1e-9 * max(periods, 1.0):
        return nearest, 0.0
    whole = math.floor(periods)
    return whole, periods - whole


def _fraction(periods: float) -> float:
    """Give the part of a period beyond whole ones, as _split does."""
    return _split(periods)[1]


def _positive(what: str, unit: str, figure: float) -> None:
    if not (math.isfinite(figure) and figure > 0.0):
        raise ResponseError(f"{what} of {figure:g} {unit} cannot be: give one above 0")
