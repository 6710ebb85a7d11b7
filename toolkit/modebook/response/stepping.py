"""The worst step and stepping of a light: from packet to packet for the eye, frame to frame for a camera.

The step between two successive samples is the change of the light: it includes the fade itself. The
stepping is the step less the step that the ideal light (see ideal) makes between the same two samples,
without sign: a repeat counts with the step that it withholds, a jump with what it has too much, and an
even fade with nothing, however fast.

For the eye the samples lie midway between packets, where even stairs and the ideal ramp are alike: even
stairs at a packet rate are taken as fused to a ramp (at 30 Hz the eye needs modulations of several
percent, from memory), and what is uneven among them is not. For a camera they are exposures.
"""

from __future__ import annotations

from dataclasses import dataclass, fields

import numpy as np

from .camera import Camera, exposures
from .seen import Viewing, jnd_of
from .signal import Array
from .transfer import Light

ROWS = 5  # rows of a rolling readout that are looked at where the camera's phase is given


@dataclass(frozen=True, slots=True)
class Worst:
    """The worst of each of B signals, [B] each; times are in s after the cue's packet 0.

    step_percent, step_stops, step_jnd: the largest step between two successive samples, of full.
    step_at_s: when the later sample of the largest step in JND begins. stepping_percent, stepping_jnd:
    the largest difference from the ideal's step; stepping_at_s: where that in JND is. bound_jnd: how much
    larger the figures in JND could be at a phase that was not tried (0 where every sample was).
    """

    step_percent: Array
    step_stops: Array
    step_jnd: Array
    step_at_s: Array
    stepping_percent: Array
    stepping_jnd: Array
    stepping_at_s: Array
    bound_jnd: Array


def by_eye(light: Light, ideal: Light, viewing: Viewing, samples_s: Array) -> Worst:
    """Give the worst from packet to packet; samples_s: [M], the moments midway between packets, in s."""
    return _in_order(light.at(samples_s), ideal.at(samples_s), viewing, samples_s[1:])


def at_phase(
    light: Light, ideal: Light, viewing: Viewing, camera: Camera, from_s: float, to_s: float
) -> Worst:
    """Give the worst from frame to frame of a camera with a phase, for frames that touch from_s to to_s."""
    worst: Worst | None = None
    for row in np.linspace(0.0, 1.0, ROWS) if camera.readout_s else (0.0,):
        opens_s = camera.openings_s(from_s, to_s, row)
        lit = exposures(light, opens_s, camera.open_s)
        found = _in_order(lit, exposures(ideal, opens_s, camera.open_s), viewing, opens_s[1:])
        worst = found if worst is None else _larger(worst, found)
    assert worst is not None
    return worst


def _larger(one: Worst, other: Worst) -> Worst:
    """Give for each figure the larger of two, with its place."""
    step, stepping = other.step_jnd > one.step_jnd, other.stepping_jnd > one.stepping_jnd
    return Worst(
        np.maximum(one.step_percent, other.step_percent),
        np.maximum(one.step_stops, other.step_stops),
        np.maximum(one.step_jnd, other.step_jnd),
        np.where(step, other.step_at_s, one.step_at_s),
        np.maximum(one.stepping_percent, other.stepping_percent),
        np.maximum(one.stepping_jnd, other.stepping_jnd),
        np.where(stepping, other.stepping_at_s, one.stepping_at_s),
        np.maximum(one.bound_jnd, other.bound_jnd),
    )


def _in_order(lit: Array, ideal: Array, viewing: Viewing, later_s: Array) -> Worst:
    """Take the worst of samples in order: lit [B, F], ideal [1, F], later_s [F - 1]."""
    steps, ideal_steps = np.diff(lit, axis=1), np.diff(ideal, axis=1)
    step_percent = 100.0 * most(steps)
    steps -= ideal_steps
    stepping_percent = 100.0 * most(steps)
    luminances = viewing.luminance_cd_m2(lit)
    ratios = luminances[:, 1:] / luminances[:, :-1]
    step_stops = np.log2(np.maximum(ratios.max(axis=1), 1.0 / ratios.min(axis=1)))
    jnd_steps = np.diff(jnd_of(luminances), axis=1)
    rows = np.arange(len(lit))
    rises, falls = jnd_steps.argmax(axis=1), jnd_steps.argmin(axis=1)
    at = np.where(jnd_steps[rows, rises] >= -jnd_steps[rows, falls], rises, falls)
    step_jnd = np.abs(jnd_steps[rows, at])
    jnd_steps -= np.diff(viewing.jnd(ideal), axis=1)
    np.abs(jnd_steps, out=jnd_steps)
    off = jnd_steps.argmax(axis=1)
    return Worst(
        step_percent,
        step_stops,
        step_jnd,
        later_s[at],
        stepping_percent,
        jnd_steps[rows, off],
        later_s[off],
        np.zeros(len(lit)),
    )


def most(steps: Array) -> Array:
    """Give the largest size along the last axis, without making a copy of the sizes."""
    return np.asarray(np.maximum(steps.max(axis=1), -steps.min(axis=1)))


def joined(parts: list[Worst]) -> Worst:
    """Give the worst of all signals from those of parts of them, in order."""
    return Worst(*(np.concatenate([getattr(part, each.name) for part in parts]) for each in fields(Worst)))
