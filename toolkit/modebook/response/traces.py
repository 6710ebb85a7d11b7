"""The curves behind an answer, for plots and tables: what is sent, the light, the exposures, the stepping."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from .camera import Camera, exposures
from .cue_light import cue_light, middles_s
from .fade import Fade, ideal_of, worst_of
from .signal import Array

POINTS = 1200  # of the drawn light, beside its own breakpoints


@dataclass(frozen=True, slots=True)
class Trace:
    """One fade over time; times in s after the cue's packet 0, levels and light 0 to 1, [Q] each.

    heard_s, held: when packets of the line arrive, and the level that the fixture then holds (lost ones
    repeat the one before). values: of those packets, as sent. light_s, light: the light; ideal: the even
    light that it is compared with, at the same times. samples_s: when a frame opens, or, without a camera,
    midway between packets. sampled: the exposure of that frame, or the light at that moment. stepping_jnd:
    at each sample but the first, the stepping to it in JND.
    """

    heard_s: Array
    held: Array
    values: NDArray[np.int64]
    lost: NDArray[np.bool_]
    light_s: Array
    light: Array
    ideal: Array
    samples_s: Array
    sampled: Array
    stepping_jnd: Array


def trace(fade: Fade) -> Trace:
    """The curves of one fade, of one trial; without a phase given, at the camera's worst one."""
    fade = replace(fade, trials=1)
    choice = fade.smoothing.toward(fade.ramp.rising)
    cue = cue_light(fade.ramp, choice, fade.transfer, fade.link, fade.bits)
    received, lit, even = cue.received, cue.light(), ideal_of(fade)
    like = lit if even is None else even
    index = np.atleast_2d(received.desk_index)[0]
    held = cue.values[np.maximum(index, 0)]
    top = float(2**fade.bits - 1)
    from_s = float(received.times_s[0]) - received.period_s
    to_s = min(cue.moves_until_s, max(fade.seconds_s, 0.0) + _tail_s(fade, cue.moves_until_s))
    breaks_s = lit.breaks_s().ravel()
    jumps = np.concatenate([breaks_s - 1e-9, breaks_s])
    at_s = np.unique(
        np.concatenate([np.linspace(from_s, to_s, POINTS), jumps[(jumps > from_s) & (jumps < to_s)]])
    )
    if fade.camera is None:
        samples_s = middles_s(received, to_s)
        sampled, ideal = lit.at(samples_s)[0], like.at(samples_s)[0]
    else:
        camera = fade.camera if fade.camera.phase is not None else _worst_camera(fade, fade.camera)
        samples_s = camera.openings_s(from_s, to_s)
        sampled = exposures(lit, samples_s, camera.open_s)[0]
        ideal = exposures(like, samples_s, camera.open_s)[0]
    stepping = np.abs(np.diff(fade.viewing.jnd(sampled)) - np.diff(fade.viewing.jnd(ideal)))
    lost = np.zeros(len(index), dtype=bool) if received.lost is None else received.lost[0]
    return Trace(
        received.times_s,
        held / top,
        held,
        lost,
        at_s,
        lit.at(at_s)[0],
        like.at(at_s)[0],
        samples_s,
        sampled,
        stepping,
    )


def _tail_s(fade: Fade, until_s: float) -> float:
    """How much after the cue is worth showing: until the light has settled, a few packets, one frame."""
    frame_s = 0.0 if fade.camera is None else fade.camera.frame_s
    lengths_s = max(fade.smoothing.lengths_s(fade.link.period_s))
    wait = 5.0 if fade.smoothing.method == "lag" else 1.0
    return min(until_s, lengths_s * wait + 4 * fade.link.period_s + 2 * frame_s + fade.link.delay_s)


def _worst_camera(fade: Fade, camera: Camera) -> Camera:
    """The camera at the phase at which the worst stepping (for a snap, the worst step) comes about."""
    cue = cue_light(fade.ramp, fade.smoothing.toward(fade.ramp.rising), fade.transfer, fade.link, fade.bits)
    worst, _ = worst_of(fade, cue)
    at_s = float(worst.stepping_at_s[0] if worst.stepping_jnd[0] > 0 else worst.step_at_s[0])
    return replace(camera, phase=(at_s * camera.fps) % 1.0)
