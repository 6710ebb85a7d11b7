"""Frames of a clip: a lit patch, perhaps a reference light, on a dark background, as 8-bit luma."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from .camera import Camera, encoded, exposures
from .light import Light

Floats = NDArray[np.float64]
Box = tuple[int, int, int, int]
CHUNK = 64  # frames rendered at a time
FINE = 65_535  # linear steps of the table that gives the luma


@dataclass(frozen=True, slots=True)
class Picture:
    """The picture's size, the light's box (x, y, w, h), a reference light's, and their shape.

    disc: a round lamp that fills its box, softer to its edge. panel: an even rectangle.
    full_range: luma 0 to 255 instead of 16 to 235.
    """

    width: int = 160
    height: int = 120
    box: Box = (40, 30, 60, 50)
    reference: Box | None = None
    shape: str = "panel"
    full_range: bool = False

    def row_delays_s(self, box: Box, camera: Camera) -> Floats:
        """Give how much later than the first row the rows of a box begin their exposure, in s."""
        return (box[1] + np.arange(box[3])) * (camera.readout_s / self.height)

    def weights(self, box: Box) -> Floats:
        """Give how bright each pixel of a box is beside its middle, shape (h, w)."""
        _, _, w, h = box
        if self.shape == "panel":
            return np.ones((h, w))
        x = (np.arange(w) + 0.5 - w / 2) / (w / 2)
        y = (np.arange(h) + 0.5 - h / 2) / (h / 2)
        radius = np.hypot(x[None, :], y[:, None])
        return np.asarray(
            np.clip((1.0 - radius) / 0.15, 0.0, 1.0) * (1.0 - 0.15 * np.minimum(radius, 1.0) ** 2)
        )


@dataclass(frozen=True, slots=True)
class Filmed:
    """A light in the picture: where it is and what it does."""

    box: Box
    light: Light


def frames(
    picture: Picture, camera: Camera, lights: tuple[Filmed, ...], starts_s: Floats, seed: int
) -> Iterator[NDArray[np.uint8]]:
    """Give each frame's luma, shape (height, width). starts_s: when each frame's first row begins (s)."""
    rng = np.random.default_rng((seed, 2))
    noise = _noise(rng, picture, camera)
    rows = np.arange(picture.height) * (camera.readout_s / picture.height)
    dark = Dark()
    table = luma(encoded(np.arange(FINE + 1) / FINE, camera.transfer), picture.full_range)
    for begin in range(0, starts_s.size, CHUNK):
        part = starts_s[begin : begin + CHUNK]
        scene = exposures(dark, part[:, None] + rows, camera.open_s, camera.flicker)[..., None]
        linear = camera.black + camera.gain * np.broadcast_to(scene, (*scene.shape[:2], picture.width)).copy()
        for lit in lights:
            x, y, w, h = lit.box
            row_starts = part[:, None] + picture.row_delays_s(lit.box, camera)
            mean = exposures(lit.light, row_starts, camera.open_s, camera.flicker)
            glow = mean - exposures(dark, row_starts, camera.open_s, camera.flicker)
            linear[:, y : y + h, x : x + w] += camera.gain * glow[..., None] * picture.weights(lit.box)
        for frame in linear.astype(np.float32):
            grain = noise[rng.integers(len(noise))]
            spread = np.sqrt(camera.read_noise**2 + camera.shot_noise**2 * np.maximum(frame, 0.0))
            places = np.clip((frame + spread * grain) * FINE, 0.0, FINE).astype(np.int32)
            yield table[places]


def luma(code: Floats, full_range: bool) -> NDArray[np.uint8]:
    """Give 8-bit luma for code values 0 to 1: 0 to 255, or 16 to 235 (ITU-R BT.709-6, item 4.6)."""
    scaled = 255.0 * code if full_range else 16.0 + 219.0 * code
    return np.round(scaled).astype(np.uint8)


@dataclass(frozen=True, slots=True)
class Dark:
    """A light that never shines: what the scene has without one."""

    def at(self, times_s: Floats) -> Floats:
        return np.zeros(np.shape(times_s))

    def integral(self, times_s: Floats) -> Floats:
        return np.zeros(np.shape(times_s))


def _noise(rng: np.random.Generator, picture: Picture, camera: Camera) -> NDArray[np.float32]:
    """A store of noise pictures to draw from: drawing anew for each frame would take most of the time."""
    count = 64 if picture.width * picture.height < 100_000 else 4
    if not camera.read_noise and not camera.shot_noise:
        return np.zeros((1, picture.height, picture.width), dtype=np.float32)
    return rng.standard_normal((count, picture.height, picture.width), dtype=np.float32)
