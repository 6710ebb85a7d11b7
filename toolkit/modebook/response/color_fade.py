"""Color fades: what steps in chromaticity are seen of two parameters, CIE x and y, that fade together.

As in stepping, with the distance in CIE 1976 u'v' in place of JNDs: the step is the distance between
successive samples, the stepping the distance between the step made and the step of the ideal fade. One
step of chromaticity difference near whites is 0.0011 (CIE TN 001:2014); in saturated colors, and for
change in time, it is only a scale. An exposure's chromaticity is taken as its mean x and y: within one
open shutter a color moves little, and its luminance is taken as constant.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TypeAlias

import numpy as np

from .camera import Camera, exposures
from .color import ONE_STEP_DELTA_UV_PRIME, xy_to_uv_prime
from .cue_light import cue_light, middles_s
from .errors import ResponseError
from .ideal import Ramp, ideal_light
from .link import Link
from .phases import tried_openings_s
from .signal import Array
from .smoothing import OFF, Smoothing
from .transfer import Light, Transfer

Pair: TypeAlias = tuple[float, float]


@dataclass(frozen=True, slots=True)
class ColorFade:
    """A fade from one CIE xy to another; x_span, y_span: what 0 and full of each parameter stand for.

    bits: of each parameter. trials: how many times losses are drawn. Raises ResponseError.
    """

    from_xy: Pair
    to_xy: Pair
    seconds_s: float
    link: Link
    bits: int = 16
    smoothing: Smoothing = OFF
    camera: Camera | None = None
    x_span: Pair = (0.0, 1.0)
    y_span: Pair = (0.0, 1.0)
    trials: int = 1
    whole: Transfer = field(default_factory=Transfer, init=False)

    def __post_init__(self) -> None:
        for x, y in (self.from_xy, self.to_xy):
            if not (0.0 <= x <= 1.0 and 0.0 < y <= 1.0 and x + y <= 1.0 + 1e-9):
                raise ResponseError(f"({x:g}, {y:g}) is no color in CIE xy: x, y and 1 - x - y are 0 or more")
        if not self.seconds_s > 0.0:
            raise ResponseError(f"a color fade of {self.seconds_s:g} s cannot be: give more than 0")
        for low, high in (self.x_span, self.y_span):
            if not low < high:
                raise ResponseError(f"a span from {low:g} to {high:g} is empty: give an end above its start")


@dataclass(frozen=True, slots=True)
class ColorWorst:
    """The worst of each of B trials, [B]: step and stepping in delta u'v', and where, in s after the cue."""

    step_uv_prime: Array
    stepping_uv_prime: Array
    stepping_at_s: Array

    @property
    def seen(self) -> bool:
        """Whether the worst stepping is more than one step of chromaticity difference: an estimate."""
        return bool((self.stepping_uv_prime > ONE_STEP_DELTA_UV_PRIME).any())


def color_worst(fade: ColorFade) -> ColorWorst:
    """Give the worst step and stepping of a color fade, from packet to packet or from frame to frame.

    Without a phase, the camera's phases are tried where some exposure's formula changes, and midway.
    """
    lit: list[Light] = []
    ideal: list[Light] = []
    for axis, (low, high) in enumerate((fade.x_span, fade.y_span)):
        ramp = Ramp(
            (fade.from_xy[axis] - low) / (high - low), (fade.to_xy[axis] - low) / (high - low), fade.seconds_s
        )
        choice = fade.smoothing.toward(ramp.rising)
        cue = cue_light(ramp, choice, fade.whole, fade.link, fade.bits, fade.trials)
        lit.append(cue.light())
        ideal.append(ideal_light(ramp, choice, fade.whole, fade.link))
    if fade.camera is None:
        samples_s = middles_s(cue.received, cue.moves_until_s)
        earlier_s, later_s = samples_s[:-1], samples_s[1:]
        return _worst(
            _uv(fade, lit, earlier_s),
            _uv(fade, lit, later_s),
            _uv(fade, ideal, earlier_s),
            _uv(fade, ideal, later_s),
            later_s,
        )
    frame_s, open_s = fade.camera.frame_s, fade.camera.open_s
    if fade.camera.phase is not None:
        opens_s = fade.camera.openings_s(0.0, cue.moves_until_s)[:-1]
    else:
        opens_s = tried_openings_s(lit[0], ideal[0], fade.camera, 0.0, cue.moves_until_s)
    later_s = opens_s + frame_s
    return _worst(
        _uv(fade, lit, opens_s, open_s),
        _uv(fade, lit, later_s, open_s),
        _uv(fade, ideal, opens_s, open_s),
        _uv(fade, ideal, later_s, open_s),
        later_s,
    )


def _uv(
    fade: ColorFade, lights: list[Light], at_s: Array, open_s: float | None = None
) -> tuple[Array, Array]:
    """Give u' and v', [B, Q] each, at times or over exposures that open then."""
    shares = [light.at(at_s) if open_s is None else exposures(light, at_s, open_s) for light in lights]
    spans = (fade.x_span, fade.y_span)
    x, y = (low + (high - low) * share for share, (low, high) in zip(shares, spans, strict=True))
    return xy_to_uv_prime(x, y)


def _worst(
    earlier: tuple[Array, Array],
    later: tuple[Array, Array],
    ideal_earlier: tuple[Array, Array],
    ideal_later: tuple[Array, Array],
    later_s: Array,
) -> ColorWorst:
    steps = [b - a for a, b in zip(earlier, later, strict=True)]
    off = [step - (b - a) for step, a, b in zip(steps, ideal_earlier, ideal_later, strict=True)]
    stepping = np.hypot(*off)
    at = stepping.argmax(axis=1)
    times_s = np.broadcast_to(later_s, stepping.shape)
    rows = np.arange(len(stepping))
    return ColorWorst(np.hypot(*steps).max(axis=1), stepping[rows, at], times_s[rows, at])
