"""A filming camera: exposure of each row of each frame, transfer function, noise, clipping, mains flicker."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from .light import Light

Floats = NDArray[np.float64]
PARTS = 16  # an exposure is cut in so many for the product of light and the lamp's own flicker


@dataclass(frozen=True, slots=True)
class Flicker:
    """Mains flicker: a sine at hz (100 or 120) with depth 0 to 1, on other light of level `other`, on the
    lamp itself, or both."""

    hz: float = 100.0
    phase: float = 0.0
    other: float = 0.0
    other_depth: float = 0.0
    lamp_depth: float = 0.0


STEADY = Flicker()


@dataclass(frozen=True, slots=True)
class Camera:
    """Frame rate, shutter, readout from the picture's top to its bottom, and what the sensor makes of light.

    gain: the linear value, 1 clipping, that full light has in the patch's middle. read_noise and shot_noise
    are standard deviations in linear values, of a dark pixel and (added in squares) of one at 1.
    drop: share of frames lost; jitter: standard deviation of a frame's time, in frames.
    """

    fps: float
    shutter_deg: float
    readout_s: float = 0.0
    gain: float = 0.7
    black: float = 0.004
    read_noise: float = 0.002
    shot_noise: float = 0.01
    transfer: str = "bt709"
    drop: float = 0.0
    jitter: float = 0.0
    flicker: Flicker = STEADY

    @property
    def open_s(self) -> float:
        """The exposure time in s."""
        return self.shutter_deg / 360.0 / self.fps

    def starts_s(self, seconds: float, seed: int) -> Floats:
        """Give when the first row of each frame begins its exposure, in s, over `seconds` of film."""
        rng = np.random.default_rng((seed, 1))
        starts = np.arange(int(seconds * self.fps)) / self.fps
        if self.jitter:
            starts = starts + rng.normal(0.0, self.jitter, starts.size).clip(-0.2, 0.2) / self.fps
        if self.drop:
            keep = rng.random(starts.size) >= self.drop
            keep[0] = True
            starts = starts[keep]
        return np.asarray(starts, dtype=np.float64)


def exposures(light: Light, starts_s: Floats, open_s: float, flicker: Flicker = STEADY) -> Floats:
    """Give the mean light while the shutter is open, for exposures that begin at starts_s, with the lamp's
    own flicker and the other light added."""
    if flicker.lamp_depth:
        edges = starts_s[..., None] + np.arange(PARTS + 1) * (open_s / PARTS)
        lit = np.diff(light.integral(edges), axis=-1) / (open_s / PARTS)
        ripple = 1.0 + flicker.lamp_depth * _sine_means(edges, flicker)
        mean = np.asarray((lit * ripple).mean(axis=-1))
    else:
        mean = (light.integral(starts_s + open_s) - light.integral(starts_s)) / open_s
    if flicker.other:
        edges = np.stack((starts_s, starts_s + open_s), axis=-1)
        mean = mean + flicker.other * (1.0 + flicker.other_depth * _sine_means(edges, flicker)[..., 0])
    return mean


def _sine_means(edges_s: Floats, flicker: Flicker) -> Floats:
    """The mean of the flicker's sine between neighboring edges."""
    turn = 2.0 * np.pi * flicker.hz
    return np.diff(-np.cos(turn * edges_s + flicker.phase) / turn, axis=-1) / np.diff(edges_s, axis=-1)


def encoded(linear: Floats, transfer: str) -> Floats:
    """Give code values 0 to 1 for linear values, clipped at 0 and 1.

    srgb: IEC 61966-2-1. bt709: ITU-R BT.709-6, item 1.2 (the camera's curve). linear: as it is.
    """
    held = np.clip(linear, 0.0, 1.0)
    if transfer == "linear":
        return held
    if transfer == "srgb":
        return np.where(held <= 0.0031308, 12.92 * held, 1.055 * held ** (1 / 2.4) - 0.055)
    if transfer == "bt709":
        return np.where(held < 0.018, 4.5 * held, 1.099 * np.maximum(held, 1e-9) ** 0.45 - 0.099)
    raise ValueError(f"{transfer!r} is no transfer function: give srgb, bt709 or linear")
