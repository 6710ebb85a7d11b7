"""The worst step and stepping over all phases of a camera against the packets.

A step is a function of the moment u at which the earlier frame opens. With straight pieces of light it
is a parabola between the u at which an opening or closing meets a breakpoint, so its greatest value in
percent is exact: an end, or a vertex. Decaying or curved light and JNDs bend it; there the ends, the
middles and a search around the best give the greatest value: in percent to a thousandth of it, in JND
to `bound_jnd`, the most by which a kink that its samples allow could still exceed it.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from .camera import Camera, exposures
from .peaks import Peaks, most_of_parabolas, peaks, peaks_of_ratios, searched, stacked, with_middles
from .seen import Viewing, jnd_of
from .signal import Array, Signal
from .stepping import Worst
from .transfer import Light

BLOCK_VALUES = 60_000  # trials times moments sampled at a time: what a processor's cache holds
FEW = 256  # moments of a signal up to which two exposures cost no more than one
PLACES = 4  # intervals searched for each figure, at most


def at_worst_phase(
    light: Light,
    ideal: Light,
    viewing: Viewing,
    camera: Camera,
    from_s: float | Array,
    to_s: float | Array,
    closer: bool = True,
    only_stepping: bool = False,
) -> Worst:
    """Give the worst over all phases of the camera, for frames that touch from_s to to_s.

    from_s, to_s: in s, one for all signals or [B], each its own. closer: whether figures in JND and stops
    are searched between the samples; without that they are faster, and bound_jnd is larger.
    only_stepping: nothing but the stepping in JND, its place and its bound; the other figures are NaN.
    """
    tried_s = tried_openings_s(light, ideal, camera, from_s, to_s)
    shared = tried_s.ndim == 1
    expose = _straight_pairs(camera, tried_s) if shared and light.straight else None
    even = _pair(ideal, camera, tried_s) if shared and ideal is not light else None
    block = max(1, BLOCK_VALUES // tried_s.shape[-1])
    samples = []
    for first in range(0, light.count, block):
        rows = slice(first, first + block)
        some, own_s = light.rows(rows), tried_s if shared else tried_s[rows]
        lit = expose(some) if expose is not None and isinstance(some, Signal) else _pair(some, camera, own_s)
        like = lit if ideal is light else even or _pair(ideal, camera, own_s)
        places = PLACES if closer else 0
        if only_stepping:
            samples.append(_stepping_sampled(lit, like, viewing, own_s, places))
        else:
            samples.append(_sampled(lit, like, viewing, own_s, light.straight, places))
    return _closer(light, ideal, viewing, camera, samples)


def tried_openings_s(
    light: Light, ideal: Light, camera: Camera, from_s: float | Array, to_s: float | Array
) -> Array:
    """Give the openings of the earlier frame at which a formula changes, and midway, [Q] or [B, Q]."""
    breaks_s, corners_s = light.breaks_s(), ideal.breaks_s()
    # An ideal in very many pieces is smooth: its own corners need no samples beyond its ends.
    corners_s = corners_s.ravel() if corners_s.size <= 64 else corners_s.ravel()[[1, -1]]
    shifts_s = (0.0, camera.open_s, camera.frame_s, camera.frame_s + camera.open_s)
    return _tried(breaks_s, corners_s, shifts_s, np.asarray(from_s) - shifts_s[-1], np.asarray(to_s))


def _tried(own_s: Array, corners_s: Array, shifts_s: tuple[float, ...], low_s: Array, high_s: Array) -> Array:
    """Give the openings of the earlier frame at which some formula changes, and the middles between them.

    [Q], or [B, Q] where the signals have breakpoints (own_s, [B, M]) or windows (low_s, high_s, [B]) of
    their own; there some may stand twice.
    """
    if own_s.ndim == 2:
        corners_s = np.broadcast_to(corners_s, (len(own_s), len(corners_s)))
    met_s = np.concatenate([own_s, corners_s], axis=-1)
    met_s = np.concatenate([met_s - shift_s for shift_s in shifts_s], axis=-1)
    if met_s.ndim == 1:
        met_s = np.unique(np.round(met_s, 11))
    else:
        met_s.sort(axis=-1)
    if low_s.ndim == 0 and met_s.ndim == 1:
        inside = (met_s > low_s) & (met_s < high_s)
        met_s = np.concatenate([[low_s], met_s[inside], [high_s]])
    else:
        low_s, high_s = low_s.reshape(-1, 1), high_s.reshape(-1, 1)
        if met_s.ndim == 1:
            first, last = np.searchsorted(met_s, low_s), np.searchsorted(met_s, high_s)
        else:
            first = (met_s < low_s).sum(axis=1, keepdims=True)
            last = (met_s <= high_s).sum(axis=1, keepdims=True)
        places = first - 1 + np.arange(int((last - first).max()) + 2)
        np.clip(places, 0, met_s.shape[-1] - 1, out=places)
        met_s = met_s[places] if met_s.ndim == 1 else np.take_along_axis(met_s, places, axis=1)
        met_s = np.clip(met_s, low_s, high_s)
    return with_middles(met_s)


def _pair(of: Light, camera: Camera, opens_s: Array) -> tuple[Array, Array]:
    """Give the exposures, [B, Q] each, of the frames that open at opens_s and of the frames after them."""
    if opens_s.ndim == 2 and opens_s.shape[1] <= FEW:
        both = exposures(of, np.concatenate([opens_s, opens_s + camera.frame_s], axis=1), camera.open_s)
        return both[:, : opens_s.shape[1]], both[:, opens_s.shape[1] :]
    return exposures(of, opens_s, camera.open_s), exposures(of, opens_s + camera.frame_s, camera.open_s)


def _straight_pairs(camera: Camera, tried_s: Array) -> Callable[[Signal], tuple[Array, Array]]:
    """Give what _pair gives, for straight light at tried_s ([Q] ends and the middles), in half of its time.

    Many openings and closings fall on the same moments, so that each is integrated once; and between two
    ends an exposure is a parabola, whose middle follows from its ends and from its slope at the first,
    which is the difference of the light at closing and opening over the shutter time.
    """
    open_s = camera.open_s
    ends_s = tried_s[: (len(tried_s) + 1) // 2]
    shifts_s = np.array([0.0, open_s, camera.frame_s, camera.frame_s + open_s])
    moments_s, places = np.unique(np.round(ends_s + shifts_s[:, None], 12), return_inverse=True)
    places = places.reshape(4, len(ends_s))
    quarters_s = np.diff(ends_s) / (4.0 * open_s)

    def expose(light: Signal) -> tuple[Array, Array]:
        areas, values = light.both(moments_s)
        pair = []
        for opens, closes in (places[:2], places[2:]):
            count = len(opens)
            lit = np.empty((len(areas), 2 * count - 1))
            ends, middles = lit[:, :count], lit[:, count:]
            np.subtract(areas.take(closes, axis=1), areas.take(opens, axis=1), out=ends)
            ends /= open_s
            np.subtract(values.take(closes[:-1], axis=1), values.take(opens[:-1], axis=1), out=middles)
            middles *= quarters_s
            middles += 0.75 * ends[:, :-1]
            middles += 0.25 * ends[:, 1:]
            pair.append(lit)
        return pair[0], pair[1]

    return expose


@dataclass(frozen=True, slots=True)
class _Samples:
    """What the samples of some signals show of each figure.

    percent, off_percent: of the step and the stepping in parts of full, [B]; where the light is straight
    exactly, and else as peaks to search. others: the rest; None where nothing but the stepping is asked for.
    """

    stepping: Peaks
    others: _Others | None = None


@dataclass(frozen=True, slots=True)
class _Others:
    step: Peaks
    stops: Peaks
    percent: Array | Peaks
    off_percent: Array | Peaks


def _sampled(
    lit: tuple[Array, Array],
    even: tuple[Array, Array],
    viewing: Viewing,
    tried_s: Array,
    straight: bool,
    places: int,
) -> _Samples:
    """Take the samples; lit, even: what _pair gives of the light and of the ideal at tried_s."""
    steps = lit[1] - lit[0]
    percent = most_of_parabolas(steps) if straight else peaks(steps, tried_s, places)
    steps -= even[1] - even[0]
    off_percent = most_of_parabolas(steps) if straight else peaks(steps, tried_s, places)
    before, after = (viewing.luminance_cd_m2(each) for each in lit)
    jnd_steps = jnd_of(after)
    jnd_steps -= jnd_of(before)
    step = peaks(jnd_steps, tried_s, places)
    jnd_steps -= viewing.jnd(even[1]) - viewing.jnd(even[0])
    stepping = peaks(jnd_steps, tried_s, places)
    after /= before
    stops = peaks_of_ratios(after, tried_s, min(places, 1))
    return _Samples(stepping, _Others(step, stops, percent, off_percent))


def _stepping_sampled(
    lit: tuple[Array, Array], even: tuple[Array, Array], viewing: Viewing, tried_s: Array, places: int
) -> _Samples:
    """Take the samples of the stepping in JND alone; see _sampled."""
    steps = viewing.jnd(lit[1])
    steps -= viewing.jnd(lit[0])
    steps -= viewing.jnd(even[1]) - viewing.jnd(even[0])
    return _Samples(peaks(steps, tried_s, places))


def _closer(light: Light, ideal: Light, viewing: Viewing, camera: Camera, samples: list[_Samples]) -> Worst:
    """Search all signals' figures between their samples."""

    def change(opens_s: Array, of: Light = light) -> Array:
        earlier, later = _pair(of, camera, opens_s)
        return later - earlier

    def off(opens_s: Array) -> Array:
        return change(opens_s) - change(opens_s, ideal)

    def stops(opens_s: Array) -> Array:
        earlier, later = (viewing.luminance_cd_m2(each) for each in _pair(light, camera, opens_s))
        return np.asarray(np.log2(later / earlier))

    def step(opens_s: Array, of: Light = light) -> Array:
        earlier, later = _pair(of, camera, opens_s)
        return viewing.jnd(later) - viewing.jnd(earlier)

    def stepping(opens_s: Array) -> Array:
        return step(opens_s) - step(opens_s, ideal)

    def full(figure: Callable[[Array], Array], parts: list[Array | Peaks]) -> Array:
        known = [part for part in parts if isinstance(part, Peaks)]
        if known:
            return searched(figure, stacked(known))[0]
        return np.concatenate([part for part in parts if not isinstance(part, Peaks)])

    off_jnd, off_at_s, off_bound = searched(stepping, stacked([part.stepping for part in samples]))
    others = [part.others for part in samples if part.others is not None]
    if not others:
        none = np.full(len(off_jnd), np.nan)
        return Worst(none, none, none, none, none, off_jnd, off_at_s + camera.frame_s, off_bound)
    step_jnd, step_at_s, bound = searched(step, stacked([part.step for part in others]))
    return Worst(
        100.0 * full(change, [part.percent for part in others]),
        searched(stops, stacked([part.stops for part in others]))[0],
        step_jnd,
        step_at_s + camera.frame_s,
        100.0 * full(off, [part.off_percent for part in others]),
        off_jnd,
        off_at_s + camera.frame_s,
        np.maximum(bound, off_bound),
    )
