"""The worst step and stepping over all phases of a camera against the packets.

Over all phases of a camera against the packets, a step is a function of the moment u at which the
earlier frame opens. With straight pieces of light it is a parabola between the u at which an opening or
closing meets a breakpoint, so its greatest value in percent is exact: an end, or a vertex. JNDs bend it;
there the ends, the middles and a search around the best give the greatest value to `bound_jnd`, the
most by which an interval's own curvature, doubled, could still exceed it.
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from .camera import Camera, exposures
from .seen import Viewing
from .signal import Array
from .stepping import Worst, joined, most
from .transfer import Light

BLOCK_VALUES = 100_000  # trials times moments searched at a time: what a processor's cache holds
SEARCH_POINTS = 17
SEARCH_ROUNDS = 2
SEARCH_PLACES = 4  # intervals searched for each figure, at most
SEARCH_ENOUGH = 1e-3  # of a figure: an interval that could hold no more than that is not searched


def at_worst_phase(
    light: Light,
    ideal: Light,
    viewing: Viewing,
    camera: Camera,
    from_s: float | Array,
    to_s: float | Array,
    closer: bool = True,
) -> Worst:
    """Give the worst over all phases of the camera, for frames that touch from_s to to_s.

    from_s, to_s: in s, one for all signals or [B], each its own. closer: whether figures in JND and stops
    are searched between the samples; without that they are faster, and bound_jnd is larger.
    """
    tried_s = tried_openings_s(light, ideal, camera, from_s, to_s)
    block = max(1, BLOCK_VALUES // tried_s.shape[-1])
    parts = []
    for first in range(0, light.count, block):
        rows = slice(first, first + block)
        own_s = tried_s if tried_s.ndim == 1 else tried_s[rows]
        parts.append(_search(light.rows(rows), ideal, viewing, camera, own_s, SEARCH_PLACES if closer else 0))
    return joined(parts)


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
    tried_s = np.empty((*met_s.shape[:-1], 2 * met_s.shape[-1] - 1))
    tried_s[..., ::2] = met_s
    tried_s[..., 1::2] = 0.5 * (met_s[..., 1:] + met_s[..., :-1])
    return tried_s


def _search(
    light: Light, ideal: Light, viewing: Viewing, camera: Camera, tried_s: Array, places: int
) -> Worst:
    """Give the worst over frames that open at tried_s ([Q] or [B, Q]), every second of which is a middle."""
    frame_s, open_s = camera.frame_s, camera.open_s

    def pair(of: Light, opens_s: Array) -> tuple[Array, Array]:
        return exposures(of, opens_s, open_s), exposures(of, opens_s + frame_s, open_s)

    def stops(opens_s: Array) -> Array:
        return np.asarray(np.log2(viewing.ratio(*pair(light, opens_s))))

    def step(opens_s: Array) -> Array:
        earlier, later = pair(light, opens_s)
        return viewing.jnd(later) - viewing.jnd(earlier)

    def stepping(opens_s: Array) -> Array:
        earlier, later = pair(ideal, opens_s)
        return step(opens_s) - (viewing.jnd(later) - viewing.jnd(earlier))

    earlier, later = pair(light, tried_s)
    ideal_earlier, ideal_later = pair(ideal, tried_s)
    steps = later - earlier
    jnd_steps = viewing.jnd(later) - viewing.jnd(earlier)
    ideal_jnd = viewing.jnd(ideal_later) - viewing.jnd(ideal_earlier)
    stop_steps = np.log2(viewing.ratio(earlier, later))
    step_jnd, step_at_s, bound = _best(step, jnd_steps, tried_s, places)
    stepping_jnd, stepping_at_s, stepping_bound = _best(stepping, jnd_steps - ideal_jnd, tried_s, places)
    return Worst(
        100.0 * _most_of_parabolas(steps),
        _best(stops, stop_steps, tried_s, places)[0],
        step_jnd,
        step_at_s + frame_s,
        100.0 * _most_of_parabolas(steps - (ideal_later - ideal_earlier)),
        stepping_jnd,
        stepping_at_s + frame_s,
        np.maximum(bound, stepping_bound),
    )


def _thirds(values: Array) -> tuple[Array, Array, Array]:
    """Give what intervals have at their start, middle and end, [B, I] each."""
    return values[:, :-2:2], values[:, 1::2], values[:, 2::2]


def _most_of_parabolas(values: Array) -> Array:
    """Give the largest size, [B], of parabolas through the start, middle and end of each interval."""
    start, middle, end = _thirds(values)
    bend = start - 2.0 * middle
    bend += end
    lean = end - start
    # With x from -1 to 1 the parabola is middle + lean x / 2 + bend x**2 / 2, its vertex at -lean / (2 bend).
    within = np.abs(lean) < 2.0 * np.abs(bend)
    vertex = middle - np.divide(lean * lean, 8.0 * bend, out=np.zeros_like(bend), where=within)
    return np.asarray(np.maximum(most(values), np.abs(vertex).max(axis=1)))


def _could(values: Array) -> Array:
    """Give what the size of a figure could reach in each interval of three samples, [B, I].

    A parabola exceeds its samples by an eighth of their second difference at most; a kink by a quarter.
    """
    start, middle, end = _thirds(values)
    could = np.abs(start - 2.0 * middle + end)
    could *= 0.25
    sizes = np.abs(values)
    could += np.maximum(np.maximum(sizes[:, :-2:2], sizes[:, 2::2]), sizes[:, 1::2])
    return could


def _best(
    of: Callable[[Array], Array], values: Array, tried_s: Array, places: int
) -> tuple[Array, Array, Array]:
    """Search the intervals that could hold the largest size of a figure, those that could hold most first.

    of: the figure at given openings, [B, Q] to [B, Q]; values: the figure at tried_s; places: how many
    intervals are searched. Gives, [B] each, the largest size found, where, and how much larger it could
    be where the search did not look closer.
    """
    rows = np.arange(len(values))
    times_s = np.broadcast_to(tried_s, values.shape)
    at = np.maximum(values, -values).argmax(axis=1)
    found, found_s = np.abs(values[rows, at]), times_s[rows, at]
    could = _could(values)
    left = np.zeros(len(values))
    for _ in range(places):
        place = could.argmax(axis=1)
        if (could[rows, place] <= found * (1.0 + SEARCH_ENOUGH)).all():
            break
        low_s, high_s = times_s[rows, 2 * place], times_s[rows, 2 * place + 2]
        could[rows, place] = 0.0
        for _ in range(SEARCH_ROUNDS):
            near_s = np.linspace(low_s, high_s, SEARCH_POINTS, axis=1)
            near = of(near_s)
            near_could = _could(near)
            best = near_could.argmax(axis=1)
            top = np.abs(near).argmax(axis=1)
            better = np.abs(near[rows, top]) > found
            found = np.where(better, np.abs(near[rows, top]), found)
            found_s = np.where(better, near_s[rows, top], found_s)
            low_s, high_s = near_s[rows, 2 * best], near_s[rows, 2 * best + 2]
            reached = near_could[rows, best]
            near_could[rows, best] = 0.0
            left = np.maximum(left, near_could.max(axis=1))
        left = np.maximum(left, reached)
    left = np.maximum(left, could.max(axis=1))
    return found, found_s, np.maximum(left - found, 0.0)
